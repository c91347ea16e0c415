package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-astringent", Level: note,
	Title: "Acid protein drinks taste astringent",
	Means: "Positive protein in acid binds what makes saliva slip: the drink dries the mouth more than its acid alone, more so the lower the pH, and little changed by more protein or by thickening.",
	Clear: "A pH nearer 3.4 than 2.8, sweetness and aroma, hydrolysed or collagen protein; taste it after the process, over a whole serving.",
	Law:   []string{"protein-astringent.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if !k.mayReach(windowOf("astr-amount").Span.Low) {
				continue
			}
			for _, w := range protein.WindowsFor(protein.TopicAstringency, k.family) {
				if w.Unit == "pH" && w.Span.Stands(f.PH.Decides).MayBeInside() {
					hits = append(hits, windowed(w, Hit{Detail: fmt.Sprintf("%s, %s", k.words(), phWords(f)), Values: proteinValues(f, k)}))
					break
				}
			}
		}
		return hits
	},
})
