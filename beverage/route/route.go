// Package route tells, for every process route, whether it is ruled out for a
// drink, and what it would need. It asks the rules about the facts with the
// process replaced; it holds no judgement of its own.
package route

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/need"
	"posset/beverage/rule"
)

// All returns every route for the drink, in the order of beverage.Routes.
func All(f *facts.Facts) []beverage.RouteResult {
	list := make([]beverage.RouteResult, 0, len(beverage.Routes))
	var room facts.Elsewhere
	for _, r := range beverage.Routes {
		list = append(list, on(room.Facts(f, r), r))
	}
	return list
}

// On returns one route for the drink.
func On(f *facts.Facts, r beverage.Route) beverage.RouteResult { return on(f.WithRoute(r), r) }

func on(g *facts.Facts, r beverage.Route) beverage.RouteResult {
	fit, reasons := rule.OnRoute(g)
	return beverage.RouteResult{Route: r, Outcome: fit, Needs: need.For(g).Text, Reasons: reasons}
}
