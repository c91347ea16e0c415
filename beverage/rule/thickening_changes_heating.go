package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "thickening-changes-heating", Level: review, OnRoutes: true,
	Title: "A drink that thickens heats otherwise than the thin one",
	Means: "Consistency is a critical factor of a process. Gel or thickening turns mixing into conduction: heat-penetration data, hold times and flow of the thin drink do not apply, and the cold spot may lag by many minutes.",
	Clear: "Show that the drink stays thin through the whole process, or have heat penetration or residence time measured in the drink as it is when hot and when cooled.",
	Law:   []string{"thickening.us"},
	Check: func(f *facts.Facts) []Hit {
		if !inTubeOrRetort(f) {
			return nil
		}
		k, what := kept{}, ""
		if g, gels := gelOf(f); gels {
			k, what = g.k, "may gel"
		} else if thick := thickened(f); len(thick) > 0 {
			k, what = thick[0].k, "is thick"
		}
		if what == "" {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%s %s; %s.", upper(k.words()), what, heatWords(f)),
			Values: proteinValues(f, k), Route: LeavesOpen,
		}}
	},
})
