package report

import (
	"strconv"

	"posset/beverage"
)

// faultSheet has every fault of every probe, a row each.
func faultSheet(logs []beverage.LogResult) Further {
	t := Table{Columns: columns("file", "retort", "batch", "probe", "role", "fault", "row", "time", "what was read")}
	for _, l := range logs {
		for _, p := range l.Probes {
			for _, f := range p.Faults {
				t.Rows = append(t.Rows, []string{l.File, l.Retort, l.Batch, p.Name, p.Role, f.Kind, strconv.Itoa(f.Row), f.Time, f.Detail})
			}
		}
	}
	return Further{"faults", t}
}
