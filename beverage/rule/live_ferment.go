package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "live-ferment", Level: review,
	Title: "Live cultures go on working in the pack",
	Means: "Living yeasts and bacteria make gas, acid and alcohol after filling: pressure, taste and the legal alcohol limit move with time and warmth.",
	Clear: "Keep cold, set the life by pressure and alcohol at the end of it under abuse, or remove or kill the culture.",
	Law:   []string{"live-ferment.trade", "us-alcohol-half-percent"},
	Check: func(f *facts.Facts) []Hit {
		d := f.Drink
		live := d.LiveCultures.Or(false)
		raw := d.Base.V == beverage.SoldAsFermented && !f.Process.Treats()
		switch {
		case live:
			return []Hit{{Detail: "The spec says that live cultures are in the pack; " + keptWords(f) + "."}}
		case raw:
			return []Hit{{Detail: "A fermented drink, and " + routeWords(f) + ": the culture is taken as alive."}}
		}
		return nil
	},
})
