package logfile

import (
	"math"

	"posset/thermal"
)

const (
	maxTable   = 1 << 15 // entries; beyond it a lethal rate is worked out each time
	tableSlack = 10.     // °C a table reaches beyond what was asked for
	maxStep    = 128     // of the resolution; the mean rate of larger steps is worked out
	anchorAt   = 64      // entries after which the table is computed anew, so that rounding cannot build up
)

// rateTable holds the lethal rate at every reading that a resolution allows,
// and what the mean rate over a step is worth against the rate at its start.
type rateTable struct {
	ref   thermal.Reference
	unit  scale
	grid  float64 // readings a unit: 10 to the number of decimals
	low   int     // reading of rate[0], in steps
	rate  []float64
	mean  [2*maxStep + 1]float64
	perUp float64 // of the exponent, for one step up
}

func newRateTable(ref thermal.Reference, unit scale, decimals int) *rateTable {
	r := &rateTable{ref: ref, unit: unit, grid: pow10[decimals]}
	r.perUp = unit.factor / r.grid * math.Ln10 / ref.ZC
	for d := range r.mean {
		u := float64(d-maxStep) * r.perUp
		r.mean[d] = thermal.MeanRate(1, math.Exp(u), u)
	}
	return r
}

// reach makes the table hold all readings from low to high, in the file's unit;
// false when that is too many.
func (r *rateTable) reach(low, high float64) bool {
	from, to := int(math.Floor(low*r.grid)), int(math.Ceil(high*r.grid))
	have := r.low + len(r.rate)
	if from >= r.low && to < have {
		return true
	}
	slack := int(tableSlack / r.unit.factor * r.grid)
	from, to = from-slack, to+slack
	if len(r.rate) > 0 {
		from, to = min(from, r.low), max(to, have-1)
	}
	if to-from >= maxTable {
		return false
	}
	grown := make([]float64, to-from+1)
	if len(r.rate) == 0 {
		r.low, have = from, from
	}
	copy(grown[r.low-from:], r.rate)
	r.compute(grown, from, from, r.low)
	r.compute(grown, from, have, to+1)
	r.low, r.rate = from, grown
	return true
}

// compute fills in the rates of the readings start to end; rate[0] is low's.
func (r *rateTable) compute(rate []float64, low, start, end int) {
	up := math.Exp(r.perUp)
	for start < end {
		next := min(start+anchorAt, end)
		v := r.ref.LethalRate(r.unit.c(float64(start) / r.grid))
		for k := range rate[start-low : next-low] {
			rate[start-low+k] = v
			v *= up
		}
		start = next
	}
}

// sum is the integral of the lethal rate over evenly spaced readings, in steps
// of their spacing.
func (r *rateTable) sum(readings []float64) float64 {
	if len(readings) < 2 {
		return 0
	}
	total := 0.0
	base := float64(r.low) - 0.5
	k := int(readings[0]*r.grid - base)
	rate := r.rate
	for _, v := range readings[1:] {
		next := int(v*r.grid - base)
		if d := next - k + maxStep; uint(d) < uint(len(r.mean)) {
			total += rate[k] * r.mean[d]
		} else {
			total += thermal.MeanRate(rate[k], rate[next], float64(next-k)*r.perUp)
		}
		k = next
	}
	return total
}
