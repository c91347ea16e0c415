package acid

import "testing"

func TestWaterActivityAgainstMeasured(t *testing.T) {
	for _, r := range checkData(t, "water_activity.csv") {
		var solutes []Solute
		if r["solutes"] != "" {
			for _, total := range composition(t, r["solutes"]).Totals {
				solutes = append(solutes, Solute{Name: total.Component, Molality: total.Molality})
			}
		}
		e, err := Solve(composition(t, r["ions"]), 25)
		noError(t, err)
		got, err := WaterActivity(solutes, e)
		noError(t, err)
		want := r.number(t, "water_activity")
		near(t, r["solutes"]+r["ions"], got.Value, want, r.number(t, "allowed"))
		if !(got.Low <= want && want <= got.High) {
			t.Errorf("%s%s: %.4f is outside %.4f to %.4f", r["solutes"], r["ions"], want, got.Low, got.High)
		}
	}
}
