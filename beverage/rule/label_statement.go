package rule

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "label-statement", Level: note,
	Title: "The label has something to say of what is in the drink",
	Means: "Markets ask for words on the label once certain things are in a drink: sulfite, caffeine, sweeteners, phenylalanine, polyols, juice, preservatives, much protein, alcohol. What is listed is what was read or recalled, not all that a label needs.",
	Clear: "Put the statements on the label in the words of the text in force, and have somebody who knows that market's labelling law read the whole label.",
	Law: []string{
		"us-sulfite-label", "us-juice-declaration", "us-untreated-juice-label", "us-preservative-label", "us-aspartame-label", "us-sorbitol-label", "us-protein-label", "refrigerated-low-acid.us-juice", "us-alcohol-half-percent",
		"ca-sulfite-label", "ca-supplemented", "ca-aspartame-label", "ca-polyol-label", "ca-hydrolysate-label", "ca-low-acid", "ca-alcohol", "ca-juice",
		"eu-sulfite-label", "eu-caffeine", "eu-sweetener-label", "eu-juice-name", "eu-alcohol-label",
		"uk-sulfite-label", "uk-caffeine", "uk-sweetener-label",
		"anz-sulfite-label", "anz-advisory", "anz-alcohol",
	},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, m := range f.Drink.Markets {
			var due, sources []string
			row := ""
			for _, s := range law.Statements(m) {
				words, calls := calledFor(f, s)
				if !calls {
					continue
				}
				due = append(due, words)
				sources = append(sources, law.MustGet(s.RowID).Cite())
				if row == "" {
					row = s.RowID
				}
			}
			if len(due) > 0 {
				hits = append(hits, Hit{Detail: fmt.Sprintf("%s asks for: %s.", m, strings.Join(due, "; ")), Markets: []beverage.Market{m}, Row: row,
					Values: Values{"statements": due, "sources": sources}})
			}
		}
		return hits
	},
})

// calledFor tells whether the drink calls for a statement, and puts it in words:
// what to say, for what, from how much on, and what would free from it.
func calledFor(f *facts.Facts, s law.Statement) (string, bool) {
	of, ok := labelTriggers[s.Trigger]
	if !ok {
		return "", false
	}
	a := of(f)
	if !a.present || !a.reaches(f, s.Bound) {
		return "", false
	}
	words := fmt.Sprintf("%s (%s", s.Says, s.Trigger)
	if s.Bound.Op != "" {
		words += ", " + a.words() + ", asked for at " + s.Bound.String()
	}
	if s.Unless != "" {
		words += "; not due where " + s.Unless
	}
	return words + ")", true
}
