package acid

import (
	"fmt"
	"math"
)

// What textbook series are worked out with.
const (
	idealC  = 25
	idealKw = 1e-14
)

// IdealPH returns the pH of s at 25 °C with every activity coefficient 1 and a pKw
// of 14, as textbook series are worked out; pk stands in for the constants of one
// component of s, first proton first. It shows the charge balance alone, for
// whoever checks it: no drink is ideal. It fails as Solve does, and for a component
// that is not in s or has another number of constants.
func IdealPH(s Solution, component string, pk ...float64) (float64, error) {
	var v Solver
	if err := v.prepare(&s, idealC); err != nil {
		return 0, err
	}
	v.slope, v.kw = 0, idealKw
	if err := v.replaceConstants(component, pk); err != nil {
		return 0, err
	}
	if err := v.solve(); err != nil {
		return 0, err
	}
	return v.at.pH, nil
}

func (v *Solver) replaceConstants(component string, pk []float64) error {
	for _, f := range v.families {
		if f.component.Name != component || f.last-f.first != len(pk)+1 {
			continue
		}
		sum := 0.0
		for i, p := range pk {
			sum -= p
			v.species[f.first+1+i].beta = math.Exp(math.Ln10 * sum)
		}
		return nil
	}
	return fmt.Errorf("acid: %d constants of %q do not fit the solution", len(pk), component)
}
