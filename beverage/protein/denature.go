package protein

import (
	"fmt"
	"math"
	"slices"

	"posset/beverage"
)

// TempPoint is one reading of a temperature history.
type TempPoint struct {
	TimeS float64
	TempC float64
}

// Denaturer follows how much of the whey protein heat has unfolded for good, along
// a temperature history taken as straight lines between readings. Add is called
// with rising times. The zero value is unknown.
type Denaturer struct {
	labile   []labilePart
	validity Validity
	last     TempPoint
	started  bool
	hottestC float64
}

// labilePart is one protein that heat unfolds.
type labilePart struct {
	part     *Part
	kinetics *kinetics
	lowest   float64 // factors on the rate for the low end, the middle and the high
	middle   float64
	highest  float64
	shiftC   float64 // sugar: taken off the temperature for the low end alone
	dose     dose    // factors aside
	doseLow  dose    // the same, shiftC colder
}

// dose is the integral of a rate over time up to the last reading.
type dose struct {
	sum    float64
	lnRate float64 // at the last reading
	rate   float64
}

func (d *dose) begin(lnRate float64) { d.lnRate, d.rate = lnRate, math.Exp(lnRate) }

// add integrates over dt seconds, ln k running straight from the last reading.
func (d *dose) add(dt, lnRate float64) {
	const nearlyEqual = 1e-4 // the plain mean is then right to a part in 10^9
	before, change := d.rate, lnRate-d.lnRate
	d.begin(lnRate)
	if math.Abs(change) < nearlyEqual {
		d.sum += dt * (before + d.rate) / 2
		return
	}
	d.sum += dt * (d.rate - before) / change
}

// DenaturedPart is the share of one protein that has unfolded for good.
type DenaturedPart struct {
	Part     Part
	Fraction beverage.Interval // 0 to 1
}

// No drink is colder than coldC or hotter than limitC: readings beyond are taken as
// these, which bounds the work on a line between absurd ones.
const (
	coldC  = -50.0
	limitC = 200.0
	stepC  = 2.0 // a line is walked in steps no longer than this
)

// Add takes the next reading: seconds since any start, and °C. The same time twice
// is a sudden change of temperature; a time that falls back is passed over; a
// reading that is no number makes the answer unknown.
func (d *Denaturer) Add(timeS, tempC float64) {
	if math.IsNaN(timeS+tempC) || math.IsInf(timeS+tempC, 0) {
		d.validity.refuse("the temperature history holds a reading that is no number")
		return
	}
	d.hottestC = max(d.hottestC, tempC)
	tempC = min(max(tempC, coldC), limitC)
	next := TempPoint{TimeS: timeS, TempC: tempC}
	switch {
	case !d.started || timeS == d.last.TimeS:
		d.started, d.last = true, next
		d.start(tempC)
	case timeS > d.last.TimeS:
		d.walk(next)
	}
}

func (d *Denaturer) start(tempC float64) {
	for i := range d.labile {
		l := &d.labile[i]
		l.dose.begin(l.kinetics.lnRate(tempC))
		l.doseLow.begin(l.kinetics.lnRate(tempC - l.shiftC))
	}
}

func (d *Denaturer) walk(next TempPoint) {
	from := d.last
	d.last = next
	steps := 1.0
	if rise := math.Abs(next.TempC - from.TempC); rise > stepC {
		steps = math.Ceil(rise / stepC)
	}
	dt, dT := (next.TimeS-from.TimeS)/steps, (next.TempC-from.TempC)/steps
	for i := range d.labile {
		l := &d.labile[i]
		for s := 1.0; s <= steps; s++ {
			l.step(dt, from.TempC+s*dT)
		}
	}
}

func (l *labilePart) step(dt, tempC float64) {
	l.dose.add(dt, l.kinetics.lnRate(tempC))
	if l.shiftC > 0 {
		l.doseLow.add(dt, l.kinetics.lnRate(tempC-l.shiftC))
		return
	}
	l.doseLow = l.dose
}

// Fraction is the denatured share, 0 to 1, of the mass of heat-labile whey
// protein. It is unknown where the constants do not hold, where there is no such
// protein, and before two readings.
func (d *Denaturer) Fraction() beverage.Interval {
	sum, total := beverage.Point(0, beverage.Predicted), 0.0
	for _, p := range d.Parts() {
		sum = sum.Plus(p.Fraction.Scale(p.Part.share))
		total += p.Part.share
	}
	if total == 0 {
		return beverage.Interval{}
	}
	return sum.Scale(1 / total)
}

// Parts is the denatured share of each heat-labile protein, the largest first.
func (d *Denaturer) Parts() []DenaturedPart {
	all := make([]DenaturedPart, 0, len(d.labile))
	for i := range d.labile {
		l := &d.labile[i]
		p := DenaturedPart{Part: *l.part}
		if d.validity.holds && d.started {
			p.Fraction = l.fraction()
		}
		all = append(all, p)
	}
	return all
}

func (l *labilePart) fraction() beverage.Interval {
	return beverage.Interval{
		Low:   1 - l.kinetics.left(l.doseLow.sum*l.lowest),
		Mid:   1 - l.kinetics.left(l.dose.sum*l.middle),
		High:  1 - l.kinetics.left(l.dose.sum*l.highest),
		Basis: beverage.Predicted,
	}
}

// Validity says whether the answer holds, now that the history is known.
func (d *Denaturer) Validity() Validity {
	v := d.validity
	v.Notes = slices.Clone(v.Notes)
	for i := range d.labile {
		measured := d.labile[i].kinetics.measuredC
		switch {
		case !d.started:
		case d.hottestC < measured.Low:
			v.extend(fmt.Sprintf("all of the heat lies below %.0f °C, where the constants are extended from above", measured.Low))
		case d.hottestC > measured.High:
			v.extend(fmt.Sprintf("some of the heat lies above %.0f °C, where the constants are extended from below", measured.High))
		}
	}
	return v
}

// Isothermal is the denatured share after timeS seconds at tempC °C, with no time
// to warm up or cool down.
func Isothermal(c *Composition, cond Conditions, tempC, timeS float64) (beverage.Interval, Validity) {
	d, _ := NewDenaturer(c, cond)
	d.Add(0, tempC)
	d.Add(timeS, tempC)
	return d.Fraction(), d.Validity()
}
