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

func TestSweepPictureTellsWithoutColour(t *testing.T) {
	p := pictures(Sweep(someSweep(), Metric))["Class and what is open, over both inputs"][0]
	var got []string
	for _, e := range p.Legend() {
		got = append(got, strings.TrimSpace(e.Letter+" "+e.Text))
	}
	want := "a review is open; a stop is open; hatched: a stop is open; d acidified; u undecided; ! beside a letter: a stop"
	if s := strings.Join(got, "; "); s != want {
		t.Errorf("the legend says %q", s)
	}
	for _, c := range p.Chart.Panels[0].Field.Cells {
		if stop := strings.HasSuffix(c.Mark, "!"); stop != c.Hatched || stop != (c.Tone == stopTone) {
			t.Errorf("%v: mark, hatch and tone differ", c)
		}
	}
	if x := p.Chart.X; x.Title != "measured.ph" || x.Low >= 3 || x.High <= 4.6 {
		t.Errorf("the axis is %v", x)
	}
}

func TestBandsReachFromEndToEnd(t *testing.T) {
	p := pictures(Sweep(alongOne(), Metric))["What moves along the input"][0]
	lanes := p.Chart.Panels[0].Lanes
	if len(lanes) != 2 || lanes[1].Name != "ph-above-limit" || len(lanes[1].Spans) != 1 {
		t.Fatalf("%v", lanes)
	}
	if s := lanes[1].Spans[0]; s.From != 3.8 || s.To != 4.6 || s.Hatch != stopHatch || s.Name != "at stop" {
		t.Errorf("%v", s)
	}
	if m := lanes[0].Marks; len(m) != 2 || m[0].Letter != "d" || m[1].Letter != "u" {
		t.Errorf("%v", m)
	}
}

func TestWrittenStandsInTextAlone(t *testing.T) {
	d := Sweep(someSweep(), Metric)
	if s := text(t, Style{}, d); !strings.Contains(s, "Class over both inputs") || !strings.Contains(s, "Columns: measured.ph.") {
		t.Error("the text lacks the map")
	}
	s := page1(t, d)
	if strings.Contains(s, "Class over both inputs") || strings.Contains(s, "Columns: measured.ph.") {
		t.Error("the page tells the map twice")
	}
	if strings.Count(s, "<svg class=\"chart\"") != 1 || !strings.Contains(s, `<div class="dense" tabindex="0" role="group" aria-label="Picture: Class and what is open over measured.ph and whey protein isolate">`) {
		t.Error("the page lacks the map")
	}
}
