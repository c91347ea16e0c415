package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "package-unknown", Level: note,
	Title: "The pack is not said",
	Means: "Without package.type nothing can be said of what heat, pressure and gas the pack stands, nor of what it lets through.",
	Clear: "Give package.type, and from its supplier the brimful volume and the rating.",
	Law:   []string{"pack-route.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Drink.Package.Type.Known {
			return nil
		}
		return []Hit{{Detail: "package.type is not given."}}
	},
})
