package acid

import (
	"fmt"
	"math"
)

// Bounds of the search for the pH.
const (
	lowPH, highPH = -4.0, 19.0 // no solution within maxTotal lies outside
	startPH       = 4.0
	phRounds      = 200
	phClose       = 1e-9 // what a last step below this misses is far smaller
)

// solve finds the pH at which nothing needs to be added, and leaves the state
// there.
func (v *Solver) solve() error {
	v.balancing = false
	low, high, pH := lowPH, highPH, startPH
	for range phRounds {
		q, err := v.settle(pH)
		if err != nil {
			return err
		}
		if q > 0 {
			low = pH
		} else {
			high = pH
		}
		slope, err := v.slopePH()
		if err != nil {
			return err
		}
		next := inside(pH-q/slope, low, high)
		if math.Abs(next-pH) < phClose || high-low < phClose {
			v.at.pH = next
			return v.checkRange()
		}
		pH = next
	}
	return fmt.Errorf("acid: the pH did not settle between %g and %g", low, high)
}

// checkRange refuses a pH at the bounds of the search: only a polyelectrolyte with
// more charge than any solution can balance gets there.
func (v *Solver) checkRange() error {
	const edge = 1e-3
	if v.at.pH < lowPH+edge || v.at.pH > highPH-edge {
		return fmt.Errorf("acid: no pH balances a polyelectrolyte charge of %.3g mol/kg", v.at.polyQ)
	}
	return nil
}

// inside returns x when it lies between low and high, else their middle.
func inside(x, low, high float64) float64 {
	if x > low && x < high {
		return x
	}
	return low + (high-low)/2
}

// slopePH returns the derivative of the net charge by pH where the state stands
// settled and its charge is counted, with ionic strength and metals following.
func (v *Solver) slopePH() (float64, error) {
	s := &v.at
	poly, err := v.polySlopes()
	if err != nil {
		return 0, err
	}
	qL := s.qL - poly/math.Ln10
	root, u := v.manifoldStep((s.z2L+v.sign()*qL)/2, s.qu)
	qL += (s.qt*v.slopeT()+2*s.polyI*math.Sqrt(s.ionic))*root + s.qu[0]*u[0] + s.qu[1]*u[1]
	return -math.Ln10 * qL, nil
}

// polySlopes returns the derivative of the polyelectrolytes' charge by pH, and
// sets the one by ionic strength.
func (v *Solver) polySlopes() (byPH float64, err error) {
	if len(v.poly) == 0 {
		return 0, nil
	}
	const dPH, dI = 1e-5, 1e-5
	s := &v.at
	salted, err := v.polyCharge(s.pH, s.ionic*(1+dI))
	if err != nil {
		return 0, err
	}
	s.polyI = (salted - s.polyQ) / (s.ionic * dI)
	up, err := v.polyCharge(s.pH+dPH, s.ionic)
	return (up - s.polyQ) / dPH, err
}
