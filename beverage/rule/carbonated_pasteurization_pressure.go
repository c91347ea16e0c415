package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "carbonated-pasteurization-pressure", Level: stop, OnRoutes: true,
	Title: "A carbonated pack is heated and its pressure there is not shown to be held",
	Means: "CO2 leaves the liquid when it is warmed. In the hottest zone of a tunnel, or in a retort, a carbonated pack sees several times its shelf pressure.",
	Clear: "Lower the carbonation, leave more headspace, take a heavier pack, or pasteurize in line under pressure and fill cold.",
	Law:   []string{"carbonated-tunnel.trade", "package-pressure.trade"},
	Check: func(f *facts.Facts) []Hit {
		r := f.Process.Route
		if !f.Carbonated() || r != beverage.Tunnel && r != beverage.RetortRoute {
			return nil
		}
		h := Hit{Values: Values{"gauge_kpa_high": nil, "rating_gauge_kpa": nil}, Route: RulesOut}
		s := f.Pack.AtProcess()
		switch {
		case r == beverage.RetortRoute:
			h.Detail = "A carbonated pack in a retort: no published practice holds the gas at sterilizing temperature."
		case s == nil:
			h.Level, h.Route = at(review), LeavesOpen
			h.Detail = "The hottest zone, the fill or the gas is not given, so the pressure there is not known."
		case s.Full:
			h.Detail = fmt.Sprintf("The pack is liquid-full at %.0f °C.", s.TempC)
		case s.HighKPa == nil || !f.Pack.Rating.Known:
			h.Level, h.Route = at(review), LeavesOpen
			h.Detail = fmt.Sprintf("At %.0f °C the pressure cannot be held against a rating.", s.TempC)
		case *s.HighKPa <= f.Pack.Rating.V:
			return nil
		default:
			h.Detail = fmt.Sprintf("Up to %.2f barg at %.0f °C against a rating of %.2f barg.", *s.HighKPa/100, s.TempC, f.Pack.Rating.V/100)
			h.Values = Values{"gauge_kpa_high": *s.HighKPa, "rating_gauge_kpa": f.Pack.Rating.V, "temperature_c": s.TempC}
		}
		return []Hit{h}
	},
})
