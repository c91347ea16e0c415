package facts

import (
	"testing"

	"posset/acid"
	"posset/beverage/protein"
)

// wheySolution is twelve components beside whey protein isolate, as the solver sees a
// clear protein drink.
func wheySolution(t testing.TB) acid.Solution {
	whey, ok := protein.Of("whey isolate")
	if !ok {
		t.Fatal("whey isolate has no composition")
	}
	return acid.Solution{
		Totals: []acid.Total{
			{Component: "citric", Molality: 0.012}, {Component: "malic", Molality: 0.006}, {Component: "phosphoric", Molality: 0.004},
			{Component: "ascorbic", Molality: 0.002}, {Component: "benzoic", Molality: 0.001}, {Component: "sorbic", Molality: 0.001},
			{Component: "carbonic", Molality: 0.06}, {Component: "sodium", Molality: 0.012}, {Component: "potassium", Molality: 0.008},
			{Component: "calcium", Molality: 0.002}, {Component: "magnesium", Molality: 0.001}, {Component: "chloride", Molality: 0.006},
		},
		Poly: []acid.Macro{{Poly: whey, GramsPerKgWater: 60}},
	}
}

// BenchmarkPHTwelveComponentsAndWhey is the acid solver's benchmark of the same name
// with the charge of a real protein.
func BenchmarkPHTwelveComponentsAndWhey(b *testing.B) {
	var v acid.Solver
	s := wheySolution(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := v.PH(s, roomC); err != nil {
			b.Fatal(err)
		}
	}
}

func TestSolvingWheyAllocatesNothing(t *testing.T) {
	var v acid.Solver
	s := wheySolution(t)
	allocations := testing.AllocsPerRun(100, func() {
		if _, err := v.PH(s, roomC); err != nil {
			t.Fatal(err)
		}
	})
	if allocations != 0 {
		t.Errorf("%g allocations a solution, want none", allocations)
	}
}
