package acid

import "testing"

func TestWaterOverTemperature(t *testing.T) {
	for _, r := range checkData(t, "water.csv") {
		tC := r.number(t, "temperature_c")
		if r["slope"] != "" {
			near(t, "slope at "+r["temperature_c"], DebyeHueckelA(tC), r.number(t, "slope"), 0.0001)
		}
		near(t, "pKw at "+r["temperature_c"], WaterPK(tC), r.number(t, "pkw"), 0.0006)
	}
}
