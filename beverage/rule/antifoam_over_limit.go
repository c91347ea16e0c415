package rule

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "antifoam-over-limit", Level: stop,
	Title: "There is more silicone antifoam than the market allows",
	Means: "Dimethylpolysiloxane holds foam down at the filler and on opening. Markets limit it to some 10 to 20 mg/L of drink, counted as the silicone itself and not as the emulsion it is sold in; some let milk drinks have none.",
	Clear: "Give the strength of the preparation, lower the dose to the strictest limit of the markets, or do without; where the kind of drink is argued, ask the adviser.",
	Law:   []string{"us-antifoam", "eu-antifoam", "codex-antifoam", "uk-antifoam", "ca-antifoam", "anz-antifoam"},
	Check: func(f *facts.Facts) []Hit {
		a, unsaid, found := f.Antifoam()
		if !found {
			return nil
		}
		var hits []Hit
		for _, m := range f.Drink.Markets {
			hits = append(hits, antifoamOver(a, unsaid, m, f.AdditiveDrink())...)
		}
		return hits
	},
})

func antifoamOver(a facts.Additive, unsaid bool, m beverage.Market, drink law.DrinkFacts) []Hit {
	r := law.Rule(a.Substance, m, drink)
	high, known := a.In(r.Strict)
	if !known {
		high = math.NaN()
	}
	certain, doubtful := r.Over(high)
	noText := !r.Strict.Known()
	if !certain && !doubtful {
		return nil
	}
	h := Hit{
		Detail:  fmt.Sprintf("%s: %s, %s%s.%s", m, siliconeWords(high), allowedWords(r.Strict), doubtWords(r.Doubt), strengthWords(unsaid)),
		Markets: []beverage.Market{m}, Row: r.Strict.RowID, Values: Values{"substance": a.Substance, "mg_per_l": nil, "limit_mg_per_l": nil},
	}
	if known {
		h.Values["mg_per_l"] = high
	}
	if r.Strict.Permitted == law.PermittedToLimit {
		h.Values["limit_mg_per_l"] = r.Strict.LimitMGPerL
	}
	if !certain || noText {
		h.Level = at(review)
	}
	return []Hit{h}
}

func siliconeWords(highMGPerL float64) string {
	if math.IsNaN(highMGPerL) {
		return law.Antifoam + " in an unknown amount"
	}
	return fmt.Sprintf("up to %.1f mg/L of %s", highMGPerL, law.Antifoam)
}

func allowedWords(limit law.AdditiveLimit) string {
	switch limit.Permitted {
	case law.NotPermitted:
		return "and none is permitted in " + string(limit.Category)
	case law.PermittedToLimit:
		return fmt.Sprintf("limit %.0f mg/L in %s", limit.LimitMGPerL, limit.Category)
	case law.PermittedGMP:
		return "no more than the effect needs in " + string(limit.Category)
	}
	return "no text on it in such a drink is held here, and what is not listed is not permitted"
}

func strengthWords(unsaid bool) string {
	if !unsaid {
		return ""
	}
	return " The strength of the preparation is not given, so it counts as pure."
}
