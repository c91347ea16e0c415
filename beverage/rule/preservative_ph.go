package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "preservative-ph", Level: review,
	Title: "The preservative hardly works at this pH",
	Means: "Benzoate and sorbate work as undissociated acid. Each step of pH above their pKa leaves a tenth of it.",
	Clear: "Lower the pH, take another preservative, or pasteurize.",
	Law:   []string{"preservative-ph.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for substance, ceiling := range map[string]float64{law.Benzoate: law.BenzoateCeilingPH(), law.Sorbate: law.SorbateCeilingPH()} {
			if f.Preserved(substance) && f.PH.Decides.MayExceed(ceiling) {
				hits = append(hits, Hit{
					Detail: fmt.Sprintf("%s, %s; it hardly works above pH %.1f.", upper(substance), phWords(f), ceiling),
					Values: Values{"substance": substance, "ceiling_ph": ceiling},
				})
			}
		}
		sortByDetail(hits)
		return hits
	},
})
