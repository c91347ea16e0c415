package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "nitrogen-low-acid", Level: stop, OnRoutes: true,
	Title: "Nitrogen over a drink that is or may be low-acid",
	Means: "Nitrogen takes the oxygen out of the pack. Clostridium botulinum grows only without oxygen, so a low-acid drink under nitrogen that nobody sterilized offers it what it needs; nitrogen-flushed cold coffee has been recalled for this.",
	Clear: "Sterilize by a scheduled process, acidify to 4.6 or below, or leave the nitrogen out and keep the drink cold with a published control.",
	Law:   []string{"nitrogen-low-acid.us"},
	Check: func(f *facts.Facts) []Hit {
		p := f.Drink.Package
		nitrogen := p.HeadspaceGas.V == beverage.Nitrogen || p.NitrogenG.Or(0) > 0 || f.Has("nitrogen")
		if !nitrogen || !f.MayBeLowAcid() || f.Process.Route.Sterilizes() {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("Nitrogen in the pack, %s, %s, %s.", phWords(f), routeWords(f), keptWords(f)),
			Values: phValues(f), Route: whereKnown(f),
		}
		if f.Cold() {
			h.Level, h.Route = at(review), LeavesOpen
		}
		return []Hit{h}
	},
})
