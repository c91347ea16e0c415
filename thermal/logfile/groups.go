package logfile

import (
	"slices"
	"unicode"
)

// groups gives for each cell of a row the heading that spans it from the row
// above the headings, carried to the right as merged cells are; empty where there
// is none.
func (t *table) groups() []heading {
	out := make([]heading, t.cells)
	if !t.grouped() {
		return out
	}
	cells, over := t.row(t.heading-1), heading{}
	for i := range out {
		if i < len(cells) && len(cells[i]) > 0 {
			over = parseHeading(string(cells[i]))
		}
		out[i] = over
	}
	return out
}

// grouped tells whether the row above the headings heads groups of columns, one
// of them of temperatures: what it says holds under its cells and nowhere else.
func (t *table) grouped() bool {
	if t.heading < 1 {
		return false
	}
	cells := t.row(t.heading - 1)
	for i, c := range cells[min(1, len(cells)):] {
		h := parseHeading(string(c))
		if isTemperatureUnit(h.unit) && h.label != "" && !saysUnit(h.label) && i+1 < t.cells {
			return true
		}
	}
	return false
}

// saysUnit tells words such as "Temperature unit", whose unit is that of the file.
func saysUnit(label string) bool {
	return slices.ContainsFunc(words(label), func(w string) bool { return unitWords[w] })
}

var unitWords = setOf("unit units einheit einheiten unité unités")

// under gives a heading what its group says: a name where it is itself nothing but
// a unit ("bar" under "Pressure"), and its unit where it has none.
func (h heading) under(group heading) heading {
	if u := unitToken(h.full); h.unit == "" && u != "" && timeUnitS[u] == 0 && !oneLetter(h.full) {
		h.unit = u
		if group.label != "" && !isTemperatureUnit(group.unit) {
			h.full, h.label = group.label+" "+h.full, group.label
		}
	}
	if h.unit == "" && h.full != "" && isTemperatureUnit(group.unit) && !notTemperature(h) && !h.ofTime() {
		h.unit = group.unit
	}
	return h
}

// ofTime tells headings with a word of clocks; T 1 is a probe.
func (h heading) ofTime() bool {
	return slices.ContainsFunc(words(h.full), func(w string) bool { return timeWords[w] && w != "t" })
}

// oneLetter tells a heading that may be a probe's name as well as a unit: A, V, N.
func oneLetter(text string) bool {
	r := []rune(text)
	return len(r) == 1 && unicode.IsLetter(r[0])
}
