package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "alcohol-outside", Level: review,
	Title: "At this strength the drink is an alcoholic beverage",
	Means: "Alcoholic beverages are outside the low-acid and acidified rules, and inside the law on alcohol. That clears no hazard: pathogens and spoilage are judged as before.",
	Clear: "Take advice on alcohol law in each market; keep the most it will ever hold below the line if it is meant to be a soft drink.",
	Law:   []string{"alcohol-outside.us", "us-alcohol-half-percent", "eu-alcohol-label", "ca-alcohol", "anz-alcohol"},
	Check: func(f *facts.Facts) []Hit {
		a := f.Drink.AlcoholPercent
		if !a.Known || a.V < law.AlcoholPercent() {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%.2g %% by volume; the strictest line is %.1f %%.", a.V, law.AlcoholPercent()),
			Values: Values{"alcohol_percent": a.V},
		}}
	},
})
