package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-salt-haze", Level: note,
	Title: "Salt may haze the protein drink",
	Means: "Salt screens the charge that keeps protein apart: at the edge of its clear window a whey drink hazes on heating with salts that leave it clear at pH 3.0 to 3.6, and multivalent ions bridge it.",
	Clear: "Less salt, monovalent acids and salts, a pH of 3.6 or below; add salt after the acid.",
	Law:   []string{"protein-salt-haze.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if k.family == protein.FamilyWhey && (!mayHeat(f) || labileGPerL(k) < proteinLimit("protein_least")) {
				continue // what is published is of whey protein that heat unfolds
			}
			for _, w := range protein.WindowsFor(protein.TopicSaltHaze, k.family) {
				if k.mayReach(proteinLimit("protein_least")) && w.Applies(protein.At{PH: f.PH.Decides}) && w.Span.Stands(f.Ions.SaltMM).MayBeInside() {
					h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), phWords(f), saltWords(f)), Values: proteinValues(f, k)}
					h.Values["salt_mmol_per_l"] = f.Ions.SaltMM.MidOrNil()
					hits = append(hits, windowed(w, h))
					break
				}
			}
		}
		return hits
	},
})

// mayHeat is true unless the route is known not to heat.
func mayHeat(f *facts.Facts) bool { return f.Process.Route == "" || f.Process.Heats() }

func saltWords(f *facts.Facts) string {
	if s := f.Ions.SaltMM; s.Known() {
		return fmt.Sprintf("ionic strength %.0f to %.0f mmol/L beside what balances the protein", s.Low, s.High)
	}
	return "its salt is not known"
}
