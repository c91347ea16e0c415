package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "ph-above-limit", Level: stop, OnRoutes: true,
	Title: "The pH may be above 4.6 on a route that relies on acid",
	Means: "Above pH 4.6 acid alone does not keep Clostridium botulinum from making toxin, and a route that does not sterilize leaves its spores alive.",
	Clear: "Bring the whole pH interval, tolerance included, to 4.6 or below; or take a sterilizing route with a scheduled process.",
	Law:   []string{"us-acidified-deviation", "us-tomato", "ca-low-acid", "uk-low-acid", "anz-canned", "codex-low-acid"},
	Check: func(f *facts.Facts) []Hit {
		line := law.AcidPH()
		if !f.MayBeLowAcid() || f.Cold() || f.Process.Route.Sterilizes() || f.PH.Decides.SurelyAbove(line) {
			return nil
		}
		h := Hit{
			Detail: fmt.Sprintf("%s against the line of %.1f; %s; %s.", upper(phWords(f)), line, routeWords(f), keptWords(f)),
			Values: phValues(f), Route: whereKnown(f),
		}
		return []Hit{h}
	},
})

// whereKnown rules a route out where the pH is known, by colour paper at least,
// and may be too high; it leaves it open where nothing is known of the pH.
func whereKnown(f *facts.Facts) RouteEffect {
	if f.PH.Decides.Known() || f.PH.PaperOnly {
		return RulesOut
	}
	return LeavesOpen
}
