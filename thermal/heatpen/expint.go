package heatpen

import "math"

const (
	eulerGamma  = 0.57721566490153286060651209008240243104215933593992
	seriesUpTo  = 40.0 // x from which the divergent series of Ei is exact to a double
	mostTerms   = 500
	smallestLog = 1e-300
)

// e1 is the exponential integral from x to infinity of e^-t/t, for x above 0.
// It is infinite at 0 and NaN below.
//
// Reference: Abramowitz and Stegun, Handbook of Mathematical Functions (1964),
// 5.1.11 and 5.1.22.
func e1(x float64) float64 {
	switch {
	case !(x >= 0):
		return math.NaN()
	case x == 0:
		return math.Inf(1)
	case x <= 1:
		return -eulerGamma - math.Log(x) - powerSeries(-x)
	}
	// Continued fraction, by Lentz's method.
	b := x + 1
	c, d := 1/smallestLog, 1/b
	h := d
	for i := 1; i < mostTerms; i++ {
		n := -float64(i) * float64(i)
		b += 2
		d = 1 / (n*d + b)
		c = b + n/c
		h *= c * d
		if math.Abs(c*d-1) < 1e-16 {
			break
		}
	}
	return h * math.Exp(-x)
}

// ei is the exponential integral of x above 0, as the principal value.
//
// Reference: Abramowitz and Stegun (1964), 5.1.10 and 5.1.51.
func ei(x float64) float64 {
	switch {
	case !(x > 0):
		return math.NaN()
	case x < seriesUpTo:
		return eulerGamma + math.Log(x) + powerSeries(x)
	}
	sum, term := 1.0, 1.0
	for k := 1; k < int(x); k++ {
		term *= float64(k) / x
		sum += term
		if term < 1e-17 {
			break
		}
	}
	return sum * math.Exp(x) / x
}

// powerSeries is the sum of x^k/(k k!) from k = 1.
func powerSeries(x float64) float64 {
	var sum float64
	term := 1.0
	for k := 1; k < mostTerms; k++ {
		term *= x / float64(k)
		sum += term / float64(k)
		if math.Abs(term) < 1e-18*math.Abs(sum) {
			break
		}
	}
	return sum
}
