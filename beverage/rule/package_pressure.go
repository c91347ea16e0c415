package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "package-pressure", Level: stop, OnRoutes: true,
	Title: "The pack may see more pressure than it is rated for",
	Means: "Gas, warm air and water vapour press on the closed pack; above its rating a can reverses its dome, a bottle creeps or bursts, and people get hurt.",
	Clear: "Lower the carbonation or the temperature, leave more headspace, or take a pack with a higher rating from its supplier.",
	Law:   []string{"package-pressure.trade"},
	Check: func(f *facts.Facts) []Hit {
		over := f.Pack.Over()
		if over == nil {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("Up to %.2f barg at %.0f °C (%s) against a rating of %.2f barg.", *over.HighKPa/100, over.TempC, over.At, f.Pack.Rating.V/100),
			Values: Values{"temperature_c": over.TempC, "gauge_kpa_high": *over.HighKPa, "rating_gauge_kpa": f.Pack.Rating.V},
			Route:  overOnRoute(f.Pack),
		}}
	},
})

// overOnRoute: a pack that is over at its process temperature does not go down
// that route; over in storage says nothing about the route.
func overOnRoute(p facts.Pack) RouteEffect {
	if s := p.AtProcess(); s != nil && s.HighKPa != nil && *s.HighKPa > p.Rating.V {
		return RulesOut
	}
	return NoEffect
}
