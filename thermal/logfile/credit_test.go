package logfile_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/thermal"
	"posset/thermal/logfile"
)

// The short way over sound stretches gives what the long way gives, the history
// too.
func TestShortWayIsTheLongWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProcess(t)
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 3))
		r := p.run(rng)
		if k := rapid.IntRange(-1, len(injections)-1).Draw(t, "fault"); k >= 0 {
			injections[k].inject(rng, &r, len(r.cols)-1)
		}
		defer logfile.SetWindowRows(rapid.SampledFrom([]int{8192, 120}).Draw(t, "window"))()
		o := options()
		o.Bases = append(o.Bases, logfile.Basis{Name: "spores", Ref: thermal.Reference{TrefC: 121.1, ZC: 9.5}, MinC: 110})
		bound := thermal.Bound{Below: thermal.Reference{TrefC: 118, ZC: 7}, Above: thermal.Reference{TrefC: 118, ZC: 12}, MinC: 105, MaxC: 122}
		o.Bases = append(o.Bases, logfile.Basis{Name: "spread", Ref: bound.Below, Bound: &bound, MinC: bound.MinC})
		o.StaysAtC = []float64{100, p.topC - 1}
		short, shortHeard := readHeard(t, r.csv(), o)
		restore := logfile.LongWayOnly()
		long, longHeard := readHeard(t, r.csv(), o)
		restore()
		require.Equal(t, longHeard, shortHeard)
		require.Equal(t, len(long.Probes), len(short.Probes))
		for i := range long.Probes {
			sameProbe(t, long.Probes[i], short.Probes[i])
		}
	})
}

// readHeard reads a log and its history, probe by probe.
func readHeard(t tester, text string, o logfile.Options) (*logfile.Log, [][]float64) {
	t.Helper()
	heard := make([][]float64, 4)
	o.History = func(probe int, timeS, tempC float64) { heard[probe] = append(heard[probe], timeS, tempC) }
	return read(t, text, o), heard
}

// fataler is a test that can be given up.
type fataler interface {
	tester
	Fatalf(format string, args ...any)
}

func sameProbe(t fataler, a, b logfile.Probe) {
	near := func(x, y *float64) {
		t.Helper()
		if (x == nil) != (y == nil) || x != nil && !(math.Abs(*x-*y) <= 1e-9*math.Max(1e-6, math.Abs(*x))) {
			t.Fatalf("%s: %v is not %v\n%+v\n%+v", a.Name, *x, *y, a, b)
		}
	}
	for k := range a.Results {
		x, y := a.Results[k], b.Results[k]
		near(x.LethalityMin, y.LethalityMin)
		near(x.MostMin, y.MostMin)
		near(x.CreditedMin, y.CreditedMin)
		near(x.CreditedBeforeCoolingMin, y.CreditedBeforeCoolingMin)
		near(x.CreditedHeatingMin, y.CreditedHeatingMin)
		near(x.CreditedHoldMin, y.CreditedHoldMin)
	}
	for k := range a.Stays {
		near(a.Stays[k].WordS, b.Stays[k].WordS)
		near(a.Stays[k].CreditedS, b.Stays[k].CreditedS)
		near(a.Stays[k].TotalS, b.Stays[k].TotalS)
	}
	require.Equal(t, a.Hold, b.Hold)
	a.Results, b.Results, a.Stays, b.Stays, a.Hold, b.Hold = nil, nil, nil, nil, nil, nil
	require.Equal(t, a, b)
}

// A later fault hides no earlier one, unless it takes the place away.
func TestFaultHidesNoOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProcess(t)
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5))
		r := p.run(rng)
		at := len(r.t) / 2
		col := len(r.cols) - 1
		r.cols[col][at] -= math.Ceil((r.bend(col, at)+3*beyond(&r))/r.step) * r.step
		first := read(t, r.csv(), options()).Probes[col].Faults
		require.True(t, found(first, []logfile.FaultKind{logfile.Spike}), "%v", first)
		beside := r.around(r.t[at], col)
		in := rapid.SampledFrom(injections).Draw(t, "fault")
		if !in.inject(rng, &r, col) || !slices.Equal(beside, r.around(beside[2], col)) {
			t.Skip("the place is gone")
		}
		after := read(t, r.csv(), options()).Probes[col].Faults
		require.True(t, found(after, []logfile.FaultKind{logfile.Spike}), "%s hides the spike: %v", in.name, after)
	})
}

// around gives the clock and the readings about a moment, nil when it is not
// there once.
func (r *record) around(t float64, col int) []float64 {
	i := slices.Index(r.t, t)
	if i < 2 || i+2 >= len(r.t) || slices.Contains(r.t[i+1:], t) {
		return nil
	}
	return append(slices.Clone(r.t[i-2:i+3]), r.cols[col][i-2:i+3]...)
}

// One reading in a hundred lost costs at most a few percent.
func TestLostReadingsCostLittle(t *testing.T) {
	for seed := uint64(0); seed < 20; seed++ {
		rng := rand.New(rand.NewPCG(seed, 11))
		p := process{intervalS: 5, step: 0.1, noiseC: 0.05, tausS: []float64{60, 150}, topC: 121.5, holdS: 1200, restS: 700}
		r := p.run(rng)
		whole := r.lethality(0, thermal.F0, 0.5)
		for i := rng.IntN(100); i < len(r.t); i += 100 {
			r.cols[0][i] = nan
		}
		credited := *read(t, r.csv(), options()).Probes[0].Results[0].CreditedMin
		assert.Less(t, credited, whole)
		assert.Greater(t, credited, 0.95*whole)
	}
}

// Over a gap nothing is credited, and all of the rest is.
func TestGapTakesOnlyItsOwn(t *testing.T) {
	r := cans()
	r.dropRows(180, 90)
	l := read(t, r.csv(), options())
	want := 0.0
	for i := 1; i < len(r.t); i++ {
		if dt := r.t[i] - r.t[i-1]; dt < 6 {
			want += thermal.F0.Piece(dt, r.cols[1][i-1]-0.5, r.cols[1][i]-0.5) / 60
		}
	}
	assert.InEpsilon(t, want, *l.Probes[1].Results[0].CreditedMin, 1e-9)
	assert.InEpsilon(t, r.lethality(1, thermal.F0, 0), *l.Probes[1].Results[0].LethalityMin, 1e-9)
}

// Below the range an organism was measured in nothing is credited, to the
// second at which the range is entered and left.
func TestCreditEndsAtMeasuredRange(t *testing.T) {
	text := "time_s,Can 1 (°C)\n0,20\n60,80\n120,100\n180,100\n240,60\n300,20\n"
	ref := thermal.Reference{TrefC: 93.3, ZC: 8.9}
	o := logfile.Options{ToleranceC: 0.5, Bases: []logfile.Basis{{Ref: ref, MinC: 90}}}
	l := read(t, text, o)
	want := ref.Lethality([]thermal.Point{{TimeS: 91.5, TempC: 90}, {TimeS: 120, TempC: 99.5}, {TimeS: 180, TempC: 99.5}, {TimeS: 194.25, TempC: 90}})
	assert.InEpsilon(t, want, *l.Probes[0].Results[0].CreditedMin, 1e-12)
}

// The medium alone credits nothing.
func TestMediumAloneCreditsNothing(t *testing.T) {
	l := read(t, "time_s,Retort (°C)\n0,120\n5,121\n10,121\n", options())
	assert.Equal(t, logfile.Retort, l.Probes[0].Role)
	assert.Equal(t, logfile.Heading, l.Probes[0].RoleBasis)
	assert.NotNil(t, l.Probes[0].Results[0].LethalityMin)
	assert.Nil(t, l.Probes[0].Results[0].CreditedMin)
	index, alone := l.ColdestProduct(0)
	assert.Equal(t, -1, index)
	assert.True(t, alone)
}

func TestColdestProduct(t *testing.T) {
	r := cans()
	l := read(t, r.csv(), options())
	index, alone := l.ColdestProduct(0)
	assert.Equal(t, 2, index)
	assert.False(t, alone)
	l.Probes[1].Results[0].CreditedMin = nil
	index, _ = l.ColdestProduct(0)
	assert.Equal(t, 1, index, "what is unknown is coldest")
	index, alone = (&logfile.Log{}).ColdestProduct(0)
	assert.Equal(t, -1, index)
	assert.False(t, alone)
}

// An organism's spread of z: below Tref the larger one gives more, above it the
// smaller; the record at its word may have reached as much.
func TestMostOfASpread(t *testing.T) {
	bound := thermal.Bound{Below: thermal.Reference{TrefC: 91, ZC: 6.4}, Above: thermal.Reference{TrefC: 91, ZC: 10.2}, MinC: 85, MaxC: 97}
	o := logfile.Options{ToleranceC: 0.5, Bases: []logfile.Basis{{Ref: bound.Below, Bound: &bound, MinC: bound.MinC}, {Ref: bound.Below}}}
	l := read(t, "time_s,Can 1 (°C)\n0,86\n60,86\n120,94\n180,94\n", o)
	atCross := 60 + 60*5.0/8
	want := bound.Above.Lethality([]thermal.Point{{TimeS: 0, TempC: 86}, {TimeS: 60, TempC: 86}, {TimeS: atCross, TempC: 91}}) +
		bound.Below.Lethality([]thermal.Point{{TimeS: atCross, TempC: 91}, {TimeS: 120, TempC: 94}, {TimeS: 180, TempC: 94}})
	r := l.Probes[0].Results[0]
	assert.InEpsilon(t, want, *r.MostMin, 1e-12)
	assert.InEpsilon(t, bound.Below.Lethality([]thermal.Point{{TimeS: 0, TempC: 86}, {TimeS: 60, TempC: 86}, {TimeS: 120, TempC: 94}, {TimeS: 180, TempC: 94}}), *r.LethalityMin, 1e-12)
	assert.Nil(t, l.Probes[0].Results[1].MostMin)
}
