package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "cold-fill-no-preservative", Level: review,
	Title: "A drink filled cold for ambient sale holds no preservative",
	Means: "What the filler, the pack and the air bring in after any heat is not treated again. Without a preservative yeasts, moulds and lactic acid bacteria decide the shelf life.",
	Clear: "Add a permitted preservative at an effective pH, treat in the pack or fill aseptically, or keep cold.",
	Law:   []string{"cold-fill.trade", "us-acidified-thermal"},
	Check: func(f *facts.Facts) []Hit {
		open := !f.Process.Treats() || f.FilledOpenAfterHeat()
		if !open || f.Cold() || f.OnlyWater() || f.Class == beverage.LowAcid || len(f.Additives()) > 0 {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("%s, %s, no preservative in the recipe.", upper(routeWords(f)), keptWords(f))}}
	},
})
