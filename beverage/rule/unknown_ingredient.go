package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "unknown-ingredient", Level: review,
	Title: "An ingredient is not known and not described",
	Means: "What an unknown ingredient brings, acid, protein, spores, an additive with a limit, is unknown, and counts against the drink.",
	Clear: "Use a name of the library, or describe it in the spec: its kind, its own pH and acidity, its protein.",
	Law:   []string{"unknown-ingredient.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, l := range f.Recipe.Unknown {
			hits = append(hits, Hit{
				Detail: fmt.Sprintf("%s%s.", l.Line.Name, nearWords(l.Near)),
				Values: Values{"ingredient": l.Line.Name, "near": l.Near},
			})
		}
		return hits
	},
})

func nearWords(near []string) string {
	if len(near) == 0 {
		return ": nothing like it is in the library"
	}
	return "; the library has " + listWords(near)
}
