package protein

import (
	"math"
	"slices"
	"testing"

	"posset/beverage"
)

func TestEveryTopicHasWindowsAndEveryWindowASource(t *testing.T) {
	seen := map[string]bool{}
	for _, topic := range Topics {
		holds(t, len(Windows(topic)) > 0, "no window on %s", topic)
		for _, w := range Windows(topic) {
			equal(t, false, seen[w.ID], w.ID+" stands twice")
			seen[w.ID] = true
			holds(t, w.Source.Text != "" && w.What != "", "%s says too little", w.ID)
			holds(t, w.Source.Basis == beverage.Seen || w.Source.Basis == beverage.Memory, "%s: basis %q", w.ID, w.Source.Basis)
			holds(t, slices.Contains([]string{"high", "medium", "low"}, w.Confidence), "%s: confidence %q", w.ID, w.Confidence)
			holds(t, w.Span.Low <= w.Span.High, "%s: span %v", w.ID, w.Span)
		}
	}
	equal(t, 0, len(Windows("brand")), "windows on an unknown topic")
}

func TestStanding(t *testing.T) {
	r := Range{3, 3.6}
	for want, x := range map[Standing]beverage.Interval{
		StandingUnknown: {},
		Inside:          beverage.Around(3.3, 0.1, beverage.Measured),
		Straddles:       beverage.Around(3.6, 0.1, beverage.Measured),
		Out:             beverage.Around(4, 0.1, beverage.Measured),
	} {
		equal(t, want, r.Stands(x), want.String())
	}
}

func TestGelLimit(t *testing.T) {
	pH := func(v float64) beverage.Interval { return beverage.Around(v, 0.05, beverage.Measured) }
	low, salty := beverage.Point(10, beverage.Predicted), beverage.Point(100, beverage.Predicted)
	for _, c := range []struct {
		name   string
		family Family
		pH     beverage.Interval
		ionic  beverage.Interval
		want   float64
	}{
		{"clear acid whey", FamilyWhey, pH(3.2), low, 80},
		{"isoelectric whey", FamilyWhey, pH(5.2), low, 10}, // Renard & Lefebvre 1992
		{"neutral whey in salt", FamilyWhey, pH(7), salty, 7},
		{"neutral whey, salt unknown", FamilyWhey, pH(7), beverage.Interval{}, 7},
		{"whey of unknown pH", FamilyWhey, beverage.Interval{}, low, 10},
		{"neutral casein", FamilyCasein, pH(6.9), low, 100},
	} {
		got, _, ok := GelLimit(c.family, c.pH, c.ionic, true)
		holds(t, ok, "%s: no limit", c.name)
		equal(t, c.want, got.Low, c.name)
	}
	_, _, ok := GelLimit(FamilyUnknown, pH(7), low, true)
	equal(t, false, ok, "limit of an unknown protein")
	_, _, ok = GelLimit(FamilyWhey, pH(7), low, false)
	equal(t, false, ok, "limit of an unheated drink")
}

func TestRangeOpenEnds(t *testing.T) {
	w, ok := WindowByID("fouling-ph")
	holds(t, ok, "no window fouling-ph")
	holds(t, math.IsInf(w.Span.Low, -1), "low end %v", w.Span.Low)
	equal(t, Inside, w.Span.Stands(beverage.Point(6.2, beverage.Measured)), "pH 6.2")
}
