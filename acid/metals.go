package acid

import "math"

// sweepMetals adds the free metals and their hydroxides to the sums.
func (v *Solver) sweepMetals() {
	s := &v.at
	for m, free := range s.free {
		// MOH+ has its OH- from water: one charge less than the metal's total.
		oh := s.kOH[m] * s.mOH * free
		const eOH = 1 - metalZ2 // z² - 4c
		s.z2 += metalZ2*free + oh
		s.z2L -= oh
		s.z2t += eOH * oh
		s.z2u[m] += metalZ2*free + oh
		s.q -= oh
		s.qL += oh
		s.qt -= eOH * oh
		s.qu[m] -= oh
		s.bound[m] += oh
		s.boundT[m] += eOH * oh
		s.jac[m][m] += oh + free
	}
}

// Bounds of the search for the free metals.
const (
	metalRounds   = 60
	metalClose    = 1e-12 // of the total
	smallStep     = 0.3   // change of ln m within which the curvature cannot double
	closeInMetals = 1e-6  // change of ln m whose square, what Newton's step misses, is nothing
	longStep      = 50    // keeps exp in range; what is left of a step comes in the next round
)

// balanceMetals finds the free metals at the state's pH and activity
// coefficients and leaves the sums standing there. The balances are the gradient
// of a strictly convex function of the logarithms u, so Newton's step points
// downhill; it is halved while it passes the lowest point along its line, unless
// it is too short for the curvature to change.
func (v *Solver) balanceMetals() bool {
	v.sweep()
	for range metalRounds {
		miss, worst := v.metalMiss()
		if worst <= metalClose {
			return true
		}
		step := v.metalStep(miss)
		v.walk(step)
		if math.Abs(step[calcium])+math.Abs(step[magnesium]) < closeInMetals {
			return true
		}
	}
	return false
}

// startMetals begins at the totals when no earlier state left a better start.
func (v *Solver) startMetals() {
	for m := range v.metal {
		if !(v.at.free[m] > 0) {
			v.at.free[m] = v.metal[m]
		}
	}
}

// metalMiss returns what the metals' balances miss, and the worst as a share of
// its total.
func (v *Solver) metalMiss() (miss [metals]float64, worst float64) {
	for m, total := range v.metal {
		if total > 0 {
			miss[m] = v.at.free[m] + v.at.bound[m] - total
			worst = max(worst, math.Abs(miss[m])/total)
		}
	}
	return miss, worst
}

// metalStep returns Newton's step of u against miss, from the symmetric 2×2
// system; a metal that is absent stays.
func (v *Solver) metalStep(miss [metals]float64) [metals]float64 {
	j := &v.at.jac
	if v.metal[calcium] == 0 {
		return [metals]float64{magnesium: -miss[magnesium] / j[magnesium][magnesium]}
	}
	if v.metal[magnesium] == 0 {
		return [metals]float64{calcium: -miss[calcium] / j[calcium][calcium]}
	}
	det := j[0][0]*j[1][1] - j[0][1]*j[1][0]
	return [metals]float64{
		(j[0][1]*miss[1] - j[1][1]*miss[0]) / det,
		(j[1][0]*miss[0] - j[0][0]*miss[1]) / det,
	}
}

// walk moves u by step, halved as the rule of balanceMetals wants.
func (v *Solver) walk(step [metals]float64) {
	from := v.at.free
	length := math.Max(math.Abs(step[calcium]), math.Abs(step[magnesium]))
	for t := math.Min(1, longStep/length); t > 0; t /= 2 {
		for m := range from {
			v.at.free[m] = from[m] * math.Exp(t*step[m])
		}
		v.sweep()
		miss, _ := v.metalMiss()
		along := miss[calcium]*step[calcium] + miss[magnesium]*step[magnesium]
		if along <= 0 || t*length <= smallStep {
			return
		}
	}
}
