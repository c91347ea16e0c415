package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "sterile-filtration-protein", Level: review, OnRoutes: true,
	Title: "A sterile filter and what the drink holds do not go together easily",
	Means: "The pores of a sterile filter are as small as casein micelles, smaller than fat, pulp and plant particles: those are held back and block it. Dissolved whey protein and peptides go through, foul it, and leave flow and integrity to be shown. A filter takes out neither all viruses nor toxins, and low-acid sterility is defined by heat.",
	Clear: "Heat in place of the filter, or filter the clear part and add the rest sterile; for whey or peptides prefilter, filter before any heat, and have the filter tested with this very drink.",
	Law:   []string{"sterile-filtration-protein.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Process.Route != beverage.SterileFiltration {
			return nil
		}
		if f.HoldsParticles() {
			return []Hit{{Detail: "Particles are in the drink, which a sterile filter holds back.", Route: RulesOut}}
		}
		var hits []Hit
		for _, k := range families(f) {
			hits = append(hits, filtered(f, k))
		}
		for _, l := range f.Recipe.Lines {
			if !l.Figured() || unknownProtein(f, l) != "" {
				hits = append(hits, Hit{Detail: upper(l.Line.Name) + ": what of it a sterile filter holds back is not known.", Route: LeavesOpen})
			}
		}
		return hits
	},
})

// filtered tells casein, fat and plant particles, which do not go through, from
// dissolved protein, which must be tried.
func filtered(f *facts.Facts, k kept) Hit {
	h := Hit{Detail: fmt.Sprintf("%s, %s", k.words(), poreWords(f)), Values: proteinValues(f, k), Route: LeavesOpen}
	w := windowOf("filter-protein")
	switch {
	case k.family.HoldsCasein():
		w, h.Route = windowOf("filter-micelle"), RulesOut
	case k.family == protein.FamilyPlant || holdsFat(f, k):
		h.Detail += ", cloudy with particles that no sterile filter lets through"
		h.Route = RulesOut
	}
	return windowed(w, h)
}

// holdsFat is true of protein that is never clear, for the fat and phospholipid it brings.
func holdsFat(f *facts.Facts, k kept) bool {
	for _, p := range k.parts {
		if c, _ := p.Composition.Clarity(f.PH.Decides, f.Ions.SaltMM); c == protein.NeverClear {
			return true
		}
	}
	return false
}

func poreWords(f *facts.Facts) string {
	if p := f.Drink.Process.FilterPoreUM; p.Known {
		return fmt.Sprintf("pores of %.3g µm", p.V)
	}
	return "pores not given"
}
