package facts

import (
	"fmt"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

// Target is a target in the terms a record is integrated on.
type Target struct {
	Stated   beverage.Target
	Basis    logfile.Basis
	Minutes  float64 // needed at Basis; 0 for an unbroken stay
	Organism *thermal.Organism
	Problem  string // why no record can be held against it
}

// TargetOf works out the basis of a target. Decimal reductions take the
// organism's most resistant published figures, and credit only the temperatures
// at which they were measured.
func TargetOf(t beverage.Target) Target {
	g := Target{Stated: t}
	switch t.Kind {
	case beverage.TargetMinutes:
		ref, err := thermal.NewReference(t.TrefC, t.ZC)
		if err != nil {
			g.Problem = err.Error()
		}
		g.Basis, g.Minutes = logfile.Basis{Name: t.Text, Ref: ref}, t.Minutes
	case beverage.TargetStay:
		g.Basis = logfile.Basis{Name: "F0", Ref: thermal.F0}
	case beverage.TargetReductions:
		o, ok := thermal.FindOrganism(t.Organism)
		if !ok {
			g.Problem = fmt.Sprintf("no D and z are held for %q", t.Organism)
			return g
		}
		g.Organism = &o
		bound := o.Bound()
		g.Basis = logfile.Basis{Name: o.Name, Ref: o.Reference(), MinC: o.MinC, Bound: &bound}
		g.Minutes = o.MinutesFor(t.Logs)
	}
	return g
}

// IsStay tells whether the target is one unbroken stay.
func (t Target) IsStay() bool { return t.Stated.Kind == beverage.TargetStay }
