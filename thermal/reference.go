// Package thermal holds the arithmetic of thermal death time: lethal rates,
// their exact integral along a temperature record, and the organisms and
// schedules they are stated for. It knows numbers, not drinks, and does no I/O.
package thermal

import (
	"fmt"
	"math"
)

// Reference is the basis lethality is stated on: minutes at TrefC, for an
// organism whose D-value falls tenfold per ZC.
type Reference struct {
	TrefC float64 // °C
	ZC    float64 // difference, C°: a z of 18 F° is 10
}

// F0 is the one basis that may be called F0: 121.1 °C and z 10 C°.
var F0 = Reference{TrefC: 121.1, ZC: 10}

// PU is the pasteurization unit of the drinks trade: 60 °C and z 7 C°.
var PU = Reference{TrefC: 60, ZC: 7}

// NewReference checks a basis once. It fails when tref or z is not a finite
// number, tref lies outside 0 to 200 °C, or z outside 1 to 100 C°.
func NewReference(trefC, zC float64) (Reference, error) {
	if !(trefC >= 0 && trefC <= 200) {
		return Reference{}, fmt.Errorf("thermal: reference temperature %g °C is outside 0 to 200 °C", trefC)
	}
	if !(zC >= 1 && zC <= 100) {
		return Reference{}, fmt.Errorf("thermal: z-value %g C° is outside 1 to 100 C°", zC)
	}
	return Reference{TrefC: trefC, ZC: zC}, nil
}

// LethalRate returns the minutes at TrefC that one minute at tC is worth,
//
//	L = 10^((tC-TrefC)/ZC)
//
// tC is the coldest point in °C, sensor tolerance already taken off. NaN gives
// NaN. Below the range z was measured in it over-credits: see Organism.MinC.
//
// Reference: Bigelow et al., Heat Penetration in Processing Canned Foods,
// National Canners Association Bulletin 16-L (1920).
func (r Reference) LethalRate(tC float64) float64 {
	return math.Exp((tC - r.TrefC) * (math.Ln10 / r.ZC))
}

// Piece returns the lethality, in the unit of dt, of a straight line from t0C
// to t1C lasting dt: the exact integral
//
//	dt (L1 - L0) / (ln(10)/z (t1 - t0))
//
// with its limit for t1 = t0. A negative dt gives a negative value; callers
// that must never credit twice check the clock first.
func (r Reference) Piece(dt, t0C, t1C float64) float64 {
	return dt * MeanRate(r.LethalRate(t0C), r.LethalRate(t1C), (t1C-t0C)*(math.Ln10/r.ZC))
}

// MeanRate is the mean of the lethal rate over a straight line in temperature
// whose ends have the rates l0 and l1, and whose exponent moves by u =
// ln(l1/l0). It is the logarithmic mean, by its series where u is small.
func MeanRate(l0, l1, u float64) float64 {
	if math.Abs(u) < 1e-3 {
		// (e^u-1)/u = 1 + u/2 + u²/6 + u³/24, from the lower end.
		return l0 * (1 + u/2*(1+u/3*(1+u/4)))
	}
	return (l1 - l0) / u
}

// Point is one reading: seconds on a clock that only moves forward, and °C.
type Point struct {
	TimeS float64
	TempC float64
}

// Lethality integrates the lethal rate along points, exactly for temperature
// that is linear between them, in minutes at TrefC. Fewer than two points give
// 0. It takes the points at their word: time must not run back.
func (r Reference) Lethality(points []Point) float64 {
	var sum float64
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		sum += r.Piece(b.TimeS-a.TimeS, a.TempC, b.TempC)
	}
	return sum / 60
}
