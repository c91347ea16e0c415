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
	stride int
	seen   int
}

func (h *heatHistory) add(timeS, tempC float64) {
	if h.stride == 0 {
		h.stride = 1
	}
	if h.seen%h.stride == 0 {
		h.points = append(h.points, protein.TempPoint{TimeS: timeS, TempC: tempC})
		h.lows = append(h.lows, tempC)
	} else {
		last := len(h.points) - 1
		h.points[last].TempC = math.Max(h.points[last].TempC, tempC)
		h.lows[last] = math.Min(h.lows[last], tempC)
	}
	h.seen++
	if len(h.points) >= historyLimit {
		h.halve()
	}
}

func (h *heatHistory) halve() {
	points, lows := h.points[:0], h.lows[:0]
	for i := 0; i+1 < len(h.points); i += 2 {
		a := h.points[i]
		a.TempC = math.Max(a.TempC, h.points[i+1].TempC)
		low := math.Min(h.lows[i], h.lows[i+1])
		points, lows = append(points, a), append(lows, low)
	}
	h.points, h.lows = points, lows
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
