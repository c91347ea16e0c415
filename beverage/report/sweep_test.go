package report

import (
	"strings"
	"testing"

	"posset/beverage"
	"posset/beverage/sweep"
)

func somePoint(class beverage.Class, stops []string, at ...float64) sweep.Point {
	return sweep.Point{At: at, Class: class, PH: known(3.2), PHLow: known(3.15), PHHigh: known(3.25), PHBasis: beverage.Measured, Stops: stops, Reviews: []string{"log-missing"},
		Notes: []string{}, ProteinFlags: []string{"protein-gel"}, ProteinGPerL: known(58), NetCharge: known(17), GaugeKPaHigh: known(310), Needs: "15 PU",
		Routes: []sweep.RouteAt{{Route: beverage.Aseptic, Outcome: beverage.Fits, Needs: "15 PU"}, {Route: beverage.Tunnel, Outcome: beverage.DoesNotFit}}}
}

func someSweep() *sweep.Result {
	return &sweep.Result{Schema: sweep.Schema, Tool: tool, Input: input("quince.toml"), Drink: "Quince clear protein water", Notes: []string{"the records are of the run as it was"}, Cautions: testCautions,
		Inputs:  []sweep.InputRange{{Key: "measured.ph", Values: []float64{3, 4.6}}, {Key: "whey protein isolate", Unit: "g/L", Values: []float64{20, 120}}},
		Changes: []sweep.Change{{What: "class", From: "acidified", To: "undecided", Along: "measured.ph", Low: 3, High: 4.6, With: &sweep.OtherSpan{Key: "whey protein isolate", Low: 20, High: 120}}},
		Points: []sweep.Point{somePoint(beverage.Acidified, []string{}, 3, 20), somePoint(beverage.Acidified, []string{}, 3, 120),
			somePoint(beverage.Undecided, []string{"ph-above-limit"}, 4.6, 20), somePoint(beverage.Undecided, []string{"ph-above-limit"}, 4.6, 120)}}
}

// alongOne is a sweep of one input.
func alongOne() *sweep.Result {
	r := someSweep()
	r.Inputs, r.Changes[0].With = r.Inputs[:1], nil
	r.Points = []sweep.Point{somePoint(beverage.Acidified, []string{}, 3), somePoint(beverage.Undecided, []string{"ph-above-limit"}, 4.6)}
	r.Points[1].GaugeKPaHigh, r.Points[1].LiquidFull = nil, true
	return r
}

func TestSweepGoldens(t *testing.T) {
	golden(t, "sweep.txt", text(t, Style{}, Sweep(someSweep(), Metric)))
	golden(t, "sweep-one.txt", text(t, Style{}, Sweep(alongOne(), Metric)))
	golden(t, "sweep.csv", sheet(t, Sweep(someSweep(), Metric)))
	golden(t, "sweep.json", jsonText(t, someSweep()))
}

func TestSweepInEveryForm(t *testing.T) {
	everyForm(t, someSweep(), Sweep(someSweep(), US))
	everyForm(t, alongOne(), Sweep(alongOne(), US))
}

// A long sweep is cut where a person reads it, with a word on the rest; csv
// holds all of it.
func TestALongSweepIsCutForReaders(t *testing.T) {
	r := alongOne()
	for range 200 {
		r.Points = append(r.Points, r.Points[0])
		r.Changes = append(r.Changes, r.Changes[0])
	}
	d := Sweep(r, Metric)
	s := text(t, Style{}, d)
	for _, want := range []string{"And 81 points more: --format csv or json holds all.", "And 141 changes more: --format csv or json holds all."} {
		if !strings.Contains(s, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if len(d.Sheet.Rows) != 202 {
		t.Errorf("%d rows", len(d.Sheet.Rows))
	}
}
