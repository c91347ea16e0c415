package rule

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "preservative-not-permitted", Level: stop,
	Title: "A preservative is not permitted in this drink, or no text says that it is",
	Means: "Additives are permitted by list: what a market's list does not name for this kind of drink may not be in it.",
	Clear: "Leave it out for that market, or show the entry that permits it; where the kind of drink is argued, ask the adviser.",
	Law: []string{
		"us-additive-list", "us-dmdc", "us-natamycin", "us-nisin", "us-edta", "ca-additive-list", "eu-additive-list", "eu-juice-preservatives", "eu-tea-coffee-preservatives", "eu-natamycin",
		"uk-additive-list", "uk-preservatives", "anz-additive-list", "codex-additive-list",
	},
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
		h.Level, h.Row, h.Rows = at(review), "", listRows
		h.Detail = fmt.Sprintf("%s: no text on %s in such a drink is held here; what is not listed is not permitted.", m, a.Substance)
	case r.Strict.Permitted != law.NotPermitted && r.Lenient.Known():
		return nil
	case r.Strict.Permitted != law.NotPermitted:
		h.Level = at(review)
		h.Detail = fmt.Sprintf("%s: %s is listed for %s; whether this drink is one is open (%s), and for another kind no text is held here.", m, a.Substance, kindWords(r.Strict.Category), r.Doubt)
	default:
		h.Detail = fmt.Sprintf("%s: %s is not permitted in %s%s%s.", m, a.Substance, barredWords(r), elsewhere(r), doubtWords(r.Doubt))
		switch out := barred(r, a); {
		case !out:
			h.Level = at(review)
		case r.Lenient.Permitted == law.NotPermitted:
			h.Detail = fmt.Sprintf("%s: %s is not permitted in %s.", m, a.Substance, barredWords(r))
		}
	}
	return []Hit{h}
}

// listRows say for each market that an additive is permitted by list only.
var listRows = []string{"us-additive-list", "ca-additive-list", "eu-additive-list", "uk-additive-list", "anz-additive-list", "codex-additive-list"}

// barred tells whether the amount is out on every reading of the drink, and no
// entry is in doubt.
func barred(r law.Ruling, a facts.Additive) bool {
	high, known := a.In(r.Lenient)
	if r.Lenient.Permitted == law.NotPermitted {
		high, known = 1, true
	}
	certain, _ := r.Over(high)
	return known && certain
}

// barredWords names the kind of drink, or every one where no reading allows it.
func barredWords(r law.Ruling) string {
	if r.Lenient.Permitted == law.NotPermitted && r.Strict.Category == law.AnyDrink {
		return "any drink"
	}
	return kindWords(r.Strict.Category)
}

func kindWords(c law.Category) string {
	if c == law.AnyDrink {
		return "a drink that the text does not name"
	}
	if strings.HasSuffix(string(c), "drink") {
		return withArticle(string(c))
	}
	return string(c)
}

// elsewhere tells the kind of drink, also open here, in which it may be.
func elsewhere(r law.Ruling) string {
	switch r.Lenient.Permitted {
	case law.PermittedToLimit:
		return fmt.Sprintf("; in %s it may be up to %.0f mg/L", kindWords(r.Lenient.Category), r.Lenient.LimitMGPerL)
	case law.PermittedGMP:
		return fmt.Sprintf("; in %s it may be by good practice", kindWords(r.Lenient.Category))
	}
	return ""
}

func withArticle(noun string) string {
	if strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}
