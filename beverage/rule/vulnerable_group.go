package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "vulnerable-group", Level: stop,
	Title: "Drinks for infants or for medical use have their own law",
	Means: "Infant formula, follow-on drinks and foods for special medical purposes fall under laws of their own, with limits that are not held here.",
	Clear: "Take the case to specialists for that law; nothing in this assessment may be used for it.",
	Law:   []string{"vulnerable-group.law"},
	Check: func(f *facts.Facts) []Hit {
		g := f.Drink.IntendedFor
		if !(g.Known && g.V != "general") {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("The drink is intended for: %s.", g.V)}}
	},
})
