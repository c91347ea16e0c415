package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-sediment", Level: note,
	Title: "The drink may throw a sediment in its life",
	Means: "Sterilized milk drinks settle over months, sooner when warm, below pH 6.65 or with much phosphate; plant protein settles without a suspending gum, and calcium that does not dissolve goes with it.",
	Clear: "Homogenize, keep the pH at 6.7 or above, suspend with gellan or carrageenan, grind minerals fine; keep samples over the whole life at its temperature.",
	Law:   []string{"protein-sediment.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		if h, ok := settlesAsMilk(f); ok {
			hits = append(hits, h)
		}
		for _, k := range families(f) {
			if h, ok := settlesAsPlant(f, k); ok {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

// settlesAsMilk speaks of sterilized casein drinks whose life may outlast what was
// published, or whose pH, phosphate or calcium hastens sediment.
func settlesAsMilk(f *facts.Facts) (Hit, bool) {
	k, ok := caseins(f)
	direct := windowOf("heat-low-ph")
	if !ok || !k.mayReach(proteinLimit("protein_least")) || !nearNeutral(f) || !mayReachC(f, windowOf("heat-calcium-ion").TempC.Low) {
		return Hit{}, false
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, %s%s", k.words(), phWords(f), lifeWords(f), slowWords(f)), Values: proteinValues(f, k)}
	switch harm := windowOf("calcium-chelator-harm"); {
	case direct.Span.Stands(f.PH.Decides).MayBeInside() && f.Process.HoldsInTube():
		return windowed(direct, h), true
	case f.PhosphateGPerL().High >= harm.Span.Low && k.mayReach(proteinLimit("milk_protein_most")):
		return windowed(harm, h), true
	}
	w := windowOf("sed-uht")
	const secondsPerWeek = 7 * 86400
	life := f.Drink.Storage.ShelfLifeS
	return windowed(w, h), !f.Cold() && (!life.Known || life.V >= w.Span.Low*secondsPerWeek)
}

// settlesAsPlant speaks of plant protein near neutral pH that no gum suspends.
func settlesAsPlant(f *facts.Facts, k kept) (Hit, bool) {
	w := windowOf("sed-soy-native")
	if k.family != protein.FamilyPlant || !k.mayReach(proteinLimit("protein_least")) || !w.Span.Stands(f.PH.Decides).MayBeInside() || suspended(f) {
		return Hit{}, false
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, no gum in its suspending dose%s", k.words(), phWords(f), slowWords(f)), Values: proteinValues(f, k)}
	return windowed(w, h), true
}

// suspended tells whether a gum is there in the least dose that is published to
// suspend plant protein.
func suspended(f *facts.Facts) bool {
	least := windowOf("sed-plant").Span.Low
	sum := beverage.Point(0, beverage.Predicted)
	for _, l := range f.Gums() {
		if l.GPerL.Known() {
			sum = sum.Plus(l.GPerL)
		}
	}
	return sum.Low >= least
}

// slowWords names the calcium that dissolves little and settles with the rest.
func slowWords(f *facts.Facts) string {
	if slow := f.SlowCalcium(); len(slow) > 0 {
		return ", with " + listWords(slow) + " that dissolves little"
	}
	return ""
}

// lifeWords tells the shelf life, or that it is not given.
func lifeWords(f *facts.Facts) string {
	const secondsPerMonth = 30.4375 * 86400
	if l := f.Drink.Storage.ShelfLifeS; l.Known {
		return fmt.Sprintf("a life of %.2g months", l.V/secondsPerMonth)
	}
	return "a life that is not given"
}
