package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ph-drop-on-heat", Level: review,
	Title: "The heat lowers the pH of the drink",
	Means: "Milk sugar and other reducing sugars make acids on long heating, and calcium phosphate comes out: a neutral milky drink is more acid at temperature, and after a retort also when read cold. The lower pH is the one that decides on curd, sediment and deposits. Where the hold is too short to move the cold reading it is a note.",
	Clear: "Start higher, buffer with phosphate or citrate, heat shorter and hotter, take a sugar that does not reduce; measure the pH after the process.",
	Law:   []string{"ph-drop-on-heat.science"},
	Check: func(f *facts.Facts) []Hit {
		if !f.Process.Heats() || !nearNeutral(f) {
			return nil
		}
		if k, ok := caseins(f); ok && k.mayReach(proteinLimit("protein_least")) {
			return dropOfMilk(f, k)
		}
		return dropBySugar(f)
	},
})

// dropOfMilk speaks of every milky drink that is sterilized.
func dropOfMilk(f *facts.Facts, k kept) []Hit {
	if !mayReachC(f, windowOf("ph-drop-sugar").TempC.Low) {
		return nil
	}
	h, short := dropHit(f, k)
	stable := windowOf("heat-max").Span
	if f.PH.Decides.Known() && f.PH.Decides.Low < stable.Low {
		h.Detail += fmt.Sprintf("; it may start below pH %.4g to %.4g, where milk stands heat longest", stable.Low, stable.High)
	}
	if short {
		h.Level = at(note)
		h.Detail += "; a note, since so short a hold moves the cold reading little, though not the pH at temperature"
	}
	return []Hit{windowed(windowOf("ph-drop-milk"), h)}
}

// dropBySugar speaks of other protein with reducing sugar in a retort.
func dropBySugar(f *facts.Facts) []Hit {
	sugar := f.ReducingSugarGPerL()
	if f.Process.Route != beverage.RetortRoute || sugar.High < proteinLimit("reducing_sugar_least") {
		return nil
	}
	w := windowOf("ph-drop-sugar")
	for _, k := range families(f) {
		if !w.Speaks(k.family) || !k.mayReach(proteinLimit("protein_least")) {
			continue
		}
		if h, short := dropHit(f, k); !short {
			h.Detail += fmt.Sprintf(", %.3g g/L of reducing sugar", sugar.High)
			return []Hit{windowed(w, h)}
		}
	}
	return nil
}

// dropHit tells the fall that the hold makes, and whether it is surely too small
// to be read.
func dropHit(f *facts.Facts, k kept) (h Hit, short bool) {
	drop := f.PHDrop()
	h.Values = proteinValues(f, k)
	h.Values["ph_drop_low"], h.Values["ph_drop_high"] = drop.LowOrNil(), drop.HighOrNil()
	h.Detail = fmt.Sprintf("%s, %s, %s", listWords(k.names), phWords(f), heatWords(f))
	if drop.Known() {
		h.Detail += fmt.Sprintf(": read cold it may fall by up to %.2g", drop.High)
	}
	return h, drop.Known() && drop.High < proteinLimit("ph_drop_least")
}
