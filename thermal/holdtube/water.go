package holdtube

import "math"

// Saturated water and steam. Source: IAPWS Revised Supplementary Release on
// Saturation Properties of Ordinary Water Substance, SR1-86 (1992), equations 1
// to 7 (coefficients seen in public copies; its check values are in the tests).
// Valid from 0.01 °C to the critical point.
const (
	criticalK     = 647.096
	criticalKPa   = 22064
	criticalKgM3  = 322
	tripleC       = 0.01
	alphaConstant = -1135.905627715
)

// power is one term of a sum: factor times a temperature raised to a power.
type power struct{ factor, exponent float64 }

var (
	pressureTerms = []power{{-7.85951783, 1}, {1.84408259, 1.5}, {-11.7866497, 3}, {22.6807411, 3.5}, {-15.9618719, 4}, {1.80122502, 7.5}}
	liquidTerms   = []power{{1.99274064, 1. / 3}, {1.09965342, 2. / 3}, {-0.510839303, 5. / 3}, {-1.75493479, 16. / 3}, {-45.5170352, 43. / 3}, {-6.74694450e5, 110. / 3}}
	steamTerms    = []power{{-2.03150240, 2. / 6}, {-2.68302940, 4. / 6}, {-5.38626492, 8. / 6}, {-17.2991605, 18. / 6}, {-44.7586581, 37. / 6}, {-63.9201063, 71. / 6}}
	alphaTerms    = []power{{-5.65134998e-8, -19}, {2690.66631, 1}, {127.287297, 4.5}, {-135.003439, 5}, {0.981825814, 54.5}}
)

func sum(terms []power, x float64) float64 {
	var s float64
	for _, t := range terms {
		s += t.factor * math.Pow(x, t.exponent)
	}
	return s
}

// tau is the distance to the critical point as a share; never outside the range.
func tau(tC float64) float64 { return 1 - (max(tC, tripleC)+kelvin)/criticalK }

// VapourKPa is the vapour pressure of pure water at tC, absolute. No drink has
// more of it than water, save through gas or alcohol.
func VapourKPa(tC float64) AbsoluteKPa {
	x := tau(tC)
	return AbsoluteKPa(criticalKPa * math.Exp(sum(pressureTerms, x)/(1-x)))
}

// waterKgM3 is the density of water at its vapour pressure.
func waterKgM3(tC float64) float64 { return criticalKgM3 * (1 + sum(liquidTerms, tau(tC))) }

func steamKgM3(tC float64) float64 { return criticalKgM3 * math.Exp(sum(steamTerms, tau(tC))) }

// slopeKPaPerK is how fast the vapour pressure rises.
func slopeKPaPerK(tC float64) float64 {
	x := tau(tC)
	var derivative float64
	for _, t := range pressureTerms {
		derivative += t.factor * t.exponent * math.Pow(x, t.exponent-1)
	}
	log := sum(pressureTerms, x) / (1 - x)
	return -float64(VapourKPa(tC)) / ((1 - x) * criticalK) * (log + derivative)
}

// waterKJKg and steamKJKg are the enthalpies of both, from 0 at the triple point.
func waterKJKg(tC float64) float64 { return alpha(tC) + enthalpyPart(tC)/waterKgM3(tC) }

func steamKJKg(tC float64) float64 { return alpha(tC) + enthalpyPart(tC)/steamKgM3(tC) }

func enthalpyPart(tC float64) float64 { return (1 - tau(tC)) * criticalK * slopeKPaPerK(tC) }

func alpha(tC float64) float64 { return alphaConstant + sum(alphaTerms, 1-tau(tC)) }
