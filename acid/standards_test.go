package acid

import (
	"math"
	"testing"
)

func TestPrimaryPHStandards(t *testing.T) {
	rows := checkData(t, "ph_standards.csv")
	if len(rows) != 71 {
		t.Fatalf("%d rows, want 71", len(rows))
	}
	for _, r := range rows {
		got, err := PH(composition(t, r["composition"]), r.number(t, "temperature_c"))
		noError(t, err)
		what := r["buffer"] + " (" + r["table"] + " table) at " + r["temperature_c"] + " °C"
		near(t, what, got, r.number(t, "ph"), r.number(t, "allowed"))
	}
}

func TestMeasuredMixtures(t *testing.T) {
	for _, r := range checkData(t, "mixtures.csv") {
		got, err := PH(composition(t, r["composition"]), r.number(t, "temperature_c"))
		noError(t, err)
		near(t, r["id"], got, r.number(t, "ph")+r.number(t, "scale"), r.number(t, "allowed"))
	}
}

func TestChargeBalanceOfIdealSolutions(t *testing.T) {
	for _, r := range checkData(t, "ideal_malate.csv") {
		s := Solution{Totals: []Total{{"malic", r.number(t, "malic")}, {"sodium", r.number(t, "sodium")}}}
		got, err := IdealPH(s, "malic", 3.46, 5.10)
		noError(t, err)
		near(t, r["malic"]+" malic, "+r["sodium"]+" sodium", got, r.number(t, "ph"), 0.0051)
	}
}

func TestIdealPHNeedsTheComponent(t *testing.T) {
	s := Solution{Totals: []Total{{"malic", 0.01}}}
	for _, c := range []struct {
		component string
		pk        []float64
		want      string
	}{
		{"citric", []float64{3, 4, 5}, `acid: 3 constants of "citric" do not fit the solution`},
		{"malic", []float64{3.46}, `acid: 1 constants of "malic" do not fit the solution`},
	} {
		_, err := IdealPH(s, c.component, c.pk...)
		if err == nil || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
		}
	}
	if pH, err := IdealPH(s, "malic", math.NaN(), 5); err == nil {
		t.Errorf("a constant that is no number gives pH %g", pH)
	}
}
