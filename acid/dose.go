package acid

import (
	"fmt"
	"math"
)

// Dose returns how many mol per kg of water of a dosing acid, base or blend bring
// s to targetPH at tC in °C; add is the composition of one mol of it. 0 when s is
// there already. It fails as Solve does, for a target outside pH 0 to 14, and
// when no dose within 100 mol/kg of components reaches the target.
func Dose(s Solution, add []Total, tC, targetPH float64) (molPerKg float64, err error) {
	if err := checkPH(targetPH); err != nil {
		return math.NaN(), err
	}
	d, err := newDosing(s, add, tC, targetPH)
	if err != nil {
		return math.NaN(), err
	}
	return d.find()
}

// dosing looks for the dose whose solution has no net charge at the target pH:
// the charge there changes steadily with the dose.
type dosing struct {
	solution Solution
	recipe   int // totals of the solution itself; the rest is the dose
	add      []Total
	tC, pH   float64
	most     float64
	solver   Solver
}

func newDosing(s Solution, add []Total, tC, pH float64) (*dosing, error) {
	d := &dosing{solution: s, recipe: len(s.Totals), add: add, tC: tC, pH: pH}
	perMol, have := 0.0, 0.0
	for _, t := range add {
		if !(t.Molality >= 0) || math.IsInf(t.Molality, 0) {
			return nil, fmt.Errorf("acid: the dose holds %s at %g mol per mol", t.Component, t.Molality)
		}
		perMol += t.Molality
	}
	for _, t := range s.Totals {
		have += t.Molality
	}
	if perMol == 0 {
		return nil, fmt.Errorf("acid: the dose holds nothing")
	}
	const justBelow = 1 - 1e-9 // keeps rounding from passing the limit
	d.most = justBelow * (maxTotal - have) / perMol
	d.solution.Totals = append(append(make([]Total, 0, len(s.Totals)+len(add)), s.Totals...), add...)
	return d, nil
}

// charge returns the net charge at the target pH with a dose in.
func (d *dosing) charge(dose float64) (float64, error) {
	for i, t := range d.add {
		d.solution.Totals[d.recipe+i].Molality = dose * t.Molality
	}
	if err := d.solver.prepare(&d.solution, d.tC); err != nil {
		return 0, err
	}
	return d.solver.settle(d.pH)
}

func (d *dosing) find() (float64, error) {
	start, err := d.charge(0)
	if err != nil || start == 0 {
		return 0, err
	}
	low, high, err := d.bracket(point{0, start})
	if err != nil {
		return math.NaN(), err
	}
	return root(d.charge, low, high)
}

// bracket doubles the dose until the charge has changed sign.
func (d *dosing) bracket(low point) (point, point, error) {
	const firstDose = 1e-6 // mol/kg: below any dose that can be weighed
	sign := low.y
	for dose := math.Min(firstDose, d.most); ; dose = math.Min(2*dose, d.most) {
		q, err := d.charge(dose)
		if err != nil {
			return point{}, point{}, err
		}
		high := point{dose, q}
		if q*sign <= 0 {
			return low, high, nil
		}
		if dose >= d.most {
			return point{}, point{}, fmt.Errorf("acid: no dose brings this solution to pH %g at %g °C", d.pH, d.tC)
		}
		low = high
	}
}
