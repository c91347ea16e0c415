package logfile

import (
	"math"

	"posset/thermal"
)

const (
	maxTableDecimals = 3   // the finest resolution a table is made for; beyond it each lethal rate is worked out
	maxStep          = 128 // of the resolution; the mean rate of larger steps is worked out
	fineBits         = 8
	fineSteps        = 1 << fineBits // of the resolution, between two entries of the coarse table
)

// rateTable gives the lethal rate at every reading that a resolution allows, as
// the product of a coarse and a fine power of ten, and what the mean rate over a
// step is worth against the rate at its start. Both tables are short enough to
// be made anew for each file. Rounding leaves an error below 1e-14.
type rateTable struct {
	grid   float64 // readings a unit: 10 to the number of decimals
	base   float64 // of coarse[0], in steps, less the half that rounds a reading
	coarse []float64
	fine   [fineSteps]float64
	mean   [2*maxStep + 1]float64
	perUp  float64 // of the exponent, for one step up
}

// newRateTable makes the table for all readings that can be temperatures.
func newRateTable(ref thermal.Reference, unit scale, decimals int) *rateTable {
	r := &rateTable{grid: pow10[decimals]}
	r.perUp = unit.factor / r.grid * math.Ln10 / ref.ZC
	for d := range r.mean {
		u := float64(d-maxStep) * r.perUp
		r.mean[d] = thermal.MeanRate(1, math.Exp(u), u)
	}
	for k := range r.fine {
		r.fine[k] = math.Exp(float64(k) * r.perUp)
	}
	low, high := math.Floor(unit.back(lowestC)*r.grid), unit.back(highestAnyC)*r.grid
	r.base = low - 0.5
	for k := low; k <= high+1; k += fineSteps {
		r.coarse = append(r.coarse, ref.LethalRate(unit.c(k/r.grid)))
	}
	return r
}

// sum is the integral of the lethal rate over evenly spaced readings, in steps
// of their spacing. All of them must be such as can be temperatures.
func (r *rateTable) sum(readings []float64) float64 {
	if len(readings) < 2 {
		return 0
	}
	total := 0.0
	grid, base, coarse := r.grid, r.base, r.coarse
	k := int(readings[0]*grid - base)
	rate := coarse[k>>fineBits] * r.fine[k&(fineSteps-1)]
	for _, v := range readings[1:] {
		next := int(v*grid - base)
		nextRate := coarse[next>>fineBits] * r.fine[next&(fineSteps-1)]
		if d := next - k + maxStep; uint(d) < uint(len(r.mean)) {
			total += rate * r.mean[d]
		} else {
			total += thermal.MeanRate(rate, nextRate, float64(next-k)*r.perUp)
		}
		k, rate = next, nextRate
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
