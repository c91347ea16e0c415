package thermal

import "math"

// Bound is the lethal rate that can be credited where a z-value is known only
// as a spread, and only between two temperatures: at each temperature the
// smaller of what Below and Above give, nothing below MinC, and above MaxC no
// more than at MaxC. Its zero value credits nothing.
type Bound struct {
	Below Reference // decides under Tref: the smaller z
	Above Reference // decides over Tref: the larger z
	MinC  float64   // °C, coolest that is credited
	MaxC  float64   // °C, hottest that is credited as such
}

// Bound is the basis taken at its word at every temperature.
func (r Reference) Bound() Bound {
	return Bound{Below: r, Above: r, MinC: math.Inf(-1), MaxC: math.Inf(1)}
}

// Plain gives the reference of a bound that is one basis at every temperature,
// for which nothing has to be split.
func (b Bound) Plain() (Reference, bool) {
	return b.Below, b.usable() && b.Below == b.Above && math.IsInf(b.MinC, -1) && math.IsInf(b.MaxC, 1)
}

// LethalRate returns the minutes at Tref that one minute at tC can be credited
// with. tC is the coldest point in °C, sensor tolerance already taken off. NaN
// gives NaN.
func (b Bound) LethalRate(tC float64) float64 {
	if !b.usable() || tC < b.MinC {
		return 0
	}
	tC = min(tC, b.MaxC)
	return b.at(tC).LethalRate(tC)
}

// Piece returns the credit, in the unit of dt, of a straight line from t0C to
// t1C lasting dt. The line is split where the rule changes, and each part is
// integrated exactly. A negative dt gives a negative value, a temperature that
// is not finite NaN.
func (b Bound) Piece(dt, t0C, t1C float64) float64 {
	switch {
	case math.IsNaN(t0C-t0C) || math.IsNaN(t1C-t1C):
		return math.NaN()
	case !b.usable():
		return 0
	case t0C == t1C:
		return dt * b.LethalRate(t0C)
	}
	low, high := min(t0C, t1C), max(t0C, t1C)
	var sum float64
	from := low
	for _, cut := range [4]float64{b.MinC, b.crossC(), b.MaxC, high} {
		if to := min(cut, high); to > from {
			sum += b.part(dt*((to-from)/(high-low)), from, to)
			from = to
		}
	}
	return sum
}

// part is Piece for a line along which the rule does not change.
func (b Bound) part(dt, t0C, t1C float64) float64 {
	switch mid := t0C + (t1C-t0C)/2; {
	case mid < b.MinC:
		return 0
	case mid > b.MaxC:
		return dt * b.LethalRate(b.MaxC)
	default:
		return b.at(mid).Piece(dt, t0C, t1C)
	}
}

// at is the reference that decides at tC.
func (b Bound) at(tC float64) Reference {
	if b.Below.decades(tC) <= b.Above.decades(tC) {
		return b.Below
	}
	return b.Above
}

func (r Reference) decades(tC float64) float64 { return (tC - r.TrefC) / r.ZC }

// usable is false for the zero value and for a z that is none.
func (b Bound) usable() bool {
	return b.Below.ZC > 0 && b.Above.ZC > 0 && b.MinC <= b.MaxC
}

// crossC is where both references give the same rate, between MinC and MaxC:
// Tref where they share it.
func (b Bound) crossC() float64 {
	at := b.Below.TrefC
	if b.Below != b.Above && b.Below.TrefC != b.Above.TrefC {
		at = (b.Below.TrefC*b.Above.ZC - b.Above.TrefC*b.Below.ZC) / (b.Above.ZC - b.Below.ZC)
	}
	if !(at > b.MinC) { // NaN and -Inf too: parallel lines never meet
		return b.MinC
	}
	return min(at, b.MaxC)
}
