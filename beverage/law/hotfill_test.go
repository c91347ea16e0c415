package law

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestHotFillOfPublishedPairs(t *testing.T) {
	for _, c := range []struct {
		source      string
		ph, tC      float64
		want, allow float64 // seconds; half the last digit printed
	}{
		{"Breidt et al. 2010: 1.2 min at 160 F", 4.1, 71.1, 1.2 * 60, 1e-9},
		{"Breidt et al. 2010: 12.7 min at 140 F", 4.1, 60.0, 12.7 * 60, 3},
		{"Breidt et al. 2010: 3.9 min at 150 F", 3.2, 65.6, 3.9 * 60, 3},
		{"Breidt et al. 2010: 0.4 min at 170 F", 3.9, 76.7, 0.4 * 60, 3},
		{"Breidt et al. 2014: 5.6 min at 160 F", 4.11, 71.1, 5.6 * 60, 1e-9},
		{"Breidt et al. 2014: 59.0 min at 143 F", 4.3, 61.7, 59.0 * 60, 90}, // 61.7 C is 143.06 F
		{"Breidt et al. 2014: 2.1 min at 167 F", 4.6, 75.0, 2.1 * 60, 3},
		{"Breidt et al. 2014: 0.4 min at 180 F", 4.6, 82.2, 0.4 * 60, 3},
	} {
		b, ok := HotFill(c.ph)
		if !ok {
			t.Errorf("%s: no band", c.source)
			continue
		}
		got, _ := b.PathogenHoldS(c.tC)
		if !(math.Abs(got-c.want) <= c.allow) {
			t.Errorf("%s: got %.1f s, want %.1f", c.source, got, c.want)
		}
	}
}

func TestHotFillEndsWhereTheFiguresEnd(t *testing.T) {
	for _, ph := range []float64{4.601, 7, math.NaN(), math.Inf(1)} {
		if b, ok := HotFill(ph); ok {
			t.Errorf("pH %v has a band up to %v", ph, b.PHHigh)
		}
	}
	b, _ := HotFill(4.0)
	if s, ok := b.PathogenHoldS(59.9); ok {
		t.Errorf("59.9 C, colder than the table: %v s", s)
	}
	if s, ok := b.PathogenHoldS(math.NaN()); ok {
		t.Errorf("no temperature: %v s", s)
	}
	hottest, _ := b.PathogenHoldS(b.MaxC)
	if s, _ := b.PathogenHoldS(95); s != hottest {
		t.Errorf("95 C: %v s, less than the %v s of the hottest line printed", s, hottest)
	}
	if s, ok := b.SterilityHoldS(math.NaN()); ok {
		t.Errorf("no temperature, but %v s for commercial sterility", s)
	}
}

func TestHotFillGuidance(t *testing.T) {
	for _, c := range []struct {
		ph, tempC, lowS, highS float64
		source                 string
	}{
		{3.0, 82.2, 60, 180, "the guidance of 82.2 C stands above the table's 65.6 C"},
		{4.0, 83.9, 60, 180, "183 F in the university table"},
		{4.1, 85.0, 60, 180, "185 F in the university table"},
		{4.15, 93.3, 1800, 1800, "above 4.1: 200 F for 30 min; the table has 190 F for 4.2"},
		{4.4, 96.1, 1800, 1800, "205 F in the university table"},
		{4.5, 98.9, 1800, 1800, "210 F in the university table"},
	} {
		b, _ := HotFill(c.ph)
		f := b.Commercial
		if f.TempC != c.tempC || f.HoldLowS != c.lowS || f.HoldHighS != c.highS {
			t.Errorf("pH %v: %v C for %v to %v s; %s", c.ph, f.TempC, f.HoldLowS, f.HoldHighS, c.source)
		}
	}
	b, _ := HotFill(4.55)
	if !math.IsNaN(b.Commercial.TempC) {
		t.Errorf("no figure is published above 4.5, yet %v C", b.Commercial.TempC)
	}
}

func TestSterilityTakesTheMostSevereLine(t *testing.T) {
	for _, c := range []struct {
		ph, tC, wantS float64
		why           string
	}{
		{3.2, 90.6, 6, "F 0.1 min"},
		{3.4, 90.6, 60, "F 1.0 min"},
		{4.0, 90.6, 23 * 60, "F 16 to 23 min: the longer"},
		{4.1, 90.6, 23 * 60, "F 5 min at 93.3 C would be 10.5 min here, less than the band below asks"},
		{4.3, 100, 10 * 60, "of three lines the one at 100 C"},
		{4.6, 110, 23 * 60, "of two lines the one at 110 C"},
	} {
		b, _ := HotFill(c.ph)
		got, ok := b.SterilityHoldS(c.tC)
		if !ok || !(math.Abs(got-c.wantS) <= 1e-6*c.wantS) {
			t.Errorf("pH %v at %v C: %v s, want %v (%s)", c.ph, c.tC, got, c.wantS, c.why)
		}
	}
}

// A higher pH or a lower temperature never asks for less.
func TestHotFillNeverEasesUpward(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ph := rapid.Float64Range(2.5, 4.6).Draw(t, "ph")
		more := rapid.Float64Range(0, 4.6-ph).Draw(t, "more")
		tC := rapid.Float64Range(61, 110).Draw(t, "tC")
		cooler := rapid.Float64Range(0, tC-61).Draw(t, "cooler")
		a, okA := HotFill(ph)
		b, okB := HotFill(ph + more)
		if !okA || !okB {
			t.Fatalf("no band at pH %v or %v", ph, ph+more)
		}
		notLess(t, "pathogens", seconds(b.PathogenHoldS(tC-cooler)), seconds(a.PathogenHoldS(tC)))
		notLess(t, "sterility", seconds(b.SterilityHoldS(tC-cooler)), seconds(a.SterilityHoldS(tC)))
		if b.Commercial.TempC < a.Commercial.TempC || b.Commercial.HoldHighS < a.Commercial.HoldHighS {
			t.Fatalf("guidance eases from pH %v to %v", ph, ph+more)
		}
	})
}

func seconds(s float64, ok bool) float64 {
	if !ok {
		return math.Inf(1)
	}
	return s
}

func notLess(t *rapid.T, what string, higher, lower float64) {
	if higher < lower {
		t.Fatalf("%s: %v s asked where %v s were asked for less", what, higher, lower)
	}
}
