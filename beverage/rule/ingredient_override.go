package rule

import (
	"fmt"
	"strings"

	"posset/beverage/facts"
	"posset/beverage/ingredient"
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
					name, unit := asInSpec(o)
					hits = append(hits, Hit{
						Detail: fmt.Sprintf("%s: %s is given as %s, the library has %s.", l.Line.Name, name, o.Given+unit, o.Library+unit),
						Values: Values{"ingredient": l.Line.Name, "field": o.Field},
					})
				}
			}
		}
		return hits
	},
})

// asInSpec is the key as a spec has it, and what follows its figure.
func asInSpec(o ingredient.Override) (key, unit string) {
	if name, percent := strings.CutSuffix(o.Field, "_percent"); percent {
		return name, " %"
	}
	return o.Field, ""
}
