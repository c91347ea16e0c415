package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-isoelectric", Level: review,
	Title: "The pH may lie where the protein carries no charge",
	Means: "Near its isoelectric pH a protein carries no net charge: it clouds, settles or curds, and heat makes that final. Of hydrolysates only some peptides do, which is a note.",
	Clear: "Move the whole pH interval out of the zone, or take a protein whose zone lies elsewhere.",
	Law:   []string{"protein-isoelectric.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			w, ok := isoelectricZone(f.PH.Decides, k)
			if !ok {
				continue
			}
			h := windowed(w, Hit{Detail: fmt.Sprintf("%s, %s", listWords(k.names), phWords(f)), Values: proteinValues(f, k)})
			if k.family == protein.FamilyHydrolysate {
				h.Level = at(note)
				h.Detail += " A note, since most peptides stay dissolved."
			}
			hits = append(hits, h)
		}
		return hits
	},
})

// isoelectricZone is the zone of one of the proteins that the pH may lie in.
func isoelectricZone(pH beverage.Interval, k kept) (protein.Window, bool) {
	for _, p := range k.parts {
		for _, w := range protein.WindowsFor(protein.TopicIsoelectric, k.family) {
			own := w.Span.Stands(p.Composition.Isoelectric()).MayBeInside()
			if own && w.Span.Stands(pH).MayBeInside() {
				return w, true
			}
		}
	}
	return protein.Window{}, false
}
