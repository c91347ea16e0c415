package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "low-acid-ambient-no-sterilization", Level: stop, OnRoutes: true,
	Title: "Low-acid drink at ambient temperature without sterilization",
	Means: "Above pH 4.6 and water activity 0.85 the spores of Clostridium botulinum can grow and make toxin in a closed pack that is not kept cold. Only heat that makes the drink commercially sterile, in the pack or before aseptic filling, removes them.",
	Clear: "Retort the closed pack or fill aseptically, by a process that a process authority has set; or acidify to 4.6 or below; or keep it cold from filling to sale, with the controls that asks for.",
	Law:   []string{"us-low-acid", "us-commercial-sterility"},
	Check: func(f *facts.Facts) []Hit {
		if !(f.Class == beverage.LowAcid && !f.Cold() && !f.Process.Route.Sterilizes()) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("%s and a water activity above 0.85; %s; %s.", upper(phWords(f)), routeWords(f), keptWords(f)),
			Values: phValues(f), Route: RulesOut,
		}}
	},
})
