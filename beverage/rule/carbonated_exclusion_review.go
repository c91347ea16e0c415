package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "carbonated-exclusion-review", Level: review,
	Title: "Whether bubbles take this drink out of the acidified rule is for the authority",
	Means: "The US acidified rule leaves carbonated beverages out, with no word on what they contain. A carbonated drink with protein or another low-acid food is not what that exclusion was read for; and above pH 4.6 it is low-acid, carbonated or not.",
	Clear: "Ask the process authority and the agency in writing; until then treat the drink as acidified.",
	Law:   []string{"us-acidified-exclusions"},
	Check: func(f *facts.Facts) []Hit {
		if !f.In(beverage.US) || !f.Carbonated() || f.Class == beverage.Acid || f.Class == beverage.Outside || f.Class == beverage.Acidified && f.Cold() {
			return nil
		}
		return []Hit{{
			Detail:  fmt.Sprintf("Carbonated, class %s: %s.", f.Class, f.ClassNote),
			Markets: []beverage.Market{beverage.US},
		}}
	},
})
