package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "package-route-mismatch", Level: stop, OnRoutes: true,
	Title: "Pack, gas and route do not go together",
	Means: "Some packs cannot take the heat, the outside pressure, the gas or the freezing that the description asks of them.",
	Clear: "Change the pack or the route; the detail says which of them is at odds.",
	Law:   []string{"pack-route.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, m := range mismatches(f) {
			h := Hit{Detail: m.text, Values: Values{"package": string(f.Drink.Package.Type.V), "route": string(f.Process.Route)}, Route: m.effect}
			if m.doubt {
				h.Level = at(review)
			}
			hits = append(hits, h)
		}
		return hits
	},
})

// mismatch is one pair of things that do not go together.
type mismatch struct {
	text   string
	doubt  bool // a pack of that kind exists that can: ask its supplier
	effect RouteEffect
}

func mismatches(f *facts.Facts) []mismatch {
	var list []mismatch
	r, p := f.Process.Route, f.Drink.Package.Type
	if f.Carbonated() && r == beverage.HotFill {
		list = append(list, mismatch{text: "A carbonated drink cannot be filled hot: the gas leaves it at an open filler.", effect: RulesOut})
	}
	if !p.Known {
		if needsPack(r) || f.Carbonated() || f.Drink.Storage.Distribution.V == beverage.Frozen {
			list = append(list, mismatch{text: "No package.type is given: whether the pack stands heat, pressure, gas or freezing is unknown.", doubt: true, effect: LeavesOpen})
		}
		return list
	}
	if m, ok := packOnRoute(p.V, r); ok {
		list = append(list, m)
	}
	if f.Carbonated() && !holdsGas(p.V) {
		list = append(list, mismatch{text: fmt.Sprintf("A %s does not hold carbonation.", p.V)})
	}
	if f.Drink.Storage.Distribution.V == beverage.Frozen && burstsFrozen(p.V) {
		list = append(list, mismatch{text: fmt.Sprintf("A filled %s bursts when it freezes.", p.V)})
	}
	return list
}

// needsPack tells whether a route asks something of the pack beyond being closed.
func needsPack(r beverage.Route) bool {
	switch r {
	case beverage.HotFill, beverage.Tunnel, beverage.RetortRoute, beverage.HighPressure, beverage.Aseptic:
		return true
	}
	return false
}
