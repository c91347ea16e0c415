package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "hot-fill-package", Level: stop, OnRoutes: true,
	Title: "The pack does not hold its shape at hot-fill temperature",
	Means: "Plain PET softens near 76 °C and creeps well below that; a bottle that shrinks or ovalizes loses its seal, and with it the step that kept the drink.",
	Clear: "Take a heat-set PET bottle within its limit, glass, a can or another pack that its supplier rates for the fill temperature; or fill cold after another process.",
	Law:   []string{"hot-fill-package.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != beverage.HotFill || !f.Drink.Package.Type.Known {
			return nil
		}
		limit, ok := hottestFillC(f.Drink.Package.Type.V)
		if !ok {
			return nil
		}
		fill, known := f.HotFillC()
		if known && fill <= limit {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("%s, filled at %s: its hottest usual fill is %.0f °C.", upper(string(f.Drink.Package.Type.V)), degreesWords(fill, known), limit),
			Values: Values{"limit_c": limit}, Route: RulesOut,
		}
		if !known && limit >= usualHotFillC {
			h.Level, h.Route = at(review), LeavesOpen
		}
		if !known && limit >= hottestHotFillC {
			return nil
		}
		return []Hit{h}
	},
})

// What a hot fill is at where no temperature is given: the coolest and the
// hottest of usual fills. Common practice, no source.
const (
	usualHotFillC   = 82
	hottestHotFillC = 96
)

func degreesWords(c float64, known bool) string {
	if !known {
		return "a temperature that is not given"
	}
	return fmt.Sprintf("%.0f °C", c)
}
