package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "osmotolerant-yeast", Level: review,
	Title: "Yeasts that stand sugar and preservatives may grow",
	Means: "Zygosaccharomyces and its like grow in acid, very sweet drinks and in the presence of benzoate and sorbate; their gas bursts packs.",
	Clear: "Pasteurize in the pack, filter and fill clean, buy syrups with a specification for them, and do not rest on preservatives alone.",
	Law:   []string{"osmotolerant-yeast.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.KillsInPack() || f.Cold() || f.Process.Route.Sterilizes() {
			return nil
		}
		sugar := f.Recipe.SugarGPerL
		if !(sugar.Known() && sugar.High >= law.SweetGPerL()) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%.0f g/L of sugars; %s.", sugar.High, routeWords(f)),
			Values: Values{"sugar_g_per_l": sugar.High},
		}}
	},
})
