// Package checkvalue holds published values and recomputes them with the packages
// that drinks are judged with, so that whoever runs posset can see on their own
// machine that its models give what is in print.
//
// A check is data: what is given, the value a source prints, how far ours may lie
// from it and why. The registry names what recomputes each. Values that physics is
// tested against stay with their packages (acid/checkdata, carbonation/checkdata,
// the published masses of the ingredients) and are read there; data/ holds the
// rest, and says in [[table]] how a table of values becomes checks.
package checkvalue

import (
	"embed"
	"slices"
	"sync"

	"posset/beverage"
)

// Check is one published value and what it takes to recompute it.
type Check struct {
	ID      string
	Model   string         // what recomputes it: a name of the registry
	Given   map[string]any // float64, []float64 or string, by the parameters of the model
	Want    float64        // as the source prints it, in the unit that the model states
	Allowed float64        // how far ours may lie from it, either way
	Why     string         // why so far
	Source  string
	Basis   beverage.Basis
	// Misprint is what the source prints where that is wrong; Want is then what
	// follows from what is given, and lies well away from it. Nil: none.
	Misprint *float64
}

//go:embed data
var ownData embed.FS

var all = sync.OnceValues(func() ([]Check, error) { return load(ownData) })

// All returns every check, in the order of the data. It fails, naming each fault,
// when a check has no source or basis, no reason for what is allowed, an unknown
// model, a missing or unknown parameter, an allowance that is not above 0, or the
// id of another. The slice is the caller's; the maps in it are shared.
func All() ([]Check, error) {
	checks, err := all()
	return slices.Clone(checks), err
}
