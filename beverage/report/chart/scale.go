package chart

import (
	"math"
	"strconv"
	"strings"
)

// scale turns values of an axis into units of the drawing.
type scale struct {
	low, high float64 // values at the ends
	step      float64 // from tick to tick
	from, to  float64 // units at the ends
}

// leastReach is the shortest axis that is worth one; a shorter one is a point.
const leastReach = 1e-12

// outOfSight is as far beyond an axis as anything is drawn, in lengths of it.
const outOfSight = 100

// tiny is what arithmetic alone may move a figure by, in the unit at hand.
const tiny = 1e-6

// newScale makes ends that are ticks, unless the axis has its own ends.
func newScale(a Axis, e extent, ticks int, from, to float64) scale {
	low, high := a.Low, a.High
	own := high > low && drawable(low) && drawable(high)
	if !own {
		low, high = e.low, e.high
	}
	if !(low <= high) {
		low, high = 0, 1
	}
	if high-low <= tiny*math.Abs(high)+leastReach {
		low, high = low-1-math.Abs(low), high+1+math.Abs(high)
	}
	s := scale{low: low, high: high, step: niceStep((high - low) / float64(ticks)), from: from, to: to}
	if !own {
		s.low, s.high = math.Floor(low/s.step+tiny)*s.step, math.Ceil(high/s.step-tiny)*s.step
	}
	return s
}

// niceStep is the next 1, 2 or 5 times a power of ten.
func niceStep(least float64) float64 {
	power := math.Pow10(int(math.Floor(math.Log10(least) + tiny)))
	for _, f := range []float64{1, 2, 5} {
		if f*power >= least*(1-tiny) {
			return f * power
		}
	}
	return 10 * power
}

// at converts before it adds, so that no processor fuses the two. What lies far
// out of the picture is drawn less far out.
func (s scale) at(v float64) float64 {
	share := math.Max(-outOfSight, math.Min(outOfSight, (v-s.low)/(s.high-s.low)))
	return s.from + float64(share*(s.to-s.from))
}

// ticks are the multiples of the step within the ends.
func (s scale) ticks() []float64 {
	var out []float64
	first, last := math.Ceil(s.low/s.step-tiny), math.Floor(s.high/s.step+tiny)
	for i := first; i <= last && len(out) < mostTicks; i++ {
		out = append(out, i*s.step)
	}
	return out
}

// mostTicks bounds what a scale of any ends draws.
const mostTicks = 40

// label writes a tick with the decimals that its step has.
func (s scale) label(v float64) string {
	decimals := max(0, -int(math.Floor(math.Log10(s.step)+tiny)))
	t := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(t, "-0.") == "" {
		return "0"
	}
	return t
}

// coordinate writes a place to a tenth of a unit. Ends of rounding are moved off
// the places that figures in tenths and halves land on, lest two processors
// that differ in the last bit round them apart.
func coordinate(v float64) string {
	t := strconv.FormatFloat(math.Floor(v*10+0.5+tiny)/10, 'f', 1, 64)
	t = strings.TrimSuffix(t, ".0")
	if t == "-0" {
		return "0"
	}
	return t
}
