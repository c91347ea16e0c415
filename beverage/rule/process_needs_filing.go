package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "process-needs-filing", Level: review,
	Title: "Plant and process are registered and filed",
	Means: "In the United States a plant that packs low-acid or acidified drinks for ambient sale registers, and files the scheduled process for each product and container size before packing it. Filing is not approval.",
	Clear: "Ask the co-packer for its registration and for the filing of this product and container size.",
	Law:   []string{"us-acidified-filing", "us-lacf-filing", "us-filing-forms"},
	Check: func(f *facts.Facts) []Hit {
		markets := filedIn(f)
		if len(markets) == 0 || f.Cold() || f.Process.Route == beverage.Aseptic {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("Class %s, %s.", f.Class, keptWords(f)), Markets: markets}
		switch {
		case f.Class != beverage.Acidified:
			h.Row = "us-lacf-filing"
		case f.Carbonated():
			h.Detail += " Carbonated beverages are left out of the acidified rule: until the agency has said so of this drink, take it as one to be filed."
		}
		return []Hit{h}
	},
})
