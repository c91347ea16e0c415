package ingredient

import (
	"slices"
	"strings"

	"posset/beverage"
)

// described tells whether an entry has its kind and the figures that such a
// kind needs to be counted in a drink.
func described(e Entry) bool {
	made := len(e.Shares) > 0
	switch e.Kind {
	case "":
		return false
	case beverage.KindProtein:
		return e.Protein.Known()
	case beverage.KindAcid, beverage.KindJuice, beverage.KindExtract:
		return made || e.OwnPH.Known() && e.Acidity.Known()
	case beverage.KindOther:
		return e.Formula != "" || e.OwnPH.Known() && (e.Acidity.Known() || e.Protein.Known())
	case beverage.KindSalt, beverage.KindMineral:
		return made || hasMetal(e)
	case beverage.KindPreservative:
		return e.Preservative != ""
	}
	return true
}

func hasMetal(e Entry) bool {
	return e.Sodium.Known() || e.Potassium.Known() || e.Calcium.Known() || e.Magnesium.Known()
}

// plantMilks are the words that make a milk none of an animal.
var plantMilks = []string{"almond", "oat", "soy", "soya", "coconut", "rice", "hemp", "pea", "cashew", "nut", "hazelnut", "macadamia", "plant", "tiger"}

// isMilk tells from its name that a described ingredient is milk of an animal.
func isMilk(name string) bool {
	ws := words(name)
	return slices.Contains(ws, "milk") && !slices.ContainsFunc(ws, func(w string) bool { return slices.Contains(plantMilks, w) })
}

// preservativeStems are how the names of preservatives show their group.
var preservativeStems = []struct{ stem, group string }{
	{"benzo", "benzoate"}, {"sorb", "sorbate"}, {"sulfite", "sulfite"}, {"dicarbonate", "dimethyl dicarbonate"},
	{"nisin", "nisin"}, {"natamycin", "natamycin"}, {"glycolipid", "glycolipids"}, {"arginate", "lauric arginate"},
}

// preservativeFromName puts a described preservative into the group that its
// name shows; it counts as wholly active, the cautious way for a limit.
func (e *Entry) preservativeFromName() {
	name := strings.Join(words(e.Name), " ")
	for _, s := range preservativeStems {
		if e.Preservative == "" && strings.Contains(name, s.stem) {
			e.Preservative, e.ActiveFraction = s.group, 1
		}
	}
}

// acidOf is the component name of an acid as a spec writes it: "citric acid".
func acidOf(as string) string {
	name, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(as)), " ")
	return name
}
