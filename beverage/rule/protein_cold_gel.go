package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-cold-gel", Level: note,
	Title: "The drink may gel in the cold",
	Means: "Gelatin gels below about 35 °C from some grams a litre on, and melts again. Whey protein that was heated near neutral gels cold, and for good, when calcium or salt is added after.",
	Clear: "Collagen peptides in place of gelatin, less of it; for whey no calcium or salt after the preheat, less protein.",
	Law:   []string{"protein-cold-gel.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if w, ok := gelsCold(f, k); ok {
				h := Hit{Detail: fmt.Sprintf("%s, %s", k.words(), phWords(f)), Values: proteinValues(f, k)}
				hits = append(hits, windowed(w, h))
			}
		}
		return hits
	},
})

func gelsCold(f *facts.Facts, k kept) (protein.Window, bool) {
	switch k.family {
	case protein.FamilyGelatin:
		w := windowOf("cold-gel-gelatin")
		return w, k.mayReach(w.Span.Low)
	case protein.FamilyWhey:
		w, zone := windowOf("cold-gel-calcium"), windowOf("iso-whey")
		preheated := mayReachC(f, w.TempC.Low) && !f.PH.Decides.SurelyBelow(zone.Span.High)

		return w, preheated && w.ProteinGL.Stands(k.gPerL).MayBeInside() && w.Span.Stands(f.Ions.CalciumMM).MayBeInside()
	}
	return protein.Window{}, false
}
