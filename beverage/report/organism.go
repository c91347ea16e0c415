package report

import (
	"strings"

	"posset/beverage"
)

// organismItems list what the process may leave and what could grow, with what
// would hold it.
func organismItems(list []beverage.OrganismLeft) Items {
	items := make(Items, len(list))
	for i, o := range list {
		held := ""
		if len(o.HeldBack) > 0 {
			held = "; held back by " + strings.Join(o.HeldBack, ", ")
		}
		items[i] = Item{ID: o.Name, Title: o.Remains, Text: "Grows " + o.Grows + held + ". Control: " + o.Control + ".", Foot: join(noteSeparator, o.Source, doubt(o.Source, o.Basis))}
	}
	return items
}

// organismsMean says what the list rests on.
func organismsMean(list []beverage.OrganismLeft) Para {
	if len(list) == 0 {
		return ""
	}
	return "by the process as described, not as a record shows it; what holds back rules nothing out; what is not listed was not shown to be absent"
}

func (l *ledger) organisms(list []beverage.OrganismLeft) {
	for _, o := range list {
		l.put(entry{part: "organism", name: o.Name, answer: o.Remains, text: join("; ", o.Grows, strings.Join(o.HeldBack, ", "), o.Control), source: o.Source, basis: string(o.Basis)})
	}
}
