package logfile_test

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/thermal/logfile"
)

func TestMain(m *testing.M) {
	flag.Parse()
	if flag.Lookup("rapid.checks").Value.String() == "100" {
		n := "250"
		if more := os.Getenv("LAW_CHECKS"); more != "" {
			n = more
		}
		flag.Set("rapid.checks", n)
	}
	os.Exit(m.Run())
}

func drawProcess(t *rapid.T) process {
	interval := rapid.SampledFrom([]float64{1, 2, 5, 10}).Draw(t, "interval")
	p := process{
		intervalS: interval,
		step:      rapid.SampledFrom([]float64{0.01, 0.1, 1}).Draw(t, "step"),
		noiseC:    rapid.SampledFrom([]float64{0, 0.02, 0.05, 0.2}).Draw(t, "noise"),
		medium:    rapid.Bool().Draw(t, "medium"),
		topC:      rapid.Float64Range(116, 126).Draw(t, "top"),
		holdS:     rapid.Float64Range(200, 900).Draw(t, "hold"),
		restS:     rapid.Float64Range(300, 700).Draw(t, "rest"),
	}
	for n := rapid.IntRange(1, 3).Draw(t, "cans"); n > 0; n-- {
		p.tausS = append(p.tausS, rapid.Float64Range(20, 240).Draw(t, "tau"))
	}
	return p
}

// Law: a fault added to a sound log never raises what is credited, and is found.
func TestFaultNeverRaisesCredit(t *testing.T) {
	var pairs int
	missed := map[string]int{}
	tried := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := drawProcess(t)
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 7))
		sound := p.run(rng)
		defer logfile.SetWindowRows(rapid.SampledFrom([]int{8192, 8192, 150}).Draw(t, "window"))()
		before := read(t, sound.csv(), options())
		for _, in := range injections {
			r := sound.clone()
			col := len(r.cols) - 1 - rng.IntN(len(p.tausS))
			if !in.inject(rng, &r, col) {
				continue
			}
			pairs++
			after, err := logfile.Read(context.Background(), strings.NewReader(r.csv()), "run.csv", options())
			if err != nil { // refused, it is credited nothing
				require.ErrorContains(t, err, "first reading after row", in.name)
				continue
			}
			for i := range before.Probes {
				was, is := before.Probes[i].Results[0].CreditedMin, after.Probes[i].Results[0].CreditedMin
				if was != nil && is != nil && *is > *was*(1+1e-9) {
					t.Fatalf("%s on column %d: credit of column %d rose from %.9g to %.9g; faults %v\n%+v\n%s", in.name, col, i, *was, *is, after.Probes[i].Faults, p, difference(sound, r, col))
				}
			}
			tried[in.name]++
			if !found(after.Probes[col].Faults, in.kinds) {
				missed[in.name]++
			}
		}
	})
	for name, n := range missed {
		t.Logf("%s not named in %d of %d", name, n, tried[name])
	}
	t.Logf("%s pairs", strconv.Itoa(pairs))
}

func found(faults []logfile.Fault, kinds []logfile.FaultKind) bool {
	for _, f := range faults {
		for _, k := range kinds {
			if f.Kind == k {
				return true
			}
		}
	}
	return false
}

// difference shows where a column was changed, for a failed law.
func difference(a, b record, col int) string {
	if len(a.t) != len(b.t) {
		return fmt.Sprintf("%d rows became %d", len(a.t), len(b.t))
	}
	var out []string
	for i := range a.t {
		if a.cols[col][i] != b.cols[col][i] || a.t[i] != b.t[i] {
			out = append(out, fmt.Sprintf("row %d at %g s: %g became %g", i+2, a.t[i], a.cols[col][i], b.cols[col][i]))
		}
	}
	if len(out) > 8 && os.Getenv("ALL") == "" {
		out = append(out[:4], out[len(out)-4:]...)
	}
	return strings.Join(out, "\n")
}
