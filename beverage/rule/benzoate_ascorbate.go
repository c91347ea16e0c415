package rule

import (
	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "benzoate-ascorbate", Level: review,
	Title: "Benzoate and vitamin C together can form benzene",
	Means: "Benzoic acid is decarboxylated to benzene in the presence of ascorbic acid, traces of metal, light and warmth.",
	Clear: "Take another preservative, or leave ascorbic acid out; else bind metals, keep cool and dark, and measure benzene at the end of life.",
	Law:   []string{"benzoate-ascorbate.trade"},
	Check: func(f *facts.Facts) []Hit {
		if !f.Preserved(law.Benzoate) {
			return nil
		}
		var added, fruit []string
		for _, l := range f.Recipe.Lines {
			switch {
			case l.Name == "ascorbic acid" || l.Name == "sodium ascorbate" || l.Name == "acerola juice":
				added = append(added, l.Line.Name)
			case l.Juice || l.Kind == beverage.KindJuice:
				fruit = append(fruit, l.Line.Name)
			}
		}
		switch {
		case len(added) > 0:
			return []Hit{{Detail: "Benzoate beside " + listWords(added) + "."}}
		case len(fruit) > 0:
			return []Hit{{Level: at(note), Detail: "Benzoate beside " + listWords(fruit) + ", which may bring vitamin C of its own; a note, as how much is not known."}}
		}
		return nil
	},
})
