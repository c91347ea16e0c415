package rule

import (
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "sulfite-thiamin", Level: review,
	Title: "Sulfite destroys vitamin B1",
	Means: "Sulfite splits thiamin, and US law bars it from foods that are a recognized source of it.",
	Clear: "Leave one of the two out.",
	Law:   []string{"sulfite-thiamin.science"},
	Check: func(f *facts.Facts) []Hit {
		if !f.Preserved(law.Sulfite) || !f.Has("thiamin hydrochloride") {
			return nil
		}
		return []Hit{{Detail: "Sulfite and thiamin in one drink."}}
	},
})
