package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-fouling", Level: review,
	Title: "The drink may foul hot surfaces quickly",
	Means: "Deposits in heat exchangers and holding tubes rise steeply as milk falls below pH 6.6, and with ionic calcium: run times shorten, flow and temperature drift, and a deposit can shelter spores. Neutral whey drinks leave deposits at any pH, by how much is not published: a note.",
	Clear: "Bring the pH to 6.7 or above with phosphate or citrate, lower the calcium, preheat and hold so that whey protein unfolds off the wall, keep wall and drink close in temperature, and set the run time by trial.",
	Law:   []string{"protein-fouling.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, k := range families(f) {
			if h, ok := fouls(f, k); ok {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

func fouls(f *facts.Facts, k kept) (Hit, bool) {
	steep := windowOf("fouling-ph")
	if !f.Process.HeatedInFlow() || !steep.Speaks(k.family) || !k.mayReach(proteinLimit("protein_least")) || !mayReachC(f, steep.TempC.Low) {
		return Hit{}, false
	}
	acidTo := windowOf("fouling-acid").PH.High
	h := Hit{Detail: fmt.Sprintf("%s, %s, %s", k.words(), phWords(f), heatWords(f)), Values: proteinValues(f, k)}
	if (protein.Range{Low: acidTo, High: steep.Span.High}).Stands(f.PH.Decides).MayBeInside() {
		return windowed(steep, h), true
	}
	if k.family == protein.FamilyWhey && labileGPerL(k) >= proteinLimit("protein_least") && f.PH.Decides.SurelyAbove(acidTo) {
		h.Level = at(note)
		h.Detail += ", a note above the pH from which milk fouls steeply"
		return windowed(windowOf("fouling-type"), h), true
	}
	return Hit{}, false
}
