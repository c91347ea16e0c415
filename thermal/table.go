package thermal

import (
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// row is one line of a data file, by the names in its header line.
type row struct {
	file  string
	cells map[string]string
	err   error // the first that went wrong
}

// readRows reads a data file of the package.
func readRows(file, text string) ([]*row, error) {
	lines, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err == nil && len(lines) == 0 {
		err = errors.New("no table")
	}
	if err != nil {
		return nil, fmt.Errorf("thermal: %s: %w", file, err)
	}
	var rows []*row
	for _, line := range lines[1:] {
		r := &row{file: file, cells: map[string]string{}}
		for i, cell := range line {
			r.cells[lines[0][i]] = cell
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// text is a cell that must not be empty.
func (r *row) text(column string) string {
	s := r.cells[column]
	if s == "" {
		r.fail(column, "is empty")
	}
	return s
}

// number is a cell that must be a finite number above 0.
func (r *row) number(column string) float64 {
	v, err := strconv.ParseFloat(r.cells[column], 64)
	if err != nil || !(v > 0) || math.IsInf(v, 0) {
		r.fail(column, fmt.Sprintf("is %q, not a number above 0", r.cells[column]))
	}
	return v
}

// list is a cell of names parted by bars; an empty one has none.
func (r *row) list(column string) []string {
	if r.cells[column] == "" {
		return nil
	}
	return strings.Split(r.cells[column], "|")
}

func (r *row) fail(column, what string) {
	if r.err == nil {
		r.err = fmt.Errorf("thermal: %s: %s: %s %s", r.file, r.cells["name"], column, what)
	}
}

// called tells whether a name is the one asked for, case and spacing aside.
func called(want, name string, also []string) bool {
	want = plain(want)
	if want == "" {
		return false
	}
	for _, n := range also {
		if plain(n) == want {
			return true
		}
	}
	return plain(name) == want
}

func plain(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
