package law

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func TestSchedules(t *testing.T) {
	for _, c := range []struct {
		food      string
		market    beverage.Market
		tC, holdS float64
		line      string // "" when none covers it
	}{
		{FoodMilk, beverage.US, 72, 15, "72 C for 15 s"},
		{FoodMilk, beverage.US, 71.9, 15, ""},
		{FoodMilk, beverage.US, 72, 14.9, ""},
		{FoodMilk, beverage.US, 80, 10, ""},
		{FoodMilk, beverage.US, 95, 0.1, "94 C for 0.1 s"},
		{FoodRichMilk, beverage.US, 72, 15, ""},
		{FoodRichMilk, beverage.US, 75, 15, "75 C for 15 s"},
		{FoodEggnog, beverage.US, 80, 25, "80 C for 25 s"},
		{FoodUltraPasteurize, beverage.US, 138, 2, "138 C for 2 s"},
		{FoodUltraPasteurize, beverage.US, 137.9, 10, ""},
		{FoodUHTMilk, beverage.EU, 140, 4, ""}, // "a suitable time" covers nothing by itself
		{FoodMilk, beverage.CA, 72, 15, ""},    // the Canadian section has no temperature
		{FoodJuice, beverage.US, 71.1, 3, "71.1 C for 3 s"},
		{FoodAppleJuice, beverage.US, 71.1, 3, ""},
		{FoodAppleJuice, beverage.US, 71.1, 6, "71.1 C for 6 s"},
		{FoodMilk, beverage.US, math.NaN(), 15, ""},
	} {
		got, ok := Covering(Schedules(c.food, c.market), c.tC, c.holdS)
		if ok != (c.line != "") || ok && got.String() != c.line {
			t.Errorf("%s in %s, %v C for %v s: %v %v, want %q", c.food, c.market, c.tC, c.holdS, got, ok, c.line)
		}
	}
	if got := Schedules(FoodUHTMilk, beverage.EU)[0].String(); got != "135 C for a suitable time" {
		t.Error(got)
	}
	if got := Schedules(FoodMilk, beverage.Codex)[0].Cite(); got != "CAC/RCP 57-2004 Annex II Appendix B (recalled, high)" {
		t.Error(got)
	}
}

func TestChilledHeat(t *testing.T) {
	if s, ok := ChilledHeat(90, 600); !ok || s.TempC != 90 {
		t.Errorf("90 C for 10 min: %v, %v", s, ok)
	}
	if s, ok := ChilledHeat(85, 600); ok {
		t.Errorf("85 C for 10 min is covered by %v", s)
	}
}

// A hotter or longer hold is covered wherever a weaker one is.
func TestMoreHeatIsCoveredToo(t *testing.T) {
	foods := []string{FoodMilk, FoodRichMilk, FoodJuice, FoodAppleJuice, FoodChilledLowAcid}
	rapid.Check(t, func(t *rapid.T) {
		lines := Schedules(rapid.SampledFrom(foods).Draw(t, "food"), rapid.SampledFrom(beverage.Markets).Draw(t, "market"))
		tC, holdS := rapid.Float64Range(50, 150).Draw(t, "tC"), rapid.Float64Range(0, 4000).Draw(t, "s")
		_, weak := Covering(lines, tC, holdS)
		_, strong := Covering(lines, tC+rapid.Float64Range(0, 20).Draw(t, "hotter"), holdS+rapid.Float64Range(0, 100).Draw(t, "longer"))
		if weak && !strong {
			t.Fatal("more heat lost its cover")
		}
	})
}

func TestDuties(t *testing.T) {
	for _, c := range []struct {
		market beverage.Market
		kind   FiledAs
		want   bool
	}{
		{beverage.US, FiledAcidified, true}, {beverage.US, FiledLowAcidAseptic, true}, {beverage.US, FiledJuice, false},
		{beverage.CA, FiledLowAcidRetort, false}, {beverage.EU, FiledAcidified, false}, {beverage.ANZ, FiledLowAcidRetort, false},
	} {
		if got := AsksForFiling(c.market, c.kind); got != c.want {
			t.Errorf("%s asks for filing of %s: %v", c.market, c.kind, got)
		}
		if !slices.ContainsFunc(Filings(c.market, c.kind), func(f Filing) bool { return f.For == FiledAny }) {
			t.Errorf("%s: the duties of any drink are missing", c.market)
		}
	}
}

func TestForms(t *testing.T) {
	for _, f := range Filings(beverage.US, FiledAcidified, FiledLowAcidRetort, FiledLowAcidAseptic) {
		if f.Form == "" {
			continue
		}
		fields := Form(f.Form)
		if len(fields) == 0 {
			t.Errorf("form %s has no fields", f.Form)
		}
		for i, x := range fields {
			if x.Order != i+1 || x.Field == "" || x.AnsweredBy == "" || x.Section == "" {
				t.Errorf("form %s, field %d: %+v", f.Form, i+1, x)
			}
		}
	}
	if got := Form("2541z"); got != nil {
		t.Errorf("an unknown form has fields: %v", got)
	}
}

func TestLabels(t *testing.T) {
	due := func(m beverage.Market, trigger Trigger, v float64) bool {
		return slices.ContainsFunc(Statements(m), func(s Statement) bool { return s.Trigger == trigger && s.Bound.Reached(v) })
	}
	for _, c := range []struct {
		market  beverage.Market
		trigger Trigger
		v       float64
		want    bool
	}{
		{beverage.US, TriggerSulfite, 10, true}, {beverage.EU, TriggerSulfite, 10, false}, {beverage.EU, TriggerSulfite, 10.1, true},
		{beverage.CA, TriggerSulfite, 9.9, false}, {beverage.EU, TriggerCaffeine, 150, false}, {beverage.UK, TriggerCaffeine, 151, true},
		{beverage.ANZ, TriggerPlantProtein, 29, true}, {beverage.ANZ, TriggerPlantProtein, 30, false},
		{beverage.CA, TriggerHydrolysate, 0, true}, {beverage.US, TriggerProteinEnergy, 51, true}, {beverage.US, TriggerSweetener, 1, false},
	} {
		if got := due(c.market, c.trigger, c.v); got != c.want {
			t.Errorf("%s, %s at %v: due %v", c.market, c.trigger, c.v, got)
		}
	}
}

func TestCaffeine(t *testing.T) {
	for _, m := range beverage.Markets {
		for _, c := range CaffeineRules(m) {
			if c.Bound.Op == "" || !(c.Bound.Value > 0) || c.Applies == "" {
				t.Errorf("%s: %+v", m, c)
			}
		}
	}
	if got := CaffeineRules(beverage.EU)[0].Bound.String(); got != "> 150 mg/L" {
		t.Error(got)
	}
	if got := CaffeineRules(beverage.Codex); got != nil {
		t.Errorf("nothing was read for Codex, got %v", got)
	}
}

func TestBounds(t *testing.T) {
	for _, c := range []struct {
		b    Bound
		v    float64
		want bool
	}{
		{Bound{">", 5, "g"}, 5, false}, {Bound{">=", 5, "g"}, 5, true}, {Bound{"<", 5, "g"}, 5, false},
		{Bound{"<=", 5, "g"}, 5, true}, {Bound{}, 0, true}, {Bound{">", 5, "g"}, math.NaN(), false},
	} {
		if got := c.b.Reached(c.v); got != c.want {
			t.Errorf("%s reached by %v: %v", c.b, c.v, got)
		}
	}
}
