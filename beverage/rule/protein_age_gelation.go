package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "protein-age-gelation", Level: note,
	Title: "The milk drink may thicken and gel with age",
	Means: "Sterilized milk drinks may thicken and gel after three months and more, soonest between 15 and 30 °C, not at 40 to 50 °C; sooner where plasmin survives a short direct heat, less after a retort. Polyphosphate delays it, citrate and orthophosphate may hasten it.",
	Clear: "A preheat that kills plasmin, indirect heat or a retort, less concentrated casein, polyphosphate within its limit, cold storage, or a shorter life; keep samples at 25 °C over the whole life.",
	Law:   []string{"protein-age-gelation.science"},
	Check: func(f *facts.Facts) []Hit {
		k, ok := caseins(f)
		w := windowOf("age-temp")
		if !ok || !k.mayReach(proteinLimit("protein_least")) || f.Cold() || !agesWarm(f) {
			return nil
		}
		const secondsPerDay = 86400
		life := f.Drink.Storage.ShelfLifeS
		if life.Known && life.V < proteinLimit("age_gel_days")*secondsPerDay || !w.Span.Stands(f.StoredC()).MayBeInside() {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), routeWords(f), lifeWords(f)), Values: proteinValues(f, k)}
		if f.ChelatorMEqPerL().High > 0 {
			h.Detail += chelatorWords(f)
			w = windowOf("age-phosphate")
		}
		return []Hit{windowed(w, h)}
	},
})

// agesWarm is true of neutral drinks that are sterilized for a life at room
// temperature.
func agesWarm(f *facts.Facts) bool {
	r := f.Process.Route
	sterilized := r == beverage.Aseptic || r == beverage.ExtendedShelfLife || r == beverage.RetortRoute
	return sterilized && nearNeutral(f)
}
