package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "preservative-not-permitted", Level: stop,
	Title: "A preservative is not permitted in this drink, or no text says that it is",
	Means: "Additives are permitted by list: what a market's list does not name for this kind of drink may not be in it.",
	Clear: "Leave it out for that market, or show the entry that permits it; where the kind of drink is argued, ask the adviser.",
	Law:   []string{"us-dmdc", "eu-juice-preservatives", "eu-tea-coffee-preservatives"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		drink := f.AdditiveDrink()
		for _, m := range f.Drink.Markets {
			for _, a := range f.Additives() {
				hits = append(hits, permittedOf(a, m, drink)...)
			}
		}
		return hits
	},
})

func permittedOf(a facts.Additive, m beverage.Market, drink law.DrinkFacts) []Hit {
	r := law.Rule(a.Substance, m, drink)
	h := Hit{Markets: []beverage.Market{m}, Row: r.Strict.RowID, Values: Values{"substance": a.Substance}}
	switch {
	case !r.Strict.Known():
		h.Level, h.Row = at(review), ""
		h.Detail = fmt.Sprintf("%s: no text on %s in such a drink is held here; what is not listed is not permitted.", m, a.Substance)
	case r.Strict.Permitted != law.NotPermitted:
		return nil
	default:
		h.Detail = fmt.Sprintf("%s: %s is not permitted in %s%s.", m, a.Substance, r.Strict.Category, doubtWords(r.Doubt))
		if r.Lenient.Permitted != law.NotPermitted || r.Doubt != "" {
			h.Level = at(review)
		}
	}
	return []Hit{h}
}
