package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ingredient-override", Level: review,
	Title: "The spec says something about an ingredient that would help the drink",
	Means: "A figure in the spec overrides the library; where it would make the drink look better, the stricter of the two decides until somebody shows the evidence.",
	Clear: "Keep the supplier's specification or analysis at hand and let a qualified person confirm it; or take the override out.",
	Law:   []string{"override.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, l := range f.Recipe.Lines {
			for _, o := range l.Overrides {
				if o.HelpsDrink {
					hits = append(hits, Hit{
						Detail: fmt.Sprintf("%s: %s is given as %s, the library has %s.", l.Line.Name, o.Field, o.Given, o.Library),
						Values: Values{"ingredient": l.Line.Name, "field": o.Field},
					})
				}
			}
		}
		return hits
	},
})
