package facts

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

// retortRun is a record of a probe every 5 s: up to 121.5 °C, a hold, down.
func retortRun(rows int, without func(i int) bool) string {
	var b strings.Builder
	b.WriteString("time_s,Can 1 (°C)\n")
	for i := range rows {
		share := float64(i) / float64(rows)
		c := 121.5 + 0.05*math.Sin(float64(i))
		switch {
		case share < 0.3:
			c = 20 + 101.5*share/0.3 + 0.05*math.Sin(float64(i))
		case share > 0.7:
			c = 121.5 - 101.5*(share-0.7)/0.3 + 0.05*math.Sin(float64(i))
		}
		if !without(i) {
			fmt.Fprintf(&b, "%d,%.2f\n", 5*i, c)
		}
	}
	return b.String()
}

func tracedRun(t *testing.T, text string) (beverage.ProbeResult, *beverage.Trace) {
	bases := []logfile.Basis{{Name: "F0", Ref: thermal.F0}}
	tracer := NewTracer(bases[0], sensorToleranceC)
	log, err := logfile.Read(context.Background(), strings.NewReader(text), "run.csv", logfile.Options{ToleranceC: sensorToleranceC, Bases: bases, History: tracer.Collect})
	require.NoError(t, err)
	r := LogResultOf(log, bases, nil)
	tracer.Draw(log, &r)
	require.NotNil(t, r.Probes[0].Trace)
	return r.Probes[0], r.Probes[0].Trace
}

// What is drawn of a sound record ends at what is credited, and reaches as far
// up and down as the record.
func TestTraceOfASoundRecord(t *testing.T) {
	for _, rows := range []int{20, 500, 20000} {
		p, tr := tracedRun(t, retortRun(rows, func(int) bool { return false }))
		assert.LessOrEqual(t, len(tr.Slots), mostSlots)
		assert.Empty(t, tr.Holes)
		assert.InEpsilon(t, *p.CreditedMinutes, tr.Slots[len(tr.Slots)-1].CreditedMin, 1e-6, "%d rows", rows)
		low, high := math.Inf(1), math.Inf(-1)
		for _, s := range tr.Slots {
			low, high = min(low, s.LowC), max(high, s.HighC)
		}
		assert.Equal(t, []float64{*p.MinC, *p.MaxC}, []float64{low, high})
	}
}

// Nothing is drawn as credited over a gap.
func TestTraceOverAGap(t *testing.T) {
	p, tr := tracedRun(t, retortRun(500, func(i int) bool { return i > 200 && i < 260 }))
	assert.Equal(t, []beverage.TraceHole{{FromS: 1000, ToS: 1300}}, tr.Holes)
	assert.InEpsilon(t, *p.CreditedMinutes, tr.Slots[len(tr.Slots)-1].CreditedMin, 1e-6)
}

func TestTraceStaysSmall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tracer := NewTracer(logfile.Basis{Ref: thermal.PU}, 0)
		var now, low, high float64
		for i, step := range rapid.SliceOfN(rapid.Float64Range(0.01, 1e6), 1, 800).Draw(t, "steps") {
			now += step
			c := rapid.Float64Range(-40, 160).Draw(t, "c")
			if i == 0 {
				low, high = c, c
			}
			low, high = min(low, c), max(high, c)
			tracer.Collect(0, now, c)
		}
		r := beverage.LogResult{Probes: make([]beverage.ProbeResult, 1)}
		tracer.Draw(&logfile.Log{Probes: make([]logfile.Probe, 1)}, &r)
		tr := r.Probes[0].Trace
		if len(tr.Slots) > mostSlots || len(tr.Holes) > mostHoles {
			t.Fatalf("%d slots, %d holes", len(tr.Slots), len(tr.Holes))
		}
		gotLow, gotHigh, at, credit := math.Inf(1), math.Inf(-1), math.Inf(-1), 0.0
		for _, s := range tr.Slots {
			if s.EndS < at || s.CreditedMin < credit {
				t.Fatal("a slot stands before the one before it")
			}
			gotLow, gotHigh, at, credit = min(gotLow, s.LowC), max(gotHigh, s.HighC), s.EndS, s.CreditedMin
		}
		if gotLow != low || gotHigh != high {
			t.Fatalf("%v to %v became %v to %v", low, high, gotLow, gotHigh)
		}
	})
}

func TestAim(t *testing.T) {
	b := logfile.Basis{Ref: thermal.F0}
	assert.Equal(t, &beverage.Aim{TrefC: 121.1, ZC: 10}, aimOf(b, nil))
	stay := TargetOf(beverage.Target{Kind: beverage.TargetStay, TrefC: 72, StayS: 15})
	assert.Equal(t, &beverage.Aim{TrefC: 121.1, ZC: 10, StayC: ptr(72.0), StayS: ptr(15.0)}, aimOf(stay.Basis, &stay))
	six := TargetOf(beverage.Target{Kind: beverage.TargetMinutes, Minutes: 6, TrefC: 121.1, ZC: 10})
	assert.Equal(t, &beverage.Aim{TrefC: 121.1, ZC: 10, Minutes: ptr(6.0)}, aimOf(six.Basis, &six))
}
