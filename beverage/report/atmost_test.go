package report

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"posset/beverage"
)

func atMostLog(word, most, target float64, o beverage.Outcome) beverage.LogResult {
	p := beverage.ProbeResult{Name: "Can 1", Role: productRole, LethalityMinutes: &word, LethalityMostMinutes: &most, Outcome: &o}
	return beverage.LogResult{File: "run.csv", Probes: []beverage.ProbeResult{p}, Aim: &beverage.Aim{Minutes: &target}, Outcome: &o}
}

func TestAtMostIsToldWhereItDecides(t *testing.T) {
	said := func(logs ...beverage.LogResult) Items { return atMostItems(logs, Metric) }
	assert.Equal(t, Items{{ID: "run.csv", Title: "Can 1 falls short at its word, 30.50 min of 30.70; at most, by another published z of the organism, it is 30.75 min: cannot tell"}},
		said(atMostLog(30.5, 30.75, 30.7, beverage.CannotTell)))
	assert.Empty(t, said(atMostLog(30.5, 30.75, 30.4, beverage.CannotTell)), "its word reaches the target")
	assert.Empty(t, said(atMostLog(30.5, 30.75, 31, beverage.FallsShort)), "nothing reaches the target")
	assert.Empty(t, said(beverage.LogResult{File: "run.csv"}))

	many := make([]beverage.LogResult, mostInputs+3)
	for i := range many {
		many[i] = atMostLog(30.5, 30.75, 30.7, beverage.CannotTell)
	}
	items := said(many...)
	assert.Len(t, items, mostInputs+1)
	assert.Equal(t, "the same holds of further probes; --format json has them all", items[mostInputs].Title)

	shown := text(t, Style{}, Lethality(&beverage.LethalityResult{Logs: many[:1]}, Metric))
	assert.Contains(t, strings.Join(strings.Fields(shown), " "), "at most, by another published z of the organism, it is 30.75 min: cannot tell")
}
