package protein

import (
	"sync"

	"posset/beverage"
)

var solubilities = sync.OnceValues(func() (map[string]sourcedCurve, error) {
	return readCurves[string]("solubility.csv", "kinds", "ph")
})

// Solubility returns the share of unheated protein that stays dissolved or
// dispersed, in percent, over a pH interval between 2 and 9, at 20 to 25 °C and
// little salt. False where nothing is held for the protein or the pH. It is a map
// from reviews, not a specification; Source says so.
func (c *Composition) Solubility(pH beverage.Interval) (percent beverage.Interval, source beverage.Source, ok bool) {
	all, err := solubilities()
	if err != nil || c == nil {
		return beverage.Interval{}, beverage.Source{}, false
	}
	one, ok := all[c.id]
	if !ok {
		one, ok = all[string(c.family)]
	}
	percent = one.curve.at(pH)
	return percent, one.source, ok && percent.Known()
}
