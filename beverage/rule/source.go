package rule

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/law"
)

// source is what a hit rests on, in words: the row or the published window that
// it names, else of the rule's rows the first that speaks in each market of the
// hit, side by side where they differ. The weakest basis of them counts.
func (r *Rule) source(h Hit, markets []beverage.Market) beverage.Source {
	if h.Source.Text != "" {
		return h.Source
	}
	if h.Markets != nil {
		markets = h.Markets
	}
	if h.Row != "" {
		return sourceOf(law.MustGet(h.Row), markets)
	}
	rows := r.Law
	if h.Rows != nil {
		rows = h.Rows
	}
	if len(markets) == 0 {
		return law.MustGet(rows[0]).Source()
	}
	return sideBySide(rowsFor(rows, markets))
}

// marketRow is the row of law that a finding rests on in one market.
type marketRow struct {
	market beverage.Market
	row    law.Row
}

func rowsFor(ids []string, markets []beverage.Market) []marketRow {
	list := make([]marketRow, len(markets))
	for i, m := range markets {
		list[i] = marketRow{m, rowFor(ids, m)}
	}
	return list
}

// rowFor is the first of the rows that speaks in a market: its own law before
// custom and science, and those before the law of another market; but custom or
// science where that stands first.
func rowFor(ids []string, m beverage.Market) law.Row {
	first := law.MustGet(ids[0])
	if len(first.Markets) == 0 {
		return first
	}
	for _, such := range []func(law.Row) bool{
		func(row law.Row) bool { return len(row.Markets) > 0 && row.Speaks(m) },
		func(row law.Row) bool { return len(row.Markets) == 0 },
	} {
		for _, id := range ids {
			if row := law.MustGet(id); such(row) {
				return row
			}
		}
	}
	return first
}

// sideBySide tells the rows of several markets, each once, with the markets that
// it is told for where there is more than one.
func sideBySide(rows []marketRow) beverage.Source {
	var ids []string
	told := map[string][]beverage.Market{}
	for _, x := range rows {
		if told[x.row.ID] == nil {
			ids = append(ids, x.row.ID)
		}
		told[x.row.ID] = append(told[x.row.ID], x.market)
	}
	if len(ids) == 1 {
		return sourceOf(law.MustGet(ids[0]), told[ids[0]])
	}
	all := beverage.Source{}
	for i, id := range ids {
		s := sourceOf(law.MustGet(id), told[id])
		if i == 0 || weakness[s.Basis] > weakness[all.Basis] {
			all.Basis = s.Basis
		}
		ids[i] = listed(told[id]) + ": " + s.Text
	}
	all.Text = strings.Join(ids, "; ")
	return all
}

// weakness orders what a source is known by.
var weakness = map[beverage.Basis]int{beverage.Seen: 0, beverage.Memory: 1, beverage.CommonPractice: 2}

// sourceOf is a row in words. Law of another market than all of those it is told
// for says so: it is taken as practice.
func sourceOf(row law.Row, markets []beverage.Market) beverage.Source {
	source := row.Source()
	if !speaks(row, markets) {
		source.Text += fmt.Sprintf(" (law of %s; for other markets told as practice)", row.Markets[0])
	}
	return source
}

func listed(markets []beverage.Market) string {
	names := make([]string, len(markets))
	for i, m := range markets {
		names[i] = string(m)
	}
	return strings.Join(names, ", ")
}

// speaks tells whether a row is science or trade, or law in one of the markets.
func speaks(row law.Row, markets []beverage.Market) bool {
	return len(row.Markets) == 0 || slices.ContainsFunc(markets, row.Speaks)
}
