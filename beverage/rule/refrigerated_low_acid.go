package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "refrigerated-low-acid", Level: review,
	Title: "Only the cold chain holds this low-acid drink",
	Means: "Non-proteolytic Clostridium botulinum grows from 3 °C up. A chilled low-acid drink with a life of more than 10 days, or kept above 8 °C, needs a control of its own beside the cold; carrot juice that stood warm has paralysed people.",
	Clear: "Keep at 8 °C or below for at most 10 days, or add a published control: 90 °C for 10 min or its equal, pH 5.0 or below throughout, water activity 0.97 or below; and label it to be kept cold.",
	Law:   []string{"uk-chilled-botulinum", "refrigerated-low-acid.us-juice", "chilled-botulinum-growth.science"},
	Check: func(f *facts.Facts) []Hit {
		if !f.MayBeLowAcid() || !f.Cold() || f.OnlyWater() || f.Process.Route.Sterilizes() && f.Records.Outcome == beverage.Meets {
			return nil
		}
		h := Hit{Detail: chillWords(f), Values: Values{"storage_c": nil, "shelf_life_days": nil}}
		if t := f.Drink.Storage.TempC; t.Known {
			h.Values["storage_c"] = t.V
		}
		if s := f.Drink.Storage.ShelfLifeS; s.Known {
			h.Values["shelf_life_days"] = s.V / secondsPerDay
		}
		if chillUncontrolled(f) {
			h.Level = at(stop)
		}
		return []Hit{h}
	},
})

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
	kept := "at a temperature that is not given"
	if s.TempC.Known {
		kept = fmt.Sprintf("at up to %.1f °C", s.TempC.V)
	}
	life := "for a time that is not given"
	if s.ShelfLifeS.Known {
		life = fmt.Sprintf("for %.0f days", s.ShelfLifeS.V/secondsPerDay)
	}
	control := "no published control is described"
	if f.ChillControl() {
		control = "a published control is described, not shown"
	}
	return fmt.Sprintf("%s, kept %s %s; %s.", upper(phWords(f)), kept, life, control)
}
