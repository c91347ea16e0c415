package acid

import (
	"fmt"
	"math"
)

// Bounds of the search for the ionic strength.
const (
	ionicRounds = 200
	ionicClose  = 1e-11 // of the ionic strength
	leastIonic  = 1e-15 // mol/kg, far below that of pure water
)

// settle brings the state to a pH, ionic strength and free metals in balance, and
// returns the net charge in mol/kg, positive when strong acid would be needed for
// that pH. With balancing on, that acid or base, monovalent, counts in the ionic
// strength: then the net charge over pH is the titration curve.
func (v *Solver) settle(pH float64) (float64, error) {
	v.setPH(pH)
	if !(v.at.ionic > 0) {
		v.at.ionic = v.fixedI/2 + leastIonic
	}
	v.startMetals()
	done, err := v.settleNewton()
	if !done && err == nil {
		err = v.settleBracketed()
	}
	return v.at.netQ, err
}

// settleNewton moves the root of the ionic strength and the metals together by
// Newton's method. It is a short cut: what it accepts satisfies the equations,
// and what it does not bring to an end in a few passes is left to
// settleBracketed.
func (v *Solver) settleNewton() (done bool, err error) {
	const passes, longest, far = 15, 3.0, 2.0
	ionic := v.at.ionic
	for range passes {
		v.activity(ionic)
		v.sweep()
		if err := v.countIons(); err != nil {
			return false, err
		}
		if v.at.calcIonic > far*ionic {
			ionic = v.at.calcIonic // Newton's step from so far below goes anywhere
			continue
		}
		miss, worst := v.metalMiss()
		if worst <= metalClose && v.ionicSettled() {
			return true, v.chargeSettled()
		}
		root, u := v.manifoldStep(v.at.calcIonic-ionic, miss)
		for m := range u {
			v.at.free[m] *= math.Exp(max(-longest, min(longest, u[m])))
		}
		root += math.Sqrt(ionic)
		if !(root > 0) {
			return false, nil
		}
		ionic = root * root
	}
	return false, nil
}

// manifoldStep solves the system of settle, linear about the state, for the steps
// of the root of the ionic strength and of u that cancel the misses.
func (v *Solver) manifoldStep(missI float64, miss [metals]float64) (root float64, u [metals]float64) {
	s := &v.at
	tR, sign := v.slopeT(), v.sign()
	dI := (s.z2t+sign*s.qt)*tR/2 + (sign*s.polyI-2)*math.Sqrt(s.ionic)
	if !v.hasMetal {
		return -missI / dI, u
	}
	// Without the root the metals move by a, and by b for each unit of the root.
	a := v.metalStep(miss)
	b := v.metalStep([metals]float64{s.boundT[0] * tR, s.boundT[1] * tR})
	for m := range a {
		du := (s.z2u[m] + sign*s.qu[m]) / 2
		missI += du * a[m]
		dI += du * b[m]
	}
	root = -missI / dI
	for m := range u {
		u[m] = a[m] + b[m]*root
	}
	return root, u
}

// slopeT is the derivative of t by the root of the ionic strength.
func (v *Solver) slopeT() float64 {
	d := 1 + ionSize*math.Sqrt(v.at.ionic)
	return v.slope * math.Ln10 / (d * d)
}

// sign is the derivative of the balancing ion's amount by the net charge.
func (v *Solver) sign() float64 {
	switch {
	case !v.balancing || v.at.netQ == 0:
		return 0
	case v.at.netQ > 0:
		return 1
	}
	return -1
}

// settleBracketed finds the ionic strength between bounds, with the metals
// balanced at each trial.
func (v *Solver) settleBracketed() error {
	low, high := 0.0, math.Inf(1)
	ionic := v.fixedI/2 + leastIonic
	for range ionicRounds {
		v.activity(ionic)
		if !v.balanceMetals() {
			return fmt.Errorf("acid: calcium and magnesium at pH %g did not settle", v.at.pH)
		}
		if err := v.countIons(); err != nil {
			return err
		}
		if v.ionicSettled() || high-low <= ionicClose*low {
			return v.chargeSettled()
		}
		if v.at.calcIonic > ionic {
			low = ionic
		} else {
			high = ionic
		}
		ionic = within(v.at.calcIonic, low, high)
	}
	return fmt.Errorf("acid: the ionic strength at pH %g did not settle", v.at.pH)
}

// within returns x when it lies well between low and high, else a point that
// does, so that the bracket shrinks by a fixed share at least.
func within(x, low, high float64) float64 {
	if math.IsInf(high, 1) {
		return max(x, 2*low)
	}
	const share = 0.1
	edge := share * (high - low)
	return max(low+edge, min(high-edge, x))
}

// ionicSettled tells whether the species make the ionic strength they stand for.
func (v *Solver) ionicSettled() bool {
	return math.Abs(v.at.calcIonic-v.at.ionic) <= ionicClose*v.at.ionic+leastIonic
}

// countIons sets the ionic strength that the species of the state make. The
// polyelectrolytes, the dearest to ask, are asked only where the ion that balances
// them counts.
func (v *Solver) countIons() error {
	s := &v.at
	s.calcIonic = (s.z2 + v.fixedI) / 2
	if !v.balancing {
		return nil
	}
	err := v.charge()
	s.calcIonic += math.Abs(s.netQ) / 2
	return err
}

// chargeSettled sets the net charge where it was not needed on the way.
func (v *Solver) chargeSettled() error {
	if v.balancing {
		return nil
	}
	return v.charge()
}

// charge sets the net charge of the state.
func (v *Solver) charge() error {
	s := &v.at
	poly, err := v.polyCharge(s.pH, s.ionic)
	if err != nil {
		return err
	}
	s.polyQ = poly
	s.netQ = s.q + v.fixedQ + poly
	return nil
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
