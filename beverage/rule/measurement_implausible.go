package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "measurement-implausible", Level: review,
	Title: "Two figures of the drink cannot both be true",
	Means: "Where a reading and what the recipe or another reading says lie further apart than both their doubts, one of them is wrong; the unfavourable one counts until that is settled.",
	Clear: "Repeat the measurement, check the recipe's amounts, and correct the one that is wrong.",
	Law:   []string{"measurement.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, c := range f.Conflicts() {
			hits = append(hits, Hit{Detail: fmt.Sprintf("%s.", c.Text), Values: Values{"what": c.What}})
		}
		return hits
	},
})
