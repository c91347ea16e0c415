package rule

import (
	"fmt"
	"slices"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-browning", Level: note,
	Title: "Protein and reducing sugar brown in storage",
	Means: "Lactose, glucose and fructose join with the lysine of protein on heating and go on in warm storage: brown colour, cooked and stale notes, lysine lost. Split lactose is worse. In acid it is slower, but sucrose inverts and joins in.",
	Clear: "Sucrose or a sweetener near neutral pH, a sweetener in acid, less heat, colder or shorter storage; keep samples warm over the life.",
	Law:   []string{"protein-browning.science"},
	Check: func(f *facts.Facts) []Hit {
		if f.Cold() {
			return nil
		}
		for _, k := range families(f) {
			if !k.mayReach(proteinLimit("protein_least")) {
				continue
			}
			for _, w := range protein.WindowsFor(protein.TopicBrowning, k.family) {
				if h, ok := browns(f, k, w); ok {
					return []Hit{windowed(w, h)}
				}
			}
		}
		return nil
	},
})

// browns holds the drink against one window: near neutral by its reducing sugar,
// in acid by any sugar over a long warm life.
func browns(f *facts.Facts, k kept, w protein.Window) (Hit, bool) {
	sugar, acid := f.ReducingSugarGPerL(), w.ID == "brown-acid"
	if acid {
		sugar = f.Recipe.SugarGPerL
	}
	if !w.Applies(protein.At{PH: f.PH.Decides}) || !w.Span.Stands(f.StoredC()).MayBeInside() || sugar.High < proteinLimit("reducing_sugar_least") {
		return Hit{}, false
	}
	const secondsPerMonth = 30.4375 * 86400
	life := f.Drink.Storage.ShelfLifeS
	if acid && life.Known && life.V < proteinLimit("acid_browning_months")*secondsPerMonth {
		return Hit{}, false
	}
	h := Hit{Detail: fmt.Sprintf("%s, up to %.3g g/L of sugar that may join%s, %s, %s", k.words(), sugar.High, splitWords(f), phWords(f), lifeWords(f)), Values: proteinValues(f, k)}
	h.Values["sugar_g_per_l_high"] = sugar.HighOrNil()
	return h, true
}

// splitWords tells that the milk sugar of the recipe is split, which browns faster.
func splitWords(f *facts.Facts) string {
	split := func(l facts.Line) bool {
		milk := l.MilkProduct && l.Entry.Sugars.Known() && l.Entry.Lactose.Known()
		return milk && l.Share(l.Entry.Sugars).Low-l.Share(l.Entry.Lactose).High >= proteinLimit("reducing_sugar_least")
	}
	if slices.ContainsFunc(f.Recipe.Lines, split) {
		return ", split milk sugar among it, which goes faster than lactose"
	}
	return ""
}
