package law

import (
	"strings"
	"sync"
)

// Preservative is an ingredient that a limit is on: its group, and how much of
// the acid (or of the anhydrous calcium salt of EDTA) a gram of it counts for.
type Preservative struct {
	Ingredient string
	Substance  string
	AsAcid     float64 // gram per gram, from molar masses
}

var preservatives = sync.OnceValues(func() ([]Preservative, error) {
	return each("preservatives", func(rec record) (Preservative, error) {
		share, err := rec.number("as_acid")
		return Preservative{Ingredient: rec.text("ingredient"), Substance: rec.text("substance"), AsAcid: share}, err
	})
})

// PreservativeOf finds a preservative by its ingredient name, case aside.
func PreservativeOf(ingredient string) (Preservative, bool) {
	all, _ := preservatives()
	for _, p := range all {
		if strings.EqualFold(p.Ingredient, strings.TrimSpace(ingredient)) {
			return p, true
		}
	}
	return Preservative{}, false
}

// Weighed turns mg/L as added into the weight that an entry's limit is on: the
// substance itself where the text says so, the acid elsewhere.
func (p Preservative) Weighed(mgPerL float64, a AdditiveLimit) float64 {
	if a.ExpressedAs == AsAdded {
		return mgPerL
	}
	return mgPerL * p.AsAcid
}
