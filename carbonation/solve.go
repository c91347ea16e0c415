package carbonation

import "math"

const (
	solveSteps     = 60
	solveTolerance = 1e-9 // of the unknown, relative
)

// root returns x between low and high where f crosses zero, by false position
// with the Illinois step, which keeps a bracket. ok is false when f has the same
// sign at both ends or is not a number.
func root(low, high float64, f func(float64) float64) (x float64, ok bool) {
	fLow, fHigh := f(low), f(high)
	if !(fLow*fHigh <= 0) {
		return 0, false
	}
	for range solveSteps {
		if fLow == fHigh {
			return low, true
		}
		x = high - fHigh*(high-low)/(fHigh-fLow)
		fx := f(x)
		if math.IsNaN(fx) {
			return 0, false
		}
		if fx*fHigh <= 0 {
			low, fLow = high, fHigh
		} else {
			fLow /= 2
		}
		if fx == 0 || math.Abs(x-high) <= solveTolerance*math.Abs(x) {
			return x, true
		}
		high, fHigh = x, fx
	}
	return x, true
}

const (
	golden     = 0.6180339887498949
	climbSteps = 16 // leaves 1/2000 of the interval
)

// climb calls f on points that close in on the one peak of f between low and high,
// by golden section. It stops at the first error of f.
func climb(low, high float64, f func(float64) (float64, error)) error {
	left, right := high-golden*(high-low), low+golden*(high-low)
	fLeft, err := f(left)
	if err != nil {
		return err
	}
	fRight, err := f(right)
	for range climbSteps {
		if err != nil {
			return err
		}
		if fLeft > fRight {
			high, right, fRight = right, left, fLeft
			left = high - golden*(high-low)
			fLeft, err = f(left)
		} else {
			low, left, fLeft = left, right, fRight
			right = low + golden*(high-low)
			fRight, err = f(right)
		}
	}
	return err
}
