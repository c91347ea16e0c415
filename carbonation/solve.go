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
