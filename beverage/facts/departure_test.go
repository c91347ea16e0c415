package facts

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

var retortAtLeast = beverage.CriticalLimit{What: retortTemperature, AtLeast: beverage.Say(121.1), Text: "at least 121.1 C"}

// historyOf is a reading a minute.
func historyOf(temps ...float64) *heatHistory {
	h := &heatHistory{}
	for i, c := range temps {
		h.add(float64(60*i), c)
	}
	return h
}

func TestDeparturesOfARetort(t *testing.T) {
	for _, c := range []struct {
		name  string
		temps []float64
		kept  bool
		want  []stretch
	}{
		{"kept with the tolerance", []float64{60, 122, 122, 122, 40}, true, nil},
		{"never reached", []float64{60, 120, 121, 40}, false, nil},
		{"a dip", []float64{60, 122, 122, 119, 118, 122, 122, 40}, true, []stretch{{120, 300, 180, 118, 119, true}}},
		{"two dips are two", []float64{122, 120, 122, 121, 122}, true, []stretch{{0, 120, 120, 120, 120, true}, {120, 240, 120, 121, 121, true}}},
		{"within the tolerance, told as one", []float64{122, 121.3, 122, 121.4, 122}, true, []stretch{{0, 240, 240, 121.3, 121.4, false}}},
	} {
		got, kept := historyOf(c.temps...).stretches(retortAtLeast)
		assert.Equal(t, c.kept, kept, c.name)
		assert.Equal(t, c.want, got, c.name)
	}
	assert.Equal(t, 180.0, historyOf(60, 30, 31, 60, 90, 122, 122, 110, 122, 122, 122, 20).comeUpS(), "a dip is no come-up")
	most := beverage.CriticalLimit{What: retortTemperature, AtMost: beverage.Say(123.0), Text: "at most 123 C"}
	got, _ := historyOf(60, 122, 124, 122, 122).stretches(most)
	assert.Equal(t, []stretch{{60, 180, 120, 124, 124, true}}, got[:1])
}

// readRun reads a record of a can and its retort, both told in their headings.
func readRun(t require.TestingT, dir string, retort, can []float64) *Run {
	var b strings.Builder
	b.WriteString("Time (min),Retort (C),Can product (C)\n")
	for i := range retort {
		fmt.Fprintf(&b, "%d,%.3f,%.3f\n", i, retort[i], can[i])
	}
	file := filepath.Join(dir, "run.csv")
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
	basis := logfile.Basis{Name: "F0", Ref: thermal.F0}
	run := &Run{}
	run.On(basis, sensorToleranceC)
	log, err := logfile.ReadFile(context.Background(), file, logfile.Options{ToleranceC: sensorToleranceC, Bases: []logfile.Basis{basis}, History: run.Keep})
	require.NoError(t, err)
	run.Log, run.Result = log, LogResultOf(log, []logfile.Basis{basis}, nil)
	return run
}

// A departure never makes a credit better than the record has it, and one at its
// worst is worth no less than nothing over it.
func TestADepartureAtItsWorstIsNeverCreditedMore(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(12, 40).Draw(t, "minutes")
		from := rapid.IntRange(4, n-6).Draw(t, "from")
		depth := rapid.Float64Range(1, 8).Draw(t, "depth")
		retort, can := make([]float64, n), make([]float64, n)
		for i := range retort {
			retort[i] = 122 + 0.02*float64(i%3)
			if i == 0 {
				retort[i] = 95
			}
			if i >= from && i < from+3 {
				retort[i] -= depth
			}
			can[i] = math.Min(retort[i], 121.9-40*math.Pow(10, -float64(i)/6)) - 0.01*float64(i%2)
		}
		run := readRun(t, dir, retort, can)
		list := run.Departures(retortAtLeast, nil)
		require.NotEmpty(t, list)
		for _, d := range list {
			for _, c := range d.Credits {
				require.NotNil(t, c.AtWorst)
				assert.LessOrEqual(t, *c.AtWorst, *c.Credited)
				assert.LessOrEqual(t, *c.Without, *c.AtWorst)
			}
		}
		assert.InDelta(t, 122+0.02*float64((from+1)%3)-depth, *list[0].Worst, 0.05)
	})
}

func TestLimitsThatARecordDoesNotShow(t *testing.T) {
	run := readRun(t, t.TempDir(), []float64{60, 90, 122, 122.1, 122, 122.2, 122, 60}, []float64{50, 60, 80, 100, 110, 115, 118, 110.5})
	d := run.Departures(beverage.CriticalLimit{What: "flow", AtMost: beverage.Say(3000.0), Text: "at most 3000 L/h"}, nil)
	require.Len(t, d, 1)
	assert.Equal(t, beverage.CannotTell, d[0].Outcome)
	assert.Equal(t, "this record does not show it", d[0].Why)
	d = run.Departures(beverage.CriticalLimit{What: "initial temperature", AtLeast: beverage.Say(52.0), Text: "at least 52 C"}, nil)
	require.Len(t, d, 1)
	assert.Equal(t, beverage.FallsShort, d[0].Outcome)
	assert.InDelta(t, 2.5, *d[0].Depth, 1e-9)
}
