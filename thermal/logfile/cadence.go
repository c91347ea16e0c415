package logfile

import (
	"math"
	"slices"
)

// How a step of the clock is told from a gap, as multiples of the usual step:
// with one reading lost the step is twice the usual one.
const (
	gapFactor   = 1.5
	evenShare   = 0.8  // of the steps that must be usual ones for an even clock
	longShare   = 0.95 // of the steps of an uneven clock that are not gaps
	roundingEps = 1e-9
)

// cadence is a log's own interval: how long a step between two readings may be
// before something is missing between them.
type cadence struct {
	usualS float64
	limitS float64 // a step of this length or more is a gap
	mixed  bool    // the log changes its interval; then a step is held against its neighbours
	longS  float64
}

// cadenceOf learns the interval from the forward steps of a clock.
func cadenceOf(steps []float64) cadence {
	if len(steps) == 0 {
		return cadence{}
	}
	if allEqual(steps) {
		return cadence{usualS: steps[0], limitS: gapFactor * steps[0]}
	}
	sorted := slices.Clone(steps)
	slices.Sort(sorted)
	usual := sorted[len(sorted)/2]
	within, _ := slices.BinarySearch(sorted, gapFactor*usual)
	c := cadence{usualS: usual, limitS: gapFactor * usual}
	if float64(within) >= evenShare*float64(len(sorted)) {
		return c
	}
	if evenlyRounded(steps, sorted) {
		low, high := sorted[0], sorted[len(sorted)-1]
		c.usualS, c.limitS = mean(steps), max(low+high/2, high*(1+roundingEps))
		return c
	}
	c.mixed, c.longS = true, sorted[int(longShare*float64(len(sorted)-1))]
	return c
}

func allEqual(v []float64) bool {
	for _, x := range v {
		if x != v[0] {
			return false
		}
	}
	return true
}

// evenlyRounded tells an even clock written too coarsely: its steps take two
// lengths, and no reading is further from a straight line than their
// difference.
func evenlyRounded(steps, sorted []float64) bool {
	low, high := sorted[0], sorted[len(sorted)-1]
	if high <= low || high > 2*low+roundingEps || len(steps) < 8 {
		return false
	}
	m, off := mean(steps), 0.0
	for _, s := range steps {
		if off += s - m; math.Abs(off) > high-low {
			return false
		}
	}
	return true
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// allows tells whether a step can be one without anything missing. prev and
// next are the steps beside it, 0 where there is none.
func (c *cadence) allows(prev, step, next float64) bool {
	if step < c.limitS {
		return true
	}
	return c.mixed && step <= gapFactor*c.longS && (step < gapFactor*prev || step < gapFactor*next)
}
