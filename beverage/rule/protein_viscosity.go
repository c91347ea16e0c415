package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "protein-viscosity", Level: note,
	Title: "The protein makes the drink thick",
	Means: "Beyond a content of its own each protein thickens a drink steeply, thins it under shear, and slows heating, filling and pouring.",
	Clear: "Less protein, a smaller one (hydrolysed whey, collagen peptides), or a process and a filler made for thick drinks.",
	Law:   []string{"protein-viscosity.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, t := range thickened(f) {
			h := Hit{Detail: t.k.words() + viscosityWords(t.k), Values: proteinValues(f, t.k)}
			hits = append(hits, windowed(t.w, h))
		}
		return hits
	},
})

// thick is a protein beyond the content at which it thickens a drink.
type thick struct {
	k kept
	w protein.Window
}

// thickened lists them. The pH is left out: the published content, measured near
// neutral, is taken over for acid drinks.
func thickened(f *facts.Facts) []thick {
	var list []thick
	for _, k := range families(f) {
		w, ok := protein.Limit(protein.TopicViscosity, k.family, "g/L", protein.At{})
		if ok && k.mayReach(w.Span.Low) {
			list = append(list, thick{k, w})
		}
	}
	return list
}

func viscosityWords(k kept) string {
	v, _, ok := protein.Viscosity(k.family, beverage.Point(k.gPerL.Mid, k.gPerL.Basis))
	if !ok {
		return ""
	}
	return ", estimated " + quantity.Number(v.Low, 2) + " to " + quantity.Number(v.High, 2) + " mPa·s before heating"
}
