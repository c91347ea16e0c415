package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "protein-acid-botulinum", Level: review,
	Title: "Acid alone may not hold botulinum in a protein drink above pH 4.0",
	Means: "4.6 is the legal line. In strictly anaerobic protein, Clostridium botulinum has been published to make toxin below it, to about pH 4.1.",
	Clear: "Bring the upper end of the pH to 4.0 or below, give the drink an F0 of 3 min, keep it cold, or have an authority judge a challenge study in this very drink.",
	Law:   []string{"protein-acid-botulinum.science"},
	Check: func(f *facts.Facts) []Hit {
		p := f.PH.Decides
		limit := law.ProteinBotulinumPH()
		if f.Class == beverage.LowAcid || f.OnlyWater() || p.SurelyBelow(limit) || f.Cold() || f.BotulinumF0Met() {
			return nil
		}
		g := law.ProteinBotulinumPercent() * 10
		if !f.Protein.AtLeast(g) {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("%s, %s, %s.", upper(phWords(f)), proteinWords(f), keptWords(f)), Values: phValues(f)}}
	},
})

// proteinWords tells the protein of the drink.
func proteinWords(f *facts.Facts) string {
	g := f.Protein.GPerL
	if !g.Known() {
		return "protein content unknown"
	}
	return fmt.Sprintf("%.3g g/L protein", g.Mid)
}
