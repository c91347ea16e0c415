package logfile

import (
	"math"
	"sync"

	"posset/thermal"
)

const (
	maxTableDecimals = 3   // the finest resolution a table is made for; beyond it each lethal rate is worked out
	maxStep          = 128 // of the resolution; the mean rate of larger steps is worked out
	anchorSteps      = 256 // of the resolution, between two rates of a table that are worked out for themselves
)

// rateTable holds the lethal rate at every reading that a resolution allows and
// that can be a temperature, and what the mean rate over a step is worth against
// the rate at its start. It is never changed once made.
type rateTable struct {
	grid  float64 // readings a unit: 10 to the number of decimals
	base  float64 // of rate[0], in steps, less the half that rounds a reading
	rate  []float64
	mean  [2*maxStep + 1]float64
	perUp float64 // of the exponent, for one step up
}

// newRateTable makes the table. Each rate is one worked out times a power of one
// step, so that rounding leaves an error below 1e-14 of it.
func newRateTable(k rateKey) *rateTable {
	r := &rateTable{grid: pow10[k.decimals]}
	r.perUp = k.unit.factor / r.grid * math.Ln10 / k.ref.ZC
	for d := range r.mean {
		u := float64(d-maxStep) * r.perUp
		r.mean[d] = thermal.MeanRate(1, math.Exp(u), u)
	}
	var ups [anchorSteps]float64
	for i := range ups {
		ups[i] = math.Exp(float64(i) * r.perUp)
	}
	low, high := math.Floor(k.unit.back(lowestC)*r.grid), k.unit.back(highestAnyC)*r.grid
	r.base, r.rate = low-0.5, make([]float64, 0, int(high-low)+2*anchorSteps)
	for at := low; at <= high+1; at += anchorSteps {
		anchor := k.ref.LethalRate(k.unit.c(at / r.grid))
		for _, up := range ups {
			r.rate = append(r.rate, anchor*up)
		}
	}
	return r
}

// rateKey is what a table of rates depends on.
type rateKey struct {
	ref      thermal.Reference
	unit     scale
	decimals int
}

// mostSharedTables bounds how many tables are kept from file to file.
const mostSharedTables = 8

// sharedTables are used by all files of a run.
var sharedTables = struct {
	sync.Mutex
	by map[rateKey]*rateTable
}{by: map[rateKey]*rateTable{}}

// tableOf gives a table of rates, kept or new; nil for a resolution too fine for
// one.
func tableOf(k rateKey) *rateTable {
	if k.decimals > maxTableDecimals {
		return nil
	}
	sharedTables.Lock()
	defer sharedTables.Unlock()
	if t := sharedTables.by[k]; t != nil {
		return t
	}
	if len(sharedTables.by) == mostSharedTables {
		clear(sharedTables.by)
	}
	t := newRateTable(k)
	sharedTables.by[k] = t
	return t
}

// sum is the integral of the lethal rate over evenly spaced readings, in steps
// of their spacing. All of them must be such as can be temperatures.
func (r *rateTable) sum(readings []float64) float64 {
	if len(readings) < 2 {
		return 0
	}
	total := 0.0
	grid, base, rate := r.grid, r.base, r.rate
	k := int(readings[0]*grid - base)
	for _, v := range readings[1:] {
		next := int(v*grid - base)
		if d := next - k + maxStep; uint(d) < uint(len(r.mean)) {
			total += rate[k] * r.mean[d]
		} else {
			total += thermal.MeanRate(rate[k], rate[next], float64(next-k)*r.perUp)
		}
		k = next
	}
	return total
}

// sumOf is sum for readings of any resolution, without a table.
func sumOf(ref thermal.Reference, unit scale, readings []float64) float64 {
	total := 0.0
	last := unit.c(readings[0])
	rate := ref.LethalRate(last)
	for _, v := range readings[1:] {
		c := unit.c(v)
		next := ref.LethalRate(c)
		total += thermal.MeanRate(rate, next, (c-last)*(math.Ln10/ref.ZC))
		last, rate = c, next
	}
	return total
}
