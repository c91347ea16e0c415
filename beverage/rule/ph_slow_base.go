package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "ph-slow-base", Level: review,
	Title: "A mineral that dissolves slowly may still raise the pH",
	Means: "Carbonates, oxides and phosphates of calcium and magnesium neutralize acid as they dissolve, over days. The pH on the day of filling is not the one at the end of life.",
	Clear: "Follow the pH to the end of shelf life, or take a mineral that is dissolved from the start.",
	Law:   []string{"slow-base.trade", "us-acidified-ph-within-time"},
	Check: func(f *facts.Facts) []Hit {
		var names []string
		for _, l := range f.Recipe.Lines {
			if l.Figured() && l.SlowBase {
				names = append(names, l.Line.Name)
			}
		}
		if !(len(names) > 0) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%s: up to %.2f pH more once all of it has dissolved; counted in the upper end.", listWords(names), f.PH.SlowShift),
			Values: Values{"ph_shift": f.PH.SlowShift},
		}}
	},
})
