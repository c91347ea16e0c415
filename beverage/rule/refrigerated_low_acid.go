package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "refrigerated-low-acid", Level: review, OnRoutes: true,
	Title: "Only the cold chain holds this low-acid drink",
	Means: "Non-proteolytic Clostridium botulinum grows from 3 °C up. A chilled low-acid drink with a life of more than 10 days, or kept above 8 °C, needs a control of its own beside the cold; carrot juice that stood warm has paralysed people.",
	Clear: "Keep at 8 °C or below for at most 10 days, or add a published control: 90 °C for 10 min or its equal, pH 5.0 or below throughout, water activity 0.97 or below; and label it to be kept cold.",
	Law:   []string{"uk-chilled-botulinum", "refrigerated-low-acid.us-juice", "ca-low-acid", "chilled-botulinum-growth.science"},
	Check: func(f *facts.Facts) []Hit {
		if !f.MayBeLowAcid() || !f.Cold() || f.OnlyWater() || f.Process.Route.Sterilizes() && f.Records.Outcome == beverage.Meets {
			return nil
		}
		h := Hit{Detail: chillWords(f), Values: Values{"storage_c": nil, "shelf_life_days": nil}, Rows: chillRows(f)}
		if t := f.Drink.Storage.TempC; t.Known {
			h.Values["storage_c"] = t.V
		}
		if s := f.Drink.Storage.ShelfLifeS; s.Known {
			h.Values["shelf_life_days"] = s.V / secondsPerDay
		}
		if chillUncontrolled(f) {
			h.Level, h.Route = at(stop), chillOnRoute(f)
		}
		return append([]Hit{h}, warmInCanada(f)...)
	},
})

// chillOnRoute: too warm, no route but a sterilizing one is left; for too long, a
// route whose heat can be the control is left open, and one without heat is not.
// What is called extended shelf life is hotter than any control.
func chillOnRoute(f *facts.Facts) RouteEffect {
	warm := f.Drink.Storage.TempC.Known && f.Drink.Storage.TempC.V > law.ChilledMaxC()
	switch {
	case warm:
		return RulesOut
	case f.Process.Route == beverage.ExtendedShelfLife:
		return NoEffect
	case f.Process.Heats() || !f.Drink.Storage.TempC.Known || !f.Drink.Storage.ShelfLifeS.Known:
		return LeavesOpen
	}
	return RulesOut
}

// chillRows are the texts on such a drink: the guidance on juice is for juice.
func chillRows(f *facts.Facts) []string {
	rows := []string{"uk-chilled-botulinum", "chilled-botulinum-growth.science"}
	if f.Drink.Base.V == beverage.SoldAsJuice {
		rows = append(rows, "refrigerated-low-acid.us-juice")
	}
	return rows
}

// warmInCanada: there only a pack kept at 4 °C or below, or frozen, is freed from
// commercial sterility.
func warmInCanada(f *facts.Facts) []Hit {
	s := f.Drink.Storage
	if !f.In(beverage.CA) || s.Distribution.V == beverage.Frozen || f.Process.Route.Sterilizes() || s.TempC.Known && s.TempC.V <= law.CanadaChilledC() {
		return nil
	}
	effect := LeavesOpen
	if s.TempC.Known {
		effect = RulesOut
	}
	return []Hit{{Level: at(stop), Markets: []beverage.Market{beverage.CA}, Row: "ca-low-acid", Route: effect,
		Detail: fmt.Sprintf("Canada frees a sealed low-acid food from commercial sterility only at %.0f °C or below, or frozen; this one is kept %s.", law.CanadaChilledC(), storedWords(f))}}
}

const secondsPerDay = 86400

// chillUncontrolled is true where the pack may be warmer than the limit, or may
// stand longer than it with no published control. Frozen packs are neither.
func chillUncontrolled(f *facts.Facts) bool {
	s := f.Drink.Storage
	if s.Distribution.V == beverage.Frozen || f.Process.Route.Sterilizes() {
		return false
	}
	warm := !s.TempC.Known || s.TempC.V > law.ChilledMaxC()
	long := !s.ShelfLifeS.Known || s.ShelfLifeS.V > law.ChilledMaxDays()*secondsPerDay
	return warm || long && !f.ChillControl()
}

func chillWords(f *facts.Facts) string {
	s := f.Drink.Storage
	life := "for a time that is not given"
	if s.ShelfLifeS.Known {
		life = fmt.Sprintf("for %.0f days", s.ShelfLifeS.V/secondsPerDay)
	}
	control := "no published control is described"
	if f.ChillControl() {
		control = "a published control is described, not shown"
	}
	if s.Distribution.V == beverage.Frozen {
		control = "frozen nothing grows; what grows after thawing is held by nothing that is described"
	}
	return fmt.Sprintf("%s, kept %s %s; %s.", upper(phWords(f)), storedWords(f), life, control)
}

func storedWords(f *facts.Facts) string {
	if t := f.Drink.Storage.TempC; t.Known {
		return fmt.Sprintf("at up to %.1f °C", t.V)
	}
	return "at a temperature that is not given"
}
