package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-heat-coagulation", Level: review,
	Title: "How long the milk protein stands the heat hangs on its pH",
	Means: "Milk near pH 6.7 stands about twenty minutes at 140 °C before it coagulates; near pH 6.8 to 6.9 milk of the common kind only a few, and below 6.6 ever less. More protein and ionic calcium shorten it, phosphate and citrate lengthen it. In a retort minutes count, in a tube seconds: there calcium, sediment and deposits decide. Above 6.6 it is a note.",
	Clear: "Bring the pH to where this drink stands heat longest, found by heating it at several pH; less protein or ionic calcium, phosphate or citrate before the heat; hotter and shorter, or a tube in place of a retort.",
	Law:   []string{"protein-heat-coagulation.science"},
	Check: func(f *facts.Facts) []Hit {
		k, ok := caseins(f)
		if !ok || !holdsMicelles(k) || !k.mayReach(proteinLimit("protein_least")) || !nearNeutral(f) || f.Process.Route != beverage.RetortRoute {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s, %s, %s%s; milk, of which this is published, has %.3g g/L", k.words(), phWords(f), heatWords(f), coagulationWords(f), proteinLimit("milk_protein")), Values: proteinValues(f, k)}
		longest, shortest := windowOf("heat-max"), windowOf("heat-min")
		switch pH := f.PH.Decides; {
		case !pH.Known() || pH.Low < longest.Span.Low:
			h.Detail += ", and it may stand below the pH at which heat is stood longest"
			return []Hit{windowed(longest, h)}
		case shortest.Span.Stands(pH).MayBeInside():
			h.Detail += ", and it may stand where heat is stood shortest"
			longest = shortest
		}
		h.Level = at(note)
		return []Hit{windowed(longest, h)}
	},
})

// coagulationWords tells what the hold is worth at the temperature at which heat
// coagulation is published.
func coagulationWords(f *facts.Facts) string {
	minutes, ok := f.CoagulationMinutes()
	if !ok {
		return ""
	}
	return fmt.Sprintf(", for heat coagulation worth about %s min at %.0f °C", twoDigits(minutes), protein.CoagulationTempC)
}

// holdsMicelles tells whether any of the protein keeps its calcium phosphate:
// caseinate, which has lost it, stands heat far longer.
func holdsMicelles(k kept) bool {
	for _, p := range k.parts {
		if _, micelles := p.Composition.Colloid(nearMilkPH); micelles {
			return true
		}
	}
	return false
}

// nearMilkPH is a pH at which micelles hold all of their calcium phosphate.
const nearMilkPH = 6.7
