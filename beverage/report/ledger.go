package report

import (
	"strconv"
	"strings"

	"posset/beverage"
)

// ledger is the sheet of a result that is more than one table: one row a fact.
type ledger struct {
	file, drink string
	t           Table
}

var ledgerColumns = columns("file", "drink", "part", "name", "answer", "value", "low", "high", "unit", "text", "markets", "source", "basis")

func newLedger(in beverage.Input, drink string) *ledger {
	return &ledger{file: in.File, drink: drink, t: Table{Columns: ledgerColumns}}
}

// entry is one row, less what all rows of a drink share.
type entry struct {
	part, name, answer, value, low, high, unit, text, markets, source, basis string
}

func (l *ledger) put(e entry) {
	l.t.Rows = append(l.t.Rows, []string{l.file, l.drink, e.part, e.name, e.answer, e.value, e.low, e.high, e.unit, e.text, e.markets, e.source, e.basis})
}

func (l *ledger) figures(part string, fs Figures) {
	for _, f := range fs {
		l.put(entry{part: part, name: f.Name, answer: f.Words, value: numeral(f.Value), low: numeral(f.Low), high: numeral(f.High), unit: f.Unit, text: f.Note})
	}
}

func (l *ledger) count(name string, n int) {
	l.put(entry{part: "open", name: name, value: strconv.Itoa(n)})
}

func (l *ledger) findings(fs []beverage.Finding) {
	for _, f := range fs {
		l.put(entry{part: "finding", name: f.ID, answer: f.Level.String(), text: join(": ", f.Title, f.Detail),
			markets: listed(f.Markets), source: f.Source, basis: string(f.Basis)})
	}
}

func (l *ledger) routes(rs []beverage.RouteResult) {
	for _, r := range rs {
		l.put(entry{part: "route", name: string(r.Route), answer: r.Outcome.String(), text: join("; ", r.Needs, reasons(r.Reasons))})
	}
}

// numeral is a figure for a machine: unknown is an empty cell, never 0.
func numeral(v *float64) string {
	if v == nil {
		return ""
	}
	return significant(*v)
}

func listed[T ~string](items []T) string {
	out := make([]string, len(items))
	for i, s := range items {
		out[i] = string(s)
	}
	return strings.Join(out, ", ")
}

// reasons joins the reasons for a route's outcome into one text.
func reasons(rs []beverage.Reason) string {
	out := make([]string, len(rs))
	for i, r := range rs {
		out[i] = join(": ", r.ID, r.Text)
		if r.Source != "" {
			out[i] += " (" + r.Source + ")"
		}
	}
	return strings.Join(out, "; ")
}
