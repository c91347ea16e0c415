package report

import (
	"fmt"

	"posset/beverage"
)

// atMostItems tells of each probe that falls short at its word and still cannot
// be told, since other published z of the organism give more.
func atMostItems(logs []beverage.LogResult, u Units) Items {
	var items Items
	for _, l := range logs {
		for _, p := range l.Probes {
			if !mostDecides(l.Aim, p) {
				continue
			}
			if len(items) == mostInputs {
				return append(items, Item{Title: "the same holds of further probes; --format json has them all"})
			}
			items = append(items, Item{ID: l.File, Title: fmt.Sprintf("%s falls short at its word, %s min of %s; at most, by another published z of the organism, it is %s min: cannot tell",
				p.Name, u.cell(minutes, p.LethalityMinutes), u.cell(minutes, l.Aim.Minutes), u.cell(minutes, p.LethalityMostMinutes))})
		}
	}
	return items
}

// mostDecides tells a target that lies between the record at its word and what
// the published z allow at most.
func mostDecides(aim *beverage.Aim, p beverage.ProbeResult) bool {
	if aim == nil || aim.Minutes == nil || p.LethalityMinutes == nil || p.LethalityMostMinutes == nil || p.Outcome == nil {
		return false
	}
	return *p.Outcome == beverage.CannotTell && *p.LethalityMinutes < *aim.Minutes && *aim.Minutes <= *p.LethalityMostMinutes
}
