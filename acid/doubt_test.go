package acid

import (
	"testing"

	"pgregory.net/rapid"
)

func TestStandardsAndMixturesLieWithinTheirBounds(t *testing.T) {
	for file, tableError := range map[string]float64{"ph_standards.csv": 0.01, "mixtures.csv": 0.03} {
		for _, r := range checkData(t, file) {
			low, high, err := Bounds(composition(t, r["composition"]), r.number(t, "temperature_c"))
			noError(t, err)
			want := r.number(t, "ph")
			if r["scale"] != "" {
				want += r.number(t, "scale")
			}
			if r["id"] == "" || r.number(t, "allowed") < 0.2 { // not the approximate list
				if !(low-tableError <= want && want <= high+tableError) {
					t.Errorf("%s%s: %g is outside %.3f to %.3f", r["id"], r["buffer"], want, low, high)
				}
			}
		}
	}
}

func TestBoundsHoldThePH(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tC := ashed(drawSolution(t, 1)), drawTemp(t)
		pH, err := PH(s, tC)
		noError(t, err)
		low, high, err := Bounds(s, tC)
		noError(t, err)
		const least = 0.03 // of the activity form
		if !(low <= pH-least+1e-8 && pH+least-1e-8 <= high) {
			t.Errorf("pH %g, bounds %g to %g", pH, low, high)
		}
	})
}
