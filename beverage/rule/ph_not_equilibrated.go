package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ph-not-equilibrated", Level: review,
	Title: "The pH may not be the equilibrium pH",
	Means: "Protein, milk and pieces give and take acid slowly. What counts is the pH once drink and solids have come to rest, within the time the scheduled process sets.",
	Clear: "Measure after 24 hours at rest, blended where there are pieces, and give measured.ph_equilibrated.",
	Law:   []string{"us-acidified-ph-within-time", "ph-24h.trade"},
	Check: func(f *facts.Facts) []Hit {
		m := f.Drink.Measured
		if !m.PH.Known || m.PHEquilibratedS.Known && m.PHEquilibratedS.V >= restS {
			return nil
		}
		slow := f.Class == beverage.Acidified || f.Class == beverage.Undecided || f.HoldsParticles()
		if !slow {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("Read after %s; %.0f h at rest are usual.", restWords(f), restS/3600)}}
	},
})

// restS is how long a sample is usually left before its pH is called the
// equilibrium pH. Common practice, no source: the rule leaves it to the
// scheduled process.
const restS = 24 * 3600.0

func restWords(f *facts.Facts) string {
	if e := f.Drink.Measured.PHEquilibratedS; e.Known {
		return fmt.Sprintf("%.3g h", e.V/3600)
	}
	return "a time that is not given"
}
