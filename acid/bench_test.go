package acid

import "testing"

// twelve is a drink of twelve components.
func twelve() Solution {
	return Solution{Totals: []Total{
		{"citric", 0.012}, {"malic", 0.006}, {"phosphoric", 0.004}, {"ascorbic", 0.002},
		{"benzoic", 0.001}, {"sorbic", 0.001}, {"carbonic", 0.06}, {"sodium", 0.012},
		{"potassium", 0.008}, {"calcium", 0.002}, {"magnesium", 0.001}, {"chloride", 0.006},
	}}
}

func BenchmarkPHTwelveComponents(b *testing.B) {
	benchmarkPH(b, twelve())
}

func BenchmarkPHTwelveComponentsAndProtein(b *testing.B) {
	s := twelve()
	s.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: 60}}
	benchmarkPH(b, s)
}

func benchmarkPH(b *testing.B, s Solution) {
	var v Solver
	b.ReportAllocs()
	for b.Loop() {
		if _, err := v.PH(s, 25); err != nil {
			b.Fatal(err)
		}
	}
}

func TestSolvingAllocatesNothing(t *testing.T) {
	var v Solver
	s := twelve()
	s.Poly = []Macro{{Poly: testProtein{}, GramsPerKgWater: 60}}
	allocations := testing.AllocsPerRun(100, func() {
		if _, err := v.PH(s, 25); err != nil {
			t.Fatal(err)
		}
	})
	if allocations != 0 {
		t.Errorf("%g allocations a solution, want none", allocations)
	}
}
