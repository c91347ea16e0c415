package assess

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/quantity"
	"posset/beverage/spec"
	"posset/thermal"
	"posset/thermal/logfile"
)

// ParseBasis reads what lethality is stated on: a named index (F0, PU, C0, B*,
// C*), an organism, or a temperature and a z such as "93.3 C, z 8.9 C".
func ParseBasis(text string) (logfile.Basis, error) {
	text = strings.Join(strings.Fields(text), " ")
	if i, ok := thermal.FindIndex(text); ok {
		return logfile.Basis{Name: i.Name, Ref: i.Reference}, nil
	}
	if o, ok := thermal.FindOrganism(text); ok {
		bound := o.Bound()
		return logfile.Basis{Name: o.Name, Ref: o.Reference(), MinC: o.MinC, Bound: &bound}, nil
	}
	t, err := spec.ParseTarget("F 1 min at " + text)
	if err != nil || t.Kind != beverage.TargetMinutes {
		return logfile.Basis{}, fmt.Errorf(`%s is no basis; write F0, PU, C0, B*, C*, an organism of posset help organisms, or "93.3 C, z 8.9 C"`, quantity.Quote(text))
	}
	b := facts.TargetOf(t).Basis
	b.Name = text
	return b, nil
}
