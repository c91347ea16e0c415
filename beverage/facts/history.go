package facts

import (
	"math"

	"posset/beverage/protein"
)

// historyLimit bounds what is kept of a record: the readings are thinned to the
// hottest and the coolest of each stretch, so that neither the damage to the
// protein nor the depth of a dip is ever understated.
const historyLimit = 4096

// heatHistory keeps one probe's readings, thinned as it grows.
type heatHistory struct {
	points []protein.TempPoint // the hottest of each stretch
	lows   []float64           // the coolest of each stretch
	steps  []float64           // seconds, the longest between two readings of each stretch and to its first
	stride int
	seen   int
	lastS  float64
}

func (h *heatHistory) add(timeS, tempC float64) {
	if h.stride == 0 {
		h.stride = 1
	}
	step := 0.0
	if h.seen > 0 {
		step = timeS - h.lastS
	}
	h.lastS = timeS
	if h.seen%h.stride == 0 {
		h.points = append(h.points, protein.TempPoint{TimeS: timeS, TempC: tempC})
		h.lows, h.steps = append(h.lows, tempC), append(h.steps, step)
	} else {
		last := len(h.points) - 1
		h.steps[last] = math.Max(h.steps[last], step)
		h.points[last].TempC = math.Max(h.points[last].TempC, tempC)
		h.lows[last] = math.Min(h.lows[last], tempC)
	}
	h.seen++
	if len(h.points) >= historyLimit {
		h.halve()
	}
}

func (h *heatHistory) halve() {
	points, lows, steps := h.points[:0], h.lows[:0], h.steps[:0]
	for i := 0; i+1 < len(h.points); i += 2 {
		a := h.points[i]
		a.TempC = math.Max(a.TempC, h.points[i+1].TempC)
		low, step := math.Min(h.lows[i], h.lows[i+1]), math.Max(h.steps[i], h.steps[i+1])
		points, lows, steps = append(points, a), append(lows, low), append(steps, step)
	}
	h.points, h.lows, h.steps = points, lows, steps
	h.stride *= 2
}

// lowest is the coolest reading between two times, a stretch that reaches over
// an end counting whole; +Inf where nothing is kept.
func (h *heatHistory) lowest(fromS, toS float64) float64 {
	low := math.Inf(1)
	for i, p := range h.points {
		if p.TimeS >= fromS && p.TimeS <= toS {
			low = math.Min(low, h.lows[i])
		}
	}
	return low
}

// collect is what the log reader calls with every sound reading.
func (r *Run) collect(probe int, timeS, tempC float64) {
	for len(r.heat) <= probe {
		r.heat = append(r.heat, heatHistory{})
	}
	r.heat[probe].add(timeS, tempC)
}
