package logfile

import (
	"fmt"
	"strings"
)

// column is one temperature column of the file.
type column struct {
	index int // cell of the row
	name  string
	unit  string // "C", "F", "K"
	role  Role
	basis RoleBasis
}

// layout is a file understood: where its clock and its temperatures stand.
type layout struct {
	table   table
	time    timeForm
	columns []column
	leftOut []LeftOut
	basis   string // of the unit
}

// otherQuantities are words of headings whose numbers are no temperatures.
var otherQuantities = setOf(`pressure druck pression press presión pressione druk speed drehzahl vitesse velocidad flow durchfluss
	débit caudal level füllstand niveau humidity feuchte rh humidité valve ventil vanne alarm alarme alarms status state zustand
	event events remark comment note bemerkung batch charge lot step schritt phase program programm recipe counter record
	no nr num number index id row zeile battery batterie voltage spannung current strom signal power torque ph conductivity
	leitfähigkeit brix weight gewicht operator bediener lethality letalität létalité fo pu pus pue cook rate quality
	channel flag error serial device gerät site user`)

// lethalityName tells headings such as F0, F-value, F 121, P90, C100: a
// lethality the recorder worked out itself.
func lethalityName(label string) bool {
	w := words(label)
	if len(w) >= 2 && (w[0] == "f" || w[0] == "c" && w[1] == "value") && (w[1] == "value" || w[1] == "wert" || w[1] == "0" || len(w[1]) >= 2 && isDigit(w[1][0])) {
		return true
	}
	return len(w) >= 2 && w[0] == "p" && (w[1] == "90" || w[1] == "70")
}

// notTemperature tells headings of something else.
func notTemperature(h heading) bool {
	if isTemperatureUnit(h.unit) {
		return lethalityName(h.label)
	}
	if h.unit != "" || lethalityName(h.label) {
		return true
	}
	for _, w := range words(h.label) {
		if otherQuantities[w] {
			return true
		}
	}
	return strings.HasPrefix(h.full, "#")
}

// findColumns chooses the temperature columns, their units and their roles.
func findColumns(file string, t table, f timeForm, hs []heading, o Options) (layout, error) {
	l := layout{table: t, time: f}
	used := map[string]bool{}
	anyUnit := false
	for _, h := range hs {
		anyUnit = anyUnit || isTemperatureUnit(h.unit)
	}
	numeric := t.numericColumns()
	for i, h := range hs {
		role, name, declared := declaredRole(o.Roles, h)
		used[name] = used[name] || declared
		if i == f.a || i == f.b {
			continue
		}
		if reason := leaveOut(h, role, declared, numeric[i], anyUnit && o.Unit == ""); reason != "" {
			l.leftOut = append(l.leftOut, LeftOut{Name: h.full, Reason: reason})
			continue
		}
		c := column{index: i, name: h.label, unit: h.unit, role: role, basis: Declared}
		if !declared {
			c.role, c.basis = roleOf(h.label)
		}
		l.columns = append(l.columns, c)
	}
	if err := checkRoles(file, o.Roles, used, hs); err != nil {
		return l, err
	}
	if len(l.columns) == 0 {
		return l, fmt.Errorf("%s: no temperature column; the headings are %s", file, headingList(hs))
	}
	l.nameApart(hs)
	return l, l.settleUnits(file, o.Unit)
}

// leaveOut gives the reason why a column is no temperature, or "".
func leaveOut(h heading, role Role, declared, numeric, othersHaveUnit bool) string {
	switch {
	case declared && role == Ignore:
		return "declared as ignored"
	case declared:
		return ""
	case notTemperature(h):
		return "not a temperature by its heading"
	case !numeric && h.unit == "":
		return "holds no numbers"
	case h.unit == "" && othersHaveUnit:
		return "no temperature unit, while other columns have one"
	}
	return ""
}

// numericColumns tells which columns hold numbers in the sniffed rows.
func (t *table) numericColumns() []bool {
	numbers, texts := make([]int, t.cells), make([]int, t.cells)
	var cells [][]byte
	for _, line := range t.rows() {
		cells = splitCells(cells[:0], line, t.sep)
		for i := 0; i < min(len(cells), t.cells); i++ {
			if _, _, ok := parseNumber(cells[i], t.mark); ok {
				numbers[i]++
			} else if !isMissing(cells[i]) {
				texts[i]++
			}
		}
	}
	out := make([]bool, t.cells)
	for i := range out {
		out[i] = numbers[i] >= texts[i]
	}
	return out
}

// nameApart gives columns of equal label their full heading, or their place.
func (l *layout) nameApart(hs []heading) {
	count := map[string]int{}
	for _, c := range l.columns {
		count[key(c.name)]++
	}
	for i, c := range l.columns {
		if c.name == "" {
			l.columns[i].name = hs[c.index].full
		}
		if count[key(c.name)] > 1 {
			l.columns[i].name = fmt.Sprintf("%s (column %d)", hs[c.index].label, c.index+1)
		}
	}
}

// settleUnits gives every column its unit, from its heading or unit row, the
// preamble or the caller; it refuses when there is none and when two disagree.
func (l *layout) settleUnits(file, declared string) error {
	l.basis = "heading"
	if l.table.unitRow >= 0 {
		l.basis = "unit row"
	}
	preamble, named := l.table.preambleUnit(), false
	for i := range l.columns {
		c := &l.columns[i]
		switch {
		case c.unit != "" && declared != "" && c.unit != declared:
			return fmt.Errorf("%s: column %q is headed °%s but the unit was given as %s; give none, or correct the heading", file, c.name, c.unit, declared)
		case isTemperatureUnit(c.unit):
			named = true
		case declared != "":
			c.unit, l.basis = declared, "declared"
		case preamble != "":
			c.unit, l.basis = preamble, "preamble"
		default:
			return fmt.Errorf("%s: no unit for temperature column %q; say which with --unit C, --unit F or --unit K", file, c.name)
		}
	}
	if named && declared != "" && l.basis != "declared" {
		l.basis += " and declared"
	}
	return nil
}

// preambleUnit finds a temperature unit named above the headings; "" when there
// is none or more than one.
func (t *table) preambleUnit() string {
	found := ""
	end := t.first
	if t.heading >= 0 {
		end = t.heading
	}
	if t.grouped() {
		end--
	}
	for _, line := range t.lines[:end] {
		for _, c := range splitCells(nil, line, t.sep) {
			u := cellUnit(string(c))
			if u == "" || u == found {
				continue
			}
			if found != "" {
				return ""
			}
			found = u
		}
	}
	return found
}

// cellUnit reads "°C", "Unit: °C", "Temperature unit = Celsius".
func cellUnit(cell string) string {
	if u := unitToken(cell); isTemperatureUnit(u) && (len(cell) > 1) {
		return u
	}
	if strings.ContainsAny(cell, "0123456789") { // a set point, not the unit of the readings
		return ""
	}
	if h := parseHeading(cell); isTemperatureUnit(h.unit) && (strings.ContainsAny(cell, "°º˚\ufffd") || unitWord.MatchString(cell)) {
		return h.unit
	}
	for _, lead := range []string{"unit", "units", "einheit", "unité"} {
		low := strings.ToLower(cell)
		if rest, ok := strings.CutPrefix(low, lead); ok && strings.ContainsAny(rest, ":=") {
			if u := unitToken(strings.TrimLeft(rest, ":= ")); isTemperatureUnit(u) {
				return u
			}
		}
	}
	return ""
}
