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
		var v Solver
		noError(t, v.prepare(&s, 25))
		v.slope, v.kw = 0, 1e-14
		v.species[1].beta = math.Pow(10, -3.46)
		v.species[2].beta = math.Pow(10, -3.46-5.10)
		noError(t, v.solve())
		near(t, r["malic"]+" malic, "+r["sodium"]+" sodium", v.at.pH, r.number(t, "ph"), 0.0051)
	}
}
