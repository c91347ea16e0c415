package rule

import (
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "phosphate-over-limit", Level: review,
	Title: "There may be more added phosphate than the market allows",
	Means: "Phosphoric acid and the phosphates that steady milk protein are additives. The EU limits them together, weighed as P2O5, by kind of drink: little in a flavoured drink, more where it is made with whey protein for sport, from milk or from plants. Which kind a protein drink is has to be argued with the adviser.",
	Clear: "Settle with the adviser which kind of drink it is; lower the phosphates to its limit, or hold calcium with citrate.",
	Law:   []string{"eu-phosphate"},
	Check: func(f *facts.Facts) []Hit {
		a, found := f.AddedPhosphate()
		if !found {
			return nil
		}
		var hits []Hit
		for _, m := range f.Drink.Markets {
			hits = append(hits, overOf(a, m, f.AdditiveDrink())...)
		}
		return hits
	},
})
