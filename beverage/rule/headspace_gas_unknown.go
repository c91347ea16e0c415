package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "headspace-gas-unknown", Level: review,
	Title: "What fills the headspace of a drink that may be low-acid is not said",
	Means: "Under nitrogen, carbon dioxide or vacuum the spores of Clostridium botulinum find no oxygen. Whether this pack offers them that is not known.",
	Clear: "Give package.headspace_gas. Air over the drink is no control either: oxygen is soon used up.",
	Law:   []string{"nitrogen-low-acid.us"},
	Check: func(f *facts.Facts) []Hit {
		if f.Drink.Package.HeadspaceGas.Known || !f.MayBeLowAcid() || f.Process.Route.Sterilizes() {
			return nil
		}
		return []Hit{{Detail: fmt.Sprintf("%s, %s, and package.headspace_gas is not given.", upper(phWords(f)), routeWords(f))}}
	},
})
