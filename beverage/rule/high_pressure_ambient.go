package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "high-pressure-ambient", Level: stop, OnRoutes: true,
	Title: "High pressure does not make a low-acid drink keep at ambient temperature",
	Means: "High pressure at chill temperature kills cells but leaves bacterial spores alive, those of Clostridium botulinum among them.",
	Clear: "Keep the drink cold from press to sale, with its own control against spores; or take a retort or aseptic process.",
	Law:   []string{"high-pressure-ambient.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != beverage.HighPressure || !f.MayBeLowAcid() || f.Cold() {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("High pressure, %s, %s.", phWords(f), keptWords(f)), Values: phValues(f), Route: whereKnown(f)}
		return []Hit{h}
	},
})
