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
		{"a dip", []float64{60, 122, 122, 119, 118, 122, 122, 40}, true, []stretch{{fromS: 120, toS: 300, lengthS: 180, lowC: 118, highC: 119, surely: true}}},
		{"come-up and cooling pass the tolerance", []float64{60, 121.3, 122, 122, 121.2, 40}, true, nil},
		{"a dip right after the limit was reached", []float64{60, 121.3, 119, 122, 40}, true, []stretch{{fromS: 60, toS: 180, lengthS: 120, lowC: 119, highC: 119, surely: true}}},
		{"never with the tolerance off", []float64{60, 121.3, 121.4, 40}, true, []stretch{{fromS: 60, toS: 120, lengthS: 60, lowC: 121.3, highC: 121.4}}},
		{"two dips are two", []float64{122, 120, 122, 121, 122}, true, []stretch{{fromS: 0, toS: 120, lengthS: 120, lowC: 120, highC: 120, surely: true}, {fromS: 120, toS: 240, lengthS: 120, lowC: 121, highC: 121, surely: true}}},
		{"within the tolerance, told as one", []float64{122, 121.3, 122, 121.4, 122}, true, []stretch{{fromS: 0, toS: 240, lengthS: 240, lowC: 121.3, highC: 121.4}}},
	} {
		h := historyOf(c.temps...)
		first, last := h.kept(retortAtLeast)
		assert.Equal(t, c.kept, first >= 0, c.name)
		if c.kept {
			assert.Equal(t, c.want, h.stretches(retortAtLeast, first, last, 90), c.name)
		}
	}
	from, to := historyOf(60, 30, 31, 60, 90, 122, 122, 110, 122, 122, 122, 20).comeUp(121)
	assert.Equal(t, 180.0, to-from, "a dip is no come-up")
	most := beverage.CriticalLimit{What: retortTemperature, AtMost: beverage.Say(123.0), Text: "at most 123 C"}
	got := historyOf(60, 122, 124, 122, 122).stretches(most, 0, 4, 90)
	assert.Equal(t, []stretch{{fromS: 60, toS: 180, lengthS: 120, lowC: 124, highC: 124, surely: true}}, got[:1])
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

// readLog reads a record as it is written.
func readLog(t require.TestingT, dir, text string, limits ...beverage.CriticalLimit) *Run {
	file := filepath.Join(dir, "run.csv")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	basis := logfile.Basis{Name: "F0", Ref: thermal.F0}
	run := &Run{}
	run.On(basis, sensorToleranceC)
	run.Know(limits, beverage.Say(80.0))
	log, err := logfile.ReadFile(context.Background(), file, logfile.Options{ToleranceC: sensorToleranceC, Bases: []logfile.Basis{basis}, History: run.Keep})
	require.NoError(t, err)
	run.Log, run.Result = log, LogResultOf(log, []logfile.Basis{basis}, nil)
	return run
}

const limited = `Time (min),Retort (C),Can 1 product (C),Can 2 product (C),Filler outlet (C),Back pressure (barg)
0,60.1,55.2,49.1,88.1,1.2
1,90.2,60.1,58.3,88.3,1.3
2,121.4,81.4,79.2,88.2,1.9
3,122.1,99.7,95.1,84.9,2.0
4,122.2,108.2,104.4,88.4,2.1
5,122.1,113.1,110.2,88.2,2.0
6,122.3,116.4,114.3,88.1,2.1
7,121.9,118.2,116.8,88.3,2.2
8,60.2,101.3,101.2,88.2,1.4
9,40.3,79.2,79.9,88.4,1.2
10,30.1,60.4,61.1,88.1,1.1
`

// Every limit that a record can speak to is held against it, column by column,
// with its time, its worst end and how far outside that is.
func TestLimitsOfWhichARecordSpeaks(t *testing.T) {
	retort := beverage.CriticalLimit{What: retortTemperature, AtLeast: beverage.Say(121.0), AtMost: beverage.Say(122.6), Text: "121 to 122.6 C"}
	run := readLog(t, t.TempDir(), limited, retort)
	for _, c := range []struct {
		limit                       beverage.CriticalLimit
		column                      string
		startS, endS, worst, depthC float64
		outcome                     beverage.Outcome
		n                           int
	}{
		{beverage.CriticalLimit{What: initialTemperature, AtLeast: beverage.Say(54.0)}, "Can 2 product", 0, 0, 48.6, 5.4, beverage.FallsShort, 1},
		{beverage.CriticalLimit{What: initialTemperature, AtLeast: beverage.Say(55.0)}, "Can 1 product", 0, 0, 54.7, 0.3, beverage.CannotTell, 2},
		{beverage.CriticalLimit{What: holdTime, AtLeast: beverage.Say(330.0)}, "Retort", 180, 420, 240, 90, beverage.FallsShort, 1},
		{beverage.CriticalLimit{What: holdTime, AtLeast: beverage.Say(300.0)}, "Retort", 180, 420, 240, 60, beverage.CannotTell, 1},
		{beverage.CriticalLimit{What: comeUpTime, AtMost: beverage.Say(120.0)}, "Retort", 0, 180, 180, 60, beverage.CannotTell, 1},
		{beverage.CriticalLimit{What: fillTemperature, AtLeast: beverage.Say(87.0)}, "Filler outlet", 120, 240, 84.9, 2.1, beverage.FallsShort, 1},
		{beverage.CriticalLimit{What: packHoldTime, AtLeast: beverage.Say(300.0)}, "Can 2 product", 180, 480, 300, 0, beverage.Meets, 0},
		{beverage.CriticalLimit{What: packHoldTime, AtLeast: beverage.Say(400.0)}, "Can 1 product", 120, 480, 360, 40, beverage.FallsShort, 2},
		{retort, "Retort", 180, 420, 122.8, 0.2, beverage.CannotTell, 1},
	} {
		list := run.Departures(c.limit, nil)
		require.Len(t, list, c.n, c.limit)
		if c.n == 0 {
			continue
		}
		d := list[0]
		assert.Equal(t, c.column, d.Column, c.limit)
		assert.Equal(t, c.outcome, d.Outcome, c.limit)
		assert.InDelta(t, c.startS, *d.StartS, 1e-9, c.limit)
		assert.InDelta(t, c.endS, *d.EndS, 1e-9, c.limit)
		assert.InDelta(t, c.worst, *d.Worst, 1e-9, c.limit)
		assert.InDelta(t, c.depthC, *d.Depth, 1e-9, c.limit)
	}
	d := run.Departures(beverage.CriticalLimit{What: "back pressure", AtLeast: beverage.Say(150.0)}, nil)
	require.Len(t, d, 1)
	assert.Equal(t, `column "Back pressure (barg)" may show it, but only temperatures are read here: hold it against the limit by hand`, d[0].Why)
}

// A time without readings of the retort is a departure that cannot be told, and
// hides none beside it.
func TestNothingShowsALimitOverAGap(t *testing.T) {
	lines := strings.SplitAfter(limited, "\n")
	run := readLog(t, t.TempDir(), strings.Join(append(lines[:6:6], lines[8:]...), ""))
	list := run.Departures(beverage.CriticalLimit{What: retortTemperature, AtLeast: beverage.Say(121.0)}, nil)
	require.NotEmpty(t, list)
	assert.Equal(t, beverage.CannotTell, list[0].Outcome)
	assert.Equal(t, "no sound reading for this long: nothing shows that the limit was kept", list[0].Why)
	assert.Equal(t, 240.0, *list[0].StartS)
	assert.Equal(t, 420.0, *list[0].EndS)
	assert.Nil(t, list[0].Worst)
}

// However long the record, so that its history is thinned, readings that are cut
// out of the hold leave a departure, and no longer hold than was recorded.
func TestACutHidesNoDeparture(t *testing.T) {
	limit := beverage.CriticalLimit{What: retortTemperature, AtLeast: beverage.Say(121.0)}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom([]int{200, 5000, 20000}).Draw(t, "readings")
		from := rapid.IntRange(20, n-40).Draw(t, "from")
		cut := rapid.IntRange(2, 12).Draw(t, "cut")
		h := &heatHistory{}
		for i := range n {
			if i < from || i >= from+cut {
				h.add(float64(i), 122)
			}
		}
		first, last := h.kept(limit)
		list := h.stretches(limit, first, last, gapFactor)
		require.Len(t, list, 1)
		assert.True(t, list[0].unseen)
		assert.LessOrEqual(t, list[0].fromS, float64(from-1))
		assert.GreaterOrEqual(t, list[0].toS, float64(min(from+cut, n-2*h.stride)))
		held := h.stay(121, 0.5, 1, "").found
		assert.LessOrEqual(t, held.High, float64(max(from-1, n-1-from-cut)))
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
