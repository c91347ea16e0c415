package acid

import "testing"

func TestPrimaryPHStandards(t *testing.T) {
	rows := checkData(t, "ph_standards.csv")
	if len(rows) != 63 {
		t.Fatalf("%d rows, want 63", len(rows))
	}
	for _, r := range rows {
		got, err := PH(composition(t, r["composition"]), r.number(t, "temperature_c"))
		noError(t, err)
		what := r["buffer"] + " (" + r["table"] + " table) at " + r["temperature_c"] + " °C"
		near(t, what, got, r.number(t, "ph"), r.number(t, "allowed"))
	}
}
