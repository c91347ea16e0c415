package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "pathogen-step-missing", Level: stop, OnRoutes: true,
	Title: "No step removes pathogens",
	Means: "Protein, milk, plant bases, juices and extracts carry living cells, and some pathogens outlast weeks in acid. A preservative is allowed to stand in for heat against spoilage only, never against pathogens.",
	Clear: "Heat, press or filter the drink in the plant that packs it, closed to what comes after; or have an authority show that acid alone kills what may be in it within the time before sale.",
	Law: []string{
		"us-acidified-thermal", "us-milk-pasteurized", "juice-five-log.us", "us-preventive-controls", "ca-milk", "ca-juice", "eu-milk-uht", "eu-heat-treatment",
		"uk-milk", "uk-heat-treatment", "anz-milk", "codex-milk", "five-log-vegetative.trade", "acid-kill.science",
	},
	Check: func(f *facts.Facts) []Hit {
		risky := f.PathogenCarriers()
		if len(risky) == 0 || f.Process.Treats() && !f.FilledOpenAfterHeat() {
			return milkUnheated(f)
		}
		h := Hit{Detail: pathogenDetail(f, risky), Values: phValues(f), Rows: heatRows(f), Route: RulesOut}
		if f.PH.Decides.SurelyBelow(law.AcidKillPH()) {
			h.Level, h.Route, h.Row = at(review), LeavesOpen, "acid-kill.science"
		}
		return []Hit{h}
	},
})

func pathogenDetail(f *facts.Facts, risky []string) string {
	why := routeWords(f)
	if f.FilledOpenAfterHeat() {
		why = "the drink is heated and then filled cold without asepsis for ambient sale, which counts as no step"
	}
	return fmt.Sprintf("%s may carry pathogens; %s; %s.", upper(listWords(risky)), why, phWords(f))
}

// milkUnheated: the law asks heat of milk, which pressure and filters are not.
func milkUnheated(f *facts.Facts) []Hit {
	if !f.IsMilk() || f.Process.Heats() || !f.Process.Treats() {
		return nil
	}
	return []Hit{{Level: at(review), Rows: heatRows(f), Route: LeavesOpen,
		Detail: fmt.Sprintf("The law asks heat of milk, and %s: whether it may stand in for heat is for the authority.", routeWords(f))}}
}
