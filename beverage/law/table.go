package law

import (
	"embed"
	"fmt"
	"math"
	"strconv"
	"strings"
)

//go:embed data/*.tsv
var tables embed.FS

// record is one line of a table: its cells, and where each heading stands.
type record struct {
	table string
	line  int
	at    map[string]int
	cells []string
}

// readTable reads an embedded table: one heading line, then one record a line, tabs
// between cells, lines starting with # left out. Errors name table and line.
func readTable(name string) ([]record, error) {
	raw, err := tables.ReadFile("data/" + name + ".tsv")
	if err != nil {
		return nil, err
	}
	return parseTable(name, string(raw))
}

func parseTable(name, text string) ([]record, error) {
	var at map[string]int
	var out []record
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimSuffix(line, "\r")
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(line, "\t")
		if at == nil {
			at = places(cells)
			continue
		}
		if len(cells) != len(at) {
			return nil, fmt.Errorf("%s.tsv:%d: %d cells under %d headings; give every heading a cell", name, n+1, len(cells), len(at))
		}
		out = append(out, record{table: name, line: n + 1, at: at, cells: cells})
	}
	return out, nil
}

func places(head []string) map[string]int {
	at := make(map[string]int, len(head))
	for i, h := range head {
		at[h] = i
	}
	return at
}

// text is the cell under a heading, empty where there is no such heading.
func (r record) text(col string) string {
	if i, ok := r.at[col]; ok {
		return r.cells[i]
	}
	return ""
}

// number reads a cell that must hold a number.
func (r record) number(col string) (float64, error) {
	v, err := strconv.ParseFloat(r.text(col), 64)
	if err != nil {
		return 0, fmt.Errorf("%s.tsv:%d: %s: %q is no number; write it with a decimal point", r.table, r.line, col, r.text(col))
	}
	return v, nil
}

// numberOrNaN reads a number; an empty cell has none.
func (r record) numberOrNaN(col string) (float64, error) {
	if r.text(col) == "" {
		return math.NaN(), nil
	}
	return r.number(col)
}

// bound reads the comparison of a row that may have none.
func (r record) bound() (Bound, error) {
	b := Bound{Op: r.text("op"), Unit: r.text("unit")}
	if b.Op == "" {
		return b, nil
	}
	var err error
	b.Value, err = r.number("value")
	return b, err
}

// list splits a cell at its commas; an empty cell is an empty list.
func (r record) list(col string) []string {
	if r.text(col) == "" {
		return nil
	}
	return strings.Split(r.text(col), ",")
}
