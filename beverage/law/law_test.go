package law

import (
	"math"
	"slices"
	"testing"

	"posset/beverage"
)

func TestTablesAreWhole(t *testing.T) {
	if err := open().err; err != nil {
		t.Fatal(err)
	}
	for name, load := range map[string]func() error{
		"schedules": func() error { _, err := schedules(); return err },
		"hot_fill":  func() error { _, err := heatLines(); return err },
		"additives": func() error { _, err := additives(); return err },
	} {
		if err := load(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestEveryRowSaysWhereItComesFrom(t *testing.T) {
	for _, r := range Rows() {
		for what, missing := range map[string]bool{
			"a statement":                        r.Statement == "",
			"a section":                          r.Section == "",
			"a topic":                            r.Topic == "",
			"a market, or trade":                 r.Trade == (len(r.Markets) > 0),
			"a known market":                     slices.ContainsFunc(r.Markets, func(m beverage.Market) bool { return !slices.Contains(beverage.Markets, m) }),
			"a basis":                            !slices.Contains([]beverage.Basis{beverage.Seen, beverage.Memory, beverage.CommonPractice}, r.Basis),
			"the sureness of a recalled row":     r.Basis == beverage.Memory && !slices.Contains([]string{"high", "medium", "low"}, r.Sureness),
			"no other sureness":                  r.Basis != beverage.Memory && r.Sureness != "" && r.Sureness != "secondary page",
			"where it was read":                  r.Basis == beverage.Seen && r.Read == "",
			"the date of the law that was read":  r.Basis == beverage.Seen && !r.Trade && r.TextDate == "",
			"no date of a text that nobody read": r.Basis != beverage.Seen && !(r.TextDate == "" || r.Basis == beverage.CommonPractice),
		} {
			if missing {
				t.Errorf("row %s lacks %s", r.ID, what)
			}
		}
	}
}

func TestHotFillOfKnownPairs(t *testing.T) {
	for _, c := range []struct {
		source      string
		ph, tC      float64
		want, allow float64 // seconds
	}{
		{"Breidt et al. 2010: 1.2 min at 160 F", 4.1, 71.1, 72, 1e-9},
		{"Breidt et al. 2010: 12.7 min at 140 F", 4.1, 60, 12.7 * 60, 3},
		{"Breidt et al. 2014: 5.6 min at 160 F", 4.11, 71.1, 336, 1e-9},
		{"Breidt et al. 2014: 0.4 min at 180 F, 0.36 by the formula", 4.6, 82.2, 0.36 * 60, 0.3},
	} {
		b, ok := HotFill(c.ph)
		if !ok {
			t.Errorf("%s: no band", c.source)
			continue
		}
		got, _ := b.PathogenHoldS(c.tC)
		if !(math.Abs(got-c.want) <= c.allow) {
			t.Errorf("%s: got %.2f s, want %.2f", c.source, got, c.want)
		}
	}
	for _, ph := range []float64{4.601, math.NaN(), math.Inf(1)} {
		if _, ok := HotFill(ph); ok {
			t.Errorf("pH %v has a band", ph)
		}
	}
}
