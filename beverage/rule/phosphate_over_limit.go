package rule

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
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
			hits = append(hits, phosphateOver(a, m, f.AdditiveDrink())...)
		}
		return hits
	},
})

func phosphateOver(a facts.Additive, m beverage.Market, drink law.DrinkFacts) []Hit {
	r := law.Rule(a.Substance, m, drink)
	limit := r.Strict
	if limit.Permitted != law.PermittedToLimit {
		return nil
	}
	high, known := a.In(limit)
	if !known {
		high = math.NaN()
	}
	if high <= limit.LimitMGPerL {
		return nil
	}
	h := Hit{
		Detail:  fmt.Sprintf("%s: %s, limit %.0f mg/L%s in %s%s.", m, amountWords(a, limit), limit.LimitMGPerL, weighedWords(limit), limit.Category, doubtWords(r.Doubt)),
		Markets: []beverage.Market{m}, Row: limit.RowID,
		Values: Values{"substance": a.Substance, "mg_per_l": nil, "limit_mg_per_l": limit.LimitMGPerL},
	}
	if known {
		h.Values["mg_per_l"] = high
	}
	return []Hit{h}
}
