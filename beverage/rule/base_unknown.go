package rule

import "posset/beverage/facts"

var _ = declare(Rule{
	ID: "base-unknown", Level: note,
	Title: "How the drink is sold is not said",
	Means: "Juice, milk, tea and plant drinks have rules of their own, and their base may be a low-acid food. Without drink.base none of that can be ruled out, and below pH 4.6 the drink counts as acidified.",
	Clear: "Give drink.base.",
	Law:   []string{"unknown-ingredient.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Drink.Base.Known {
			return nil
		}
		return []Hit{{Detail: "drink.base is not given."}}
	},
})
