package logfile

import (
	"bytes"
	"fmt"
)

// row cuts one of the sniffed lines into cells.
func (t *table) row(i int) [][]byte { return splitCells(nil, t.lines[i], t.sep) }

// rows are the sniffed lines from the first reading on.
func (t *table) rows() [][]byte { return t.lines[t.first:] }

// findHeading looks above the readings for the row of headings, past a row of
// units.
func (t *table) findHeading() {
	t.heading, t.unitRow = -1, -1
	for i := t.first - 1; i >= 0; i-- {
		cells := t.row(i)
		if len(cells) < 2 {
			if len(trimBlank(t.lines[i])) == 0 && t.unitRow < 0 {
				continue
			}
			return
		}
		k := kindsOf(cells)
		if k.texts == 0 || k.numbers+k.stamps > k.texts {
			return
		}
		if t.unitRow < 0 && t.heading < 0 && isUnitRow(cells) && t.textAbove(i) {
			t.unitRow = i
			continue
		}
		t.heading = i
		return
	}
}

// textAbove tells whether a row of headings stands above line i.
func (t *table) textAbove(i int) bool {
	for i--; i >= 0; i-- {
		if len(trimBlank(t.lines[i])) > 0 {
			k := kindsOf(t.row(i))
			return k.cells >= 2 && k.texts >= 1
		}
	}
	return false
}

// isUnitRow tells a row of units: nothing but units, dashes and blanks.
func isUnitRow(cells [][]byte) bool {
	units := 0
	for _, c := range cells {
		if unitToken(string(c)) != "" {
			units++
		} else if !isMissing(c) {
			return false
		}
	}
	return units > 0
}

// findMark decides the decimal mark: a comma when numbers with a comma stand in
// the cells and none with a point.
func (t *table) findMark() {
	t.mark = '.'
	points, commas := 0, 0
	var cells [][]byte
	for _, line := range t.rows() {
		cells = splitCells(cells[:0], line, t.sep)
		for _, c := range cells {
			if _, _, ok := parseNumber(c, '.'); ok {
				if bytes.IndexByte(c, '.') >= 0 {
					points++
				}
			} else if _, _, ok := parseNumber(c, ','); ok {
				commas++
			}
		}
	}
	if commas > points {
		t.mark = ','
	}
}

// checkShape refuses a table whose rows hold more cells than its heading: the
// sign of a decimal comma in a file divided by commas.
func (t *table) checkShape(file string) error {
	if t.heading < 0 {
		return nil
	}
	named := len(t.row(t.heading))
	for _, c := range t.row(t.first)[min(named, t.cells):] {
		if len(c) > 0 {
			return fmt.Errorf("%s:%d: %d cells under %d headings; a decimal comma needs semicolon or tab between the cells", file, t.first+1, t.cells, named)
		}
	}
	return nil
}

// headings gives a heading for each cell of a row. Where headings repeat, the
// row above tells them apart.
func (t *table) headings() []heading {
	names := make([]string, t.cells)
	if t.heading >= 0 {
		copyCells(names, t.row(t.heading))
	}
	if repeats(names) && t.heading > 0 {
		t.addUpper(names)
	}
	out := make([]heading, t.cells)
	var units [][]byte
	if t.unitRow >= 0 {
		units = t.row(t.unitRow)
	}
	upper := t.groups()
	for i, name := range names {
		out[i] = parseHeading(name).under(upper[i])
		if name == "" {
			out[i].full = fmt.Sprintf("column %d", i+1)
			out[i].label = out[i].full
		}
		if i < len(units) && out[i].unit == "" {
			out[i].unit = unitToken(string(units[i]))
		}
	}
	return out
}

func copyCells(names []string, cells [][]byte) {
	for i := range names {
		if i < len(cells) {
			names[i] = string(cells[i])
		}
	}
}

func repeats(names []string) bool {
	seen := map[string]bool{}
	for _, n := range names {
		if n != "" && seen[key(n)] {
			return true
		}
		seen[key(n)] = true
	}
	return false
}

// addUpper puts the cells of the row above, carried to the right as merged
// cells are, before the headings.
func (t *table) addUpper(names []string) {
	cells := t.row(t.heading - 1)
	if len(cells) < 2 || kindsOf(cells).texts < 2 {
		return
	}
	upper := ""
	for i := range names {
		if i < len(cells) && len(cells[i]) > 0 {
			upper = string(cells[i])
		}
		if upper != "" && key(upper) != key(names[i]) {
			names[i] = upper + " " + names[i]
		}
	}
}
