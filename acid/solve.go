package acid

import (
	"fmt"
	"math"
)

// Bounds of the searches.
const (
	lowPH, highPH = -4.0, 19.0 // no solution within maxTotal lies outside
	startPH       = 4.0
	phRounds      = 200
	phClose       = 1e-11
	ionicRounds   = 100
	ionicClose    = 1e-12 // of the ionic strength
	leastIonic    = 1e-15 // mol/kg, far below that of pure water
)

// settle brings the state to a pH: ionic strength and free metals in balance,
// the net charge made up by a monovalent strong ion. It returns the net charge
// in mol/kg, positive when strong acid would be needed for that pH.
func (v *Solver) settle(pH float64) (float64, error) {
	v.setPH(pH)
	low, high := 0.0, math.Inf(1)
	ionic := v.at.ionic
	if !(ionic > 0) {
		ionic = v.fixedI/2 + leastIonic
	}
	var lastI, lastMiss float64
	for round := range ionicRounds {
		q, err := v.evaluate(ionic)
		if err != nil {
			return 0, err
		}
		miss := v.at.calcIonic - ionic
		if math.Abs(miss) <= ionicClose*ionic+leastIonic {
			return q, nil
		}
		if miss > 0 {
			low = ionic
		} else {
			high = ionic
		}
		next := v.at.calcIonic
		if round > 0 && miss != lastMiss {
			next = ionic - miss*(ionic-lastI)/(miss-lastMiss)
		}
		lastI, lastMiss = ionic, miss
		ionic = within(next, low, high)
	}
	return 0, fmt.Errorf("acid: the ionic strength at pH %g did not settle", pH)
}

// within returns x when it lies between low and high, else a point that does.
func within(x, low, high float64) float64 {
	if x > low && x < high {
		return x
	}
	if math.IsInf(high, 1) {
		return 2*low + leastIonic
	}
	return low + (high-low)/2
}

// evaluate works the state out at an ionic strength and returns its net charge.
func (v *Solver) evaluate(ionic float64) (float64, error) {
	v.activity(ionic)
	if v.hasMetal {
		if !v.balanceMetals() {
			return 0, fmt.Errorf("acid: calcium and magnesium at pH %g did not settle", v.at.pH)
		}
	} else {
		v.sweep()
	}
	poly, err := v.polyCharge(v.at.pH, ionic)
	if err != nil {
		return 0, err
	}
	q := v.at.q + v.fixedQ + poly
	v.at.calcIonic = (v.at.z2 + v.fixedI + math.Abs(q)) / 2
	return q, nil
}

// polyCharge returns the charge of all polyelectrolytes in mol per kg of water.
func (v *Solver) polyCharge(pH, ionic float64) (float64, error) {
	const molPerMmol = 1e-3
	sum := 0.0
	for i, m := range v.poly {
		if m.GramsPerKgWater == 0 {
			continue
		}
		q := m.Poly.ChargePerGram(pH, ionic, v.tC)
		if math.IsNaN(q) || math.IsInf(q, 0) {
			return 0, fmt.Errorf("acid: polyelectrolyte %d has no finite charge at pH %g", i+1, pH)
		}
		sum += molPerMmol * q * m.GramsPerKgWater
	}
	return sum, nil
}

// slopePH returns the derivative of the net charge by pH where the state stands,
// at its ionic strength.
func (v *Solver) slopePH() (float64, error) {
	s := &v.at
	d := s.dqdL
	if v.hasMetal {
		step := v.metalStep(s.dqdU)
		d += s.dqdU[0]*step[0] + s.dqdU[1]*step[1]
	}
	slope := -math.Ln10 * d
	if len(v.poly) == 0 {
		return slope, nil
	}
	const delta = 1e-4
	up, err := v.polyCharge(s.pH+delta, s.ionic)
	if err != nil {
		return 0, err
	}
	down, err := v.polyCharge(s.pH-delta, s.ionic)
	return slope + (up-down)/(2*delta), err
}

// solve finds the pH at which nothing needs to be added, and leaves the state
// there.
func (v *Solver) solve() error {
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
		step := -q / slope
		if q == 0 || math.Abs(step) < phClose || high-low < phClose {
			return nil
		}
		pH = inside(pH+step, low, high)
	}
	return fmt.Errorf("acid: the pH did not settle between %g and %g", low, high)
}

// inside returns x when it lies between low and high, else their middle.
func inside(x, low, high float64) float64 {
	if x > low && x < high {
		return x
	}
	return low + (high-low)/2
}
