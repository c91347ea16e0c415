package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "hydrolysate-bitter", Level: note,
	Title: "Hydrolysed protein tastes bitter",
	Means: "Cutting protein sets bitter peptides free, more with deeper hydrolysis up to a point; very deep hydrolysis with exopeptidases loses some of it again.",
	Clear: "Ask the supplier for taste by degree of hydrolysis, mask with acid, sweetness, aroma or cyclodextrin, or blend with whole protein.",
	Law:   []string{"hydrolysate-bitter.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if k.family != protein.FamilyHydrolysate {
				continue
			}
			for _, p := range k.parts {
				w, degree := windowOf("bitter-dh"), p.Composition.Hydrolysis()
				if w.Span.Stands(degree).MayBeInside() {
					h := Hit{Detail: fmt.Sprintf("%s, %.3g g/L, %s", p.Line.Line.Name, p.GPerL.Mid, degreeWords(degree)), Values: proteinValues(f, k)}
					hits = append(hits, windowed(w, h))
				}
			}
		}
		return hits
	},
})

func degreeWords(d beverage.Interval) string {
	switch {
	case !d.Known():
		return "its degree of hydrolysis is not given"
	case d.Low == d.High:
		return fmt.Sprintf("degree of hydrolysis %.3g %%", d.Mid)
	}
	return fmt.Sprintf("degree of hydrolysis %.3g to %.3g %%", d.Low, d.High)
}
