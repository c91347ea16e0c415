package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "particles-present", Level: review, OnRoutes: true,
	Title: "Particles heat later and acidify later than the liquid",
	Means: "Pulp and pieces are colder inside than the drink around them, take acid slowly and travel through a tube at their own speed. Figures for the clear liquid do not hold for them.",
	Clear: "Have the process set on the slowest particle: its cold spot, its equilibrium pH, its residence time.",
	Law:   []string{"particles.trade", "us-aseptic-tube", "us-acidified-ph-within-time", "ca-low-acid"},
	Check: func(f *facts.Facts) []Hit {
		h := Hit{Detail: fmt.Sprintf("Particles: %s; %s.", f.Drink.Particles.Or("in an ingredient"), routeWords(f))}
		if f.Process.HoldsInTube() {
			h.Route = LeavesOpen
		}
		if !f.HoldsParticles() {
			return nil
		}
		hits := []Hit{h}
		if f.In(beverage.CA) && !f.Cold() {
			hits = append(hits, Hit{Markets: []beverage.Market{beverage.CA}, Row: "ca-low-acid",
				Detail: fmt.Sprintf("Canada calls the drink low-acid where any component of it, a piece too, is above pH %.1f: the pH of the pieces alone is asked for.", law.AcidPH())})
		}
		return hits
	},
})
