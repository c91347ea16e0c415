package beverage

import "math"

// Given is a value that a spec stated, with the place where it stands. The
// zero value is unknown: nobody gave it, and it must never be read as zero.
type Given[T any] struct {
	V     T
	Known bool
	Place Place
}

// Say returns a known value; places are added by whoever reads a file.
func Say[T any](v T) Given[T] { return Given[T]{V: v, Known: true} }

// Or returns the value, or what the contract with the user names as default.
func (g Given[T]) Or(def T) T {
	if g.Known {
		return g.V
	}
	return def
}

// ValueBasis is how a figure came about.
type ValueBasis string

// Predicted figures always carry the model's own error in their interval.
const (
	Unknown   ValueBasis = ""
	Measured  ValueBasis = "measured"
	Predicted ValueBasis = "predicted"
	Stated    ValueBasis = "stated" // given by the user as a fact of the recipe
	Library   ValueBasis = "library"
)

// Interval is a figure with the range it may really have. The zero value is
// unknown, and Low, Mid and High of an unknown interval mean nothing.
type Interval struct {
	Low, Mid, High float64
	Basis          ValueBasis
}

// Point is an interval without width.
func Point(v float64, b ValueBasis) Interval { return Interval{Low: v, Mid: v, High: v, Basis: b} }

// Around is v with d on either side.
func Around(v, d float64, b ValueBasis) Interval {
	return Interval{Low: v - d, Mid: v, High: v + d, Basis: b}
}

// Span is a range with its middle.
func Span(low, high float64, b ValueBasis) Interval {
	return Interval{Low: low, Mid: (low + high) / 2, High: high, Basis: b}
}

// Known tells whether anybody gave or worked out the figure.
func (i Interval) Known() bool { return i.Basis != Unknown && !math.IsNaN(i.Mid) }

// SurelyBelow is true when the whole interval lies at or below x.
func (i Interval) SurelyBelow(x float64) bool { return i.Known() && i.High <= x }

// SurelyAbove is true when the whole interval lies above x.
func (i Interval) SurelyAbove(x float64) bool { return i.Known() && i.Low > x }

// MayExceed is true unless the whole interval lies at or below x; an unknown
// interval may exceed anything.
func (i Interval) MayExceed(x float64) bool { return !i.SurelyBelow(x) }

// Outward is both ends rounded to so many decimals away from the middle: what is
// printed promises no more than is known.
func (i Interval) Outward(decimals int) (low, high float64) {
	const noise = 1e-6 // of the last decimal: arithmetic moves no digit
	p := math.Pow10(decimals)
	return math.Floor(i.Low*p+noise) / p, math.Ceil(i.High*p-noise) / p
}

// Scale multiplies by a factor of zero or more.
func (i Interval) Scale(f float64) Interval {
	return Interval{Low: i.Low * f, Mid: i.Mid * f, High: i.High * f, Basis: i.Basis}
}

// Plus adds two intervals end to end. The sum with an unknown one is unknown.
func (i Interval) Plus(j Interval) Interval {
	if !i.Known() || !j.Known() {
		return Interval{}
	}
	return Interval{Low: i.Low + j.Low, Mid: i.Mid + j.Mid, High: i.High + j.High, Basis: i.Basis}
}

// MidOrNil is the middle for output: nil where unknown.
func (i Interval) MidOrNil() *float64 { return i.orNil(i.Mid) }

// LowOrNil is the low end for output: nil where unknown.
func (i Interval) LowOrNil() *float64 { return i.orNil(i.Low) }

// HighOrNil is the high end for output: nil where unknown.
func (i Interval) HighOrNil() *float64 { return i.orNil(i.High) }

func (i Interval) orNil(v float64) *float64 {
	if !i.Known() {
		return nil
	}
	return &v
}
