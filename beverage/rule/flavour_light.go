package rule

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "flavour-light", Level: note,
	Title: "Light through the pack spoils the flavour",
	Means: "Riboflavin of dairy protein takes up light and lets methionine and fat go off: a light-struck taste within days on a lit shelf in a clear pack; colours and vitamins fade too.",
	Clear: "A can, a carton, or a bottle or sleeve that blocks light below 500 nm; keep samples under shop light.",
	Law:   []string{"flavour-light.trade"},
	Check: func(f *facts.Facts) []Hit {
		pack := f.Drink.Package.Type
		if !pack.Known || !slices.Contains(lightPacks, pack.V) {
			return nil
		}
		w := windowOf("light-clear-pack")
		for _, k := range families(f) {
			if w.Speaks(k.family) && k.mayReach(proteinLimit("protein_least")) {
				h := Hit{Detail: fmt.Sprintf("%s in a %s, unless it is coloured or covered", k.words(), pack.V), Values: proteinValues(f, k)}
				return []Hit{windowed(w, h)}
			}
		}
		return nil
	},
})

// lightPacks are the packs that are clear unless they are coloured or sleeved.
var lightPacks = []beverage.PackType{"glass bottle", "PET bottle", "heat-set PET bottle", "PP bottle", "cup"}
