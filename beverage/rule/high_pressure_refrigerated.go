package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "high-pressure-refrigerated", Level: note,
	Title: "High pressure keeps the drink only as long as it stays cold",
	Means: "High pressure replaces heat against cells, not refrigeration: spores survive it, and their growth is held by cold and acid alone.",
	Clear: "Nothing to clear: keep cold, validate the reduction of the pertinent pathogen in this drink, and set the life by a challenge study.",
	Law:   []string{"high-pressure-ambient.trade"},
	Check: func(f *facts.Facts) []Hit {
		if !(f.Process.Route == beverage.HighPressure && f.Cold()) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("High pressure of %s, %s.", pressureWords(f), keptWords(f)),
		}}
	},
})

func pressureWords(f *facts.Facts) string {
	if p := f.Drink.Process.PressureMPa; p.Known {
		return fmt.Sprintf("%.0f MPa", p.V)
	}
	return "a level that is not given"
}
