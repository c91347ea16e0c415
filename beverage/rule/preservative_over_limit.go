package rule

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "preservative-over-limit", Level: stop,
	Title: "A preservative is above its limit",
	Means: "Preservatives have limits by market and by kind of drink, some on the salt, most on the free acid; used together they may count against one another.",
	Clear: "Lower the dose, at the upper end of its tolerance, to the strictest limit of the markets; where the kind of drink is argued, ask the adviser.",
	Law: []string{
		"us-benzoate", "us-sorbate", "us-sulfite", "us-dmdc", "us-edta", "ca-benzoate", "ca-sorbate", "ca-sulfite", "ca-dmdc", "eu-benzoate", "eu-sorbate", "eu-benzoate-plus-sorbate", "eu-sulfite",
		"uk-preservatives", "anz-benzoate", "anz-sorbate", "anz-sulfite", "anz-additive-sum", "codex-benzoate", "codex-sorbate", "codex-sulfite",
	},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		drink := f.AdditiveDrink()
		for _, m := range f.Drink.Markets {
			for _, a := range f.Additives() {
				hits = append(hits, overOf(a, m, drink)...)
			}
			hits = append(hits, together(f, m, drink)...)
		}
		return hits
	},
})

func overOf(a facts.Additive, m beverage.Market, drink law.DrinkFacts) []Hit {
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
	certain, doubtful := r.Over(high)
	if !certain && !doubtful {
		return nil
	}
	h := Hit{
		Detail:  fmt.Sprintf("%s: %s, limit %.0f mg/L%s in %s%s.", m, amountWords(a, limit), limit.LimitMGPerL, weighedWords(limit), limit.Category, doubtWords(r.Doubt)),
		Markets: []beverage.Market{m}, Row: limit.RowID,
		Values: Values{"substance": a.Substance, "limit_mg_per_l": limit.LimitMGPerL},
	}
	if known {
		h.Values["mg_per_l"] = high
	}
	if !certain {
		h.Level = at(review)
	}
	return []Hit{h}
}

func amountWords(a facts.Additive, limit law.AdditiveLimit) string {
	high, known := a.In(limit)
	if !known {
		return a.Substance + " in an unknown amount"
	}
	return fmt.Sprintf("up to %.0f mg/L %s%s", high, a.Substance, weighedWords(limit))
}

// weighedWords says what a limit weighs, where that is not what was put in.
func weighedWords(limit law.AdditiveLimit) string {
	if limit.ExpressedAs == law.AsAdded {
		return ", " + law.AsAdded
	}
	return " as " + limit.ExpressedAs
}

func doubtWords(doubt string) string {
	if doubt == "" {
		return ""
	}
	return " (" + doubt + ")"
}

// together holds preservatives used together against the market's rules for it.
func together(f *facts.Facts, m beverage.Market, drink law.DrinkFacts) []Hit {
	var hits []Hit
	acid := map[string]float64{}
	for _, a := range f.Additives() {
		acid[a.Substance] = a.AsAcid.High
		if !a.AsAcid.Known() {
			acid[a.Substance] = math.NaN()
		}
	}
	for _, s := range law.SumRules(m) {
		share, bites := s.Share(acid, drink)
		if !bites || share <= 1 {
			continue
		}
		hits = append(hits, Hit{
			Detail:  fmt.Sprintf("%s: %s used together take %.0f %% of what is allowed together.", m, listWords(s.Substances), 100*share),
			Markets: []beverage.Market{m}, Row: s.RowID, Values: Values{"share_of_allowed": share},
		})
	}
	return hits
}
