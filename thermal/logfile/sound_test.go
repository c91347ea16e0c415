package logfile_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

// Sound logs, coarse and noisy ones too: no fault, and the credit is the exact
// lethality of the readings less the tolerance.
func TestSoundLogsAreCreditedExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, step := range []float64{0.001, 0.01, 0.1, 0.5, 1} {
		for _, noise := range []float64{0, 0.02, 0.05, 0.2, 0.5} {
			for _, interval := range []float64{1, 2, 5, 10, 30, 60} {
				for _, medium := range []bool{false, true} {
					p := process{intervalS: interval, step: step, noiseC: noise, tausS: []float64{20, 60, 200}, medium: medium, topC: 121.6, holdS: 900, restS: 700}
					t.Run(fmt.Sprintf("step %g noise %g every %g s medium %v", step, noise, interval, medium), func(t *testing.T) {
						checkSound(t, p.run(rng))
					})
				}
			}
		}
	}
}

// The same in many windows, as long logs are judged.
func TestSoundInManyWindows(t *testing.T) {
	defer logfile.SetWindowRows(100)()
	TestSoundLogsAreCreditedExactly(t)
}

func checkSound(t *testing.T, r record) {
	o := options()
	o.Bases = append(o.Bases, logfile.Basis{Name: "PU", Ref: thermal.PU})
	l := read(t, r.csv(), o)
	require.Len(t, l.Probes, len(r.names))
	for i, p := range l.Probes {
		assert.Empty(t, p.Faults, p.Name)
		for k, b := range o.Bases {
			assert.InEpsilon(t, r.lethality(i, b.Ref, 0), *p.Results[k].LethalityMin, 1e-9, p.Name)
			if p.Role == logfile.Product {
				assert.InEpsilon(t, r.lethality(i, b.Ref, 0.5), *p.Results[k].CreditedMin, 1e-9, p.Name)
			}
		}
	}
}
