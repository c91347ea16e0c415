package acid

import (
	"fmt"
	"math"
)

// EndPointPH is the end point of titratable acidity by electrode.
//
// Reference: AOAC 942.15; ISO 750; IFU 3. A pH of 8.2 is a trade habit.
const EndPointPH = 8.1

// Titrate returns the strong base, mol per kg of water, that brings s to endPH at
// tC in °C; negative when s is above it already. The titrant's water is not
// counted. It fails as Solve does, and for an end point outside pH 0 to 14.
func Titrate(s Solution, tC, endPH float64) (molOfBasePerKg float64, err error) {
	err = withSolver(s, tC, func(v *Solver) error {
		molOfBasePerKg, err = v.baseTo(endPH)
		return err
	})
	return molOfBasePerKg, err
}

// baseTo returns the strong base that brings the solution to pH.
func (v *Solver) baseTo(pH float64) (float64, error) {
	if err := checkPH(pH); err != nil {
		return 0, err
	}
	v.balancing = true
	q, err := v.settle(pH)
	return -q, err
}

// NetCharge returns the charge that s would have at a pH and tC in °C, mol per kg of
// water: 0 at the pH that s comes to, and positive below it. Near that pH it is what
// Titrate returns with the sign turned, and cheaper: the ion that would balance it
// does not count in the ionic strength. It fails as Titrate does.
func NetCharge(s Solution, tC, pH float64) (molPerKg float64, err error) {
	if err := checkPH(pH); err != nil {
		return 0, err
	}
	err = withSolver(s, tC, func(v *Solver) error {
		v.balancing = false
		molPerKg, err = v.settle(pH)
		return err
	})
	return molPerKg, err
}

func checkPH(pH float64) error {
	if !(pH >= 0 && pH <= 14) {
		return fmt.Errorf("acid: pH %g is outside 0 to 14", pH)
	}
	return nil
}

// BufferCapacity returns the strong base that s takes up per unit of pH where it
// stands, in mmol per kg of water (times the kg of water in a litre of drink, it
// is mmol/L). It fails as Solve does.
func BufferCapacity(s Solution, tC float64) (mmolPerKgPH float64, err error) {
	err = withSolver(s, tC, func(v *Solver) error {
		if err := v.solve(); err != nil {
			return err
		}
		mmolPerKgPH, err = v.bufferHere()
		return err
	})
	return mmolPerKgPH, err
}

// bufferHere returns the base taken up per unit of pH where the state stands,
// mmol/(kg pH).
func (v *Solver) bufferHere() (float64, error) {
	const mmolPerMol = 1e3
	if err := v.charge(); err != nil {
		return 0, err
	}
	slope, err := v.slopePH()
	return -slope * mmolPerMol, err
}

// CurvePoint is one point of a titration curve.
type CurvePoint struct {
	PH             float64
	MolOfBasePerKg float64 // strong base added per kg of water; negative is acid
	MmolPerKgPH    float64 // buffer capacity there
}

// maxCurve bounds the points of a curve.
const maxCurve = 10000

// Curve returns n points of the titration curve of s at tC in °C, evenly spaced
// in pH, both ends included. It fails as Solve does, for pH outside 0 to 14 or
// not rising, and for n outside 2 to 10000.
func Curve(s Solution, tC, fromPH, toPH float64, n int) ([]CurvePoint, error) {
	if n < 2 || n > maxCurve {
		return nil, fmt.Errorf("acid: %d points make no curve; give 2 to %d", n, maxCurve)
	}
	if err := checkPH(fromPH); err != nil {
		return nil, err
	}
	if err := checkPH(toPH); err != nil {
		return nil, err
	}
	if !(fromPH < toPH) {
		return nil, fmt.Errorf("acid: a curve from pH %g to %g does not rise", fromPH, toPH)
	}
	points := make([]CurvePoint, n)
	err := withSolver(s, tC, func(v *Solver) error {
		return v.curve(points, fromPH, toPH)
	})
	if err != nil {
		return nil, err
	}
	return points, nil
}

func (v *Solver) curve(points []CurvePoint, fromPH, toPH float64) (err error) {
	for i := range points {
		p := &points[i]
		p.PH = fromPH + (toPH-fromPH)*float64(i)/float64(len(points)-1)
		if p.MolOfBasePerKg, err = v.baseTo(p.PH); err != nil {
			return err
		}
		if p.MmolPerKgPH, err = v.bufferHere(); err != nil {
			return err
		}
	}
	return nil
}

// BalanceCharge returns the molality of a strong ion that gives s the pH at tC:
// the acid or base that a powder known by its own pH carries, or the cation of a
// juice. It is negative when an ion of the other sign is wanted instead. ion is a
// strong ion that forms no complexes, such as sodium, potassium or chloride; for
// others use Dose. It fails as Solve does, and for a pH outside 0 to 14.
func BalanceCharge(s Solution, tC, pH float64, ion string) (molality float64, err error) {
	c, ok := Lookup(ion)
	if !ok || len(c.species) != 1 || c.metal != noMetal {
		return math.NaN(), fmt.Errorf("acid: %q is no strong ion that stays free; sodium, potassium and chloride are", ion)
	}
	base, err := Titrate(s, tC, pH)
	return base / float64(c.species[0].charge), err
}
