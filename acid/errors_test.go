package acid

import (
	"math"
	"testing"
)

// charges is a polyelectrolyte that gives what it is.
type charges float64

func (c charges) ChargePerGram(_, _, _ float64) float64 { return float64(c) }

func TestErrorsOfASolution(t *testing.T) {
	citric := []Total{{"citric", 0.01}}
	for _, c := range []struct {
		s    Solution
		tC   float64
		want string
	}{
		{Solution{Totals: []Total{{"citrate", 1}}}, 25, `acid: no component "citrate"; Components lists the known ones`},
		{Solution{Totals: []Total{{"citric", -1}}}, 25, "acid: citric at -1 mol/kg is outside 0 to 100"},
		{Solution{Totals: []Total{{"citric", math.NaN()}}}, 25, "acid: citric at NaN mol/kg is outside 0 to 100"},
		{Solution{Totals: []Total{{"citric", math.Inf(1)}}}, 25, "acid: citric at +Inf mol/kg is outside 0 to 100"},
		{Solution{Totals: []Total{{"citric", 60}, {"sodium", 60}}}, 25, "acid: components sum to 120 mol/kg, above 100: no such solution"},
		{Solution{Totals: citric}, 100.1, "acid: temperature 100.1 °C is outside 0 to 100 °C"},
		{Solution{Totals: citric}, math.NaN(), "acid: temperature NaN °C is outside 0 to 100 °C"},
		{Solution{Totals: citric, FreeCO2: -1}, 25, "acid: free CO2 of -1 mol/kg is outside 0 to 100"},
		{Solution{Totals: []Total{{"carbonic", 0.01}}, FreeCO2: 0.1}, 25, "acid: CO2 is given both as a total and as held by the gas; leave one out"},
		{Solution{Poly: []Macro{{GramsPerKgWater: 1}}}, 25, "acid: polyelectrolyte 1 has no charge function"},
		{Solution{Poly: []Macro{{Poly: charges(0), GramsPerKgWater: -1}}}, 25, "acid: polyelectrolyte 1 at -1 g/kg is not a finite amount"},
		{Solution{Poly: []Macro{{Poly: charges(-1e9), GramsPerKgWater: 1}}}, 25, "acid: no pH balances a polyelectrolyte charge of -1e+06 mol/kg"},
		{Solution{Poly: []Macro{{Poly: charges(math.NaN()), GramsPerKgWater: 1}}}, 25, "acid: polyelectrolyte 1 has no finite charge at pH 4"},
	} {
		_, err := Solve(c.s, c.tC)
		wantError(t, err, c.want)
		pH, err := PH(c.s, c.tC)
		wantError(t, err, c.want)
		if !math.IsNaN(pH) {
			t.Errorf("pH %g beside the error %q", pH, c.want)
		}
		_, err = BufferCapacity(c.s, c.tC)
		wantError(t, err, c.want)
	}
}

func wantError(t *testing.T, err error, want string) {
	t.Helper()
	if err == nil || err.Error() != want {
		t.Errorf("got error %v\nwant %s", err, want)
	}
}

func TestErrorsOfQuestions(t *testing.T) {
	s := Solution{Totals: []Total{{"citric", 0.01}, {"sodium", 0.01}}}
	for want, ask := range map[string]func() error{
		"acid: pH 14.1 is outside 0 to 14":                         func() error { _, err := Titrate(s, 25, 14.1); return err },
		"acid: pH NaN is outside 0 to 14":                          func() error { _, err := Dose(s, s.Totals, 25, math.NaN()); return err },
		"acid: 1 points make no curve; give 2 to 10000":            func() error { _, err := Curve(s, 25, 2, 8, 1); return err },
		"acid: a curve from pH 8 to 2 does not rise":               func() error { _, err := Curve(s, 25, 8, 2, 9); return err },
		"acid: pH -1 is outside 0 to 14":                           func() error { _, err := Curve(s, 25, -1, 2, 9); return err },
		"acid: pH 15 is outside 0 to 14":                           func() error { _, err := Curve(s, 25, 1, 15, 9); return err },
		"acid: the dose holds nothing":                             func() error { _, err := Dose(s, nil, 25, 3); return err },
		"acid: the dose holds citric at -1 mol per mol":            func() error { _, err := Dose(s, []Total{{"citric", -1}}, 25, 3); return err },
		"acid: no dose brings this solution to pH 8 at 25 °C":      func() error { _, err := Dose(s, []Total{{"citric", 1}}, 25, 8); return err },
		`acid: no mineral "marble"; Minerals lists the known ones`: func() error { _, err := SaturationIndex(Equilibrium{}, "marble"); return err },
		"acid: glucose at -1 mol/kg is not a finite amount":        func() error { _, err := WaterActivity([]Solute{{"glucose", -1}}, Equilibrium{}); return err },
		`acid: "calcium" is no strong ion that stays free; sodium, potassium and chloride are`: func() error {
			_, err := BalanceCharge(s, 25, 3, "calcium")
			return err
		},
		`acid: no solute "honey"; WaterSolutes lists the known ones, other is any small one`: func() error {
			_, err := WaterActivity([]Solute{{"honey", 1}}, Equilibrium{})
			return err
		},
	} {
		wantError(t, ask(), want)
	}
}

func TestErrorsOfAFit(t *testing.T) {
	good := Measured{PH: 3.5, MolOfBasePerKg: 0.1, EndPH: 8.1}
	for want, c := range map[string]struct {
		s      Solution
		acid   string
		cation string
		m      Measured
	}{
		"acid: pH 9 is not below the end point 8.1":                                                               {Solution{}, "citric", "potassium", Measured{9, 0.1, 8.1}},
		"acid: pH -1 is outside 0 to 14":                                                                          {Solution{}, "citric", "potassium", Measured{-1, 0.1, 8.1}},
		"acid: an acidity of 0 mol/kg is outside 0 to 100":                                                        {Solution{}, "citric", "potassium", Measured{3, 0, 8.1}},
		`acid: "calcium" is no cation that stays free; sodium and potassium are`:                                  {Solution{}, "citric", "calcium", good},
		`acid: no component "citrate"; Components lists the known ones`:                                           {Solution{}, "citrate", "potassium", good},
		"acid: without the acid to be fitted the acidity is 1.29 mol/kg, above the 0.1 measured":                  {Solution{Totals: []Total{{"malic", 1}}}, "citric", "potassium", good},
		"acid: at this acidity the acid alone gives about pH 2.9, above the 2 measured: a stronger acid is in it": {Solution{}, "acetic", "potassium", Measured{2, 0.1, 8.1}},
	} {
		_, _, err := FitAcid(c.s, c.acid, c.cation, 25, c.m)
		wantError(t, err, want)
	}
}
