package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "package-liquid-full", Level: stop, OnRoutes: true,
	Title: "The drink may fill the pack completely when warm",
	Means: "Liquid grows with temperature. Once the headspace is gone the pressure is no longer that of a gas: it rises until the pack gives or bursts.",
	Clear: "Fill less, fill warmer, take a larger pack, or lower the hottest temperature.",
	Law:   []string{"pack-liquid-full.trade", "package-pressure.trade"},
	Check: func(f *facts.Facts) []Hit {
		full := f.Pack.FullAt
		if full == nil {
			return nil
		}
		effect := NoEffect
		if s := f.Pack.AtProcess(); s != nil && s.Full {
			effect = RulesOut
		}
		return []Hit{{
			Detail: fmt.Sprintf("No headspace is left at %.0f °C (%s), at the upper end of the fill tolerance.", full.TempC, full.At),
			Values: Values{"temperature_c": full.TempC}, Route: effect,
		}}
	},
})
