package sweep

import (
	"cmp"
	"slices"

	"posset/beverage"
)

// The kinds of change, in the order in which they are told.
const (
	kindClass = iota
	kindStop
	kindRoute
	kindReview
	kindNeeds
	kindNote
)

// Words for a finding that is not made.
const absent = "not raised"

// changes finds where anything changes from one step of the first input to the
// next; with a second input, for each of its values, those of neighbouring values
// at the same place told once.
func changes(r *Result) []Change {
	first := r.Inputs[0].Values
	rows := len(r.Points) / len(first) // values of the second input
	t := telling{told: map[change]int{}, all: []Change{}}
	for row := range rows {
		for step := 1; step < len(first); step++ {
			for _, c := range differences(&r.Points[(step-1)*rows+row], &r.Points[step*rows+row]) {
				c.Along, c.Low, c.High, c.place = r.Inputs[0].Key, first[step-1], first[step], step
				if len(r.Inputs) > 1 {
					v := r.Inputs[1].Values[row]
					c.With = &OtherSpan{Key: r.Inputs[1].Key, Low: v, High: v}
				}
				t.tell(c, row)
			}
		}
	}
	slices.SortStableFunc(t.all, func(a, b Change) int { return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.place, b.place)) })
	return t.all
}

// change is what makes two changes one where they are told of neighbouring rows.
type change struct {
	what, from, to string
	place          int
}

// telling gathers changes, those of neighbouring rows in one.
type telling struct {
	all  []Change
	rows []int          // last row of each
	told map[change]int // where the latest of each stands
}

func (t *telling) tell(c Change, row int) {
	key := change{c.What, c.From, c.To, c.place}
	if k, ok := t.told[key]; ok && t.rows[k] == row-1 {
		t.all[k].With.High, t.rows[k] = c.With.High, row
		return
	}
	t.told[key] = len(t.all)
	t.all, t.rows = append(t.all, c), append(t.rows, row)
}

// differences are what differs between two points.
func differences(a, b *Point) []Change {
	var list []Change
	add := func(kind int, what, from, to string) {
		if from != to {
			list = append(list, Change{What: what, From: from, To: to, kind: kind})
		}
	}
	add(kindClass, "class", a.Class.String(), b.Class.String())
	for _, id := range findings(a, b) {
		from, to := a.level(id), b.level(id)
		add(kindOf(from, to), id, from, to)
	}
	for i := range min(len(a.Routes), len(b.Routes)) {
		add(kindRoute, "route "+string(a.Routes[i].Route), a.Routes[i].Outcome.String(), b.Routes[i].Outcome.String())
	}
	add(kindNeeds, "needs", a.Needs, b.Needs)
	return list
}

// findings are the ids that either point raises, in the order of their ids.
func findings(points ...*Point) []string {
	var all []string
	for _, p := range points {
		for _, list := range [][]string{p.Stops, p.Reviews, p.Notes} {
			all = append(all, list...)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func (p *Point) level(id string) string {
	for level, list := range map[beverage.Level][]string{beverage.Stop: p.Stops, beverage.Review: p.Reviews, beverage.Note: p.Notes} {
		if slices.Contains(list, id) {
			return level.String()
		}
	}
	return absent
}

// kindOf sorts a finding by the higher of its levels.
func kindOf(from, to string) int {
	for _, k := range []struct {
		word string
		kind int
	}{{beverage.Stop.String(), kindStop}, {beverage.Review.String(), kindReview}} {
		if from == k.word || to == k.word {
			return k.kind
		}
	}
	return kindNote
}
