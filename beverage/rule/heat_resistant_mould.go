package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "heat-resistant-mould", Level: review,
	Title: "Heat-resistant moulds come with fruit and survive pasteurization",
	Means: "Ascospores of Byssochlamys, Talaromyces and Aspergillus fischeri outlast hot fill and tunnel pasteurization, grow with very little oxygen and can form patulin.",
	Clear: "Buy fruit preparations with a specification for them, filter where the drink allows, keep oxygen out, or set the process for them.",
	Law:   []string{"heat-resistant-mould.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Class == beverage.LowAcid || f.Class == beverage.Outside || f.Cold() || !f.HoldsJuice() || !f.Process.Heats() || f.Process.Route == beverage.RetortRoute {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("Fruit in the drink, %s, %s.", routeWords(f), keptWords(f))}}
	},
})
