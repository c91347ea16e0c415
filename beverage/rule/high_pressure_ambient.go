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
		if f.Process.Route != beverage.HighPressure || f.Cold() || f.OnlyWater() {
			return nil
		}
		if !f.MayBeLowAcid() {
			return []Hit{{Level: at(review), Route: LeavesOpen,
				Detail: fmt.Sprintf("High pressure, %s, %s. Acid holds botulinum, so this is a review: spores of moulds and of acid-loving bacteria stand the press, and pressed drinks are sold cold.", phWords(f), keptWords(f))}}
		}
		h := Hit{Detail: fmt.Sprintf("High pressure, %s, %s.", phWords(f), keptWords(f)), Values: phValues(f), Route: whereKnown(f)}
		return []Hit{h}
	},
})
