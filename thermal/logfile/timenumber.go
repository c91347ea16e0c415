package logfile

import "fmt"

// Magnitudes by which a number is known for a date: seconds since 1970 from
// 2001 to 2065, the same in milli- and microseconds, days since 1899-12-30 from
// 1954 to 2119.
const (
	epochLow, epochHigh   = 1e9, 3e9
	serialLow, serialHigh = 20000, 80000
	serialToUnixDays      = 25569 // days from 1899-12-30 to 1970-01-01
	days1904              = 1462  // from 1899-12-30 to 1904-01-01
)

// numberColumn takes a column of numbers for the clock: one whose heading or
// unit says so.
func numberColumn(file string, t *table, cols []timeColumn, workbook bool) (timeForm, error) {
	for _, c := range cols {
		f := timeForm{a: c.index, b: -1, mark: t.mark}
		if !c.mostly(c.numbers) || !c.mayBeClock() {
			continue
		}
		unit := timeUnitOf(c.h)
		switch {
		case c.first >= epochLow && c.first < epochHigh && (unit == 0 || unit == 1):
			f.kind, f.unitS = epoch, 1
		case c.first >= epochLow*1e3 && c.first < epochHigh*1e3:
			f.kind, f.unitS = epoch, 1e-3
		case c.first >= epochLow*1e6 && c.first < epochHigh*1e6:
			f.kind, f.unitS = epoch, 1e-6
		case unit > 0:
			f.kind, f.unitS, f.elapsed = counted, unit, true
		case workbook && c.first >= 0 && c.first < 1 && c.last >= 0 && c.last < 2:
			f.kind, f.numeric = daily, true
			f.elapsed = c.first == 0
		case c.first >= serialLow && c.first < serialHigh:
			f.kind, f.unitS = serialDay, secondsPerDay
			f.b = timeOfSerial(cols, c)
		case c.timeHeading():
			return f, fmt.Errorf("%s: time column %q is a number without a unit; head it with (s), (min) or (h)", file, c.h.full)
		default:
			continue
		}
		return f, nil
	}
	return timeForm{}, fmt.Errorf("%s: no column is a clock; one headed time, or time (s), is needed", file)
}

// timeOfSerial finds the column with the fraction of the day, where the dates are
// whole days; -1 when there is none.
func timeOfSerial(cols []timeColumn, date timeColumn) int {
	if date.fractions > 0 || date.first < serialLow {
		return -1
	}
	for _, c := range cols {
		if c.index != date.index && c.mostly(c.numbers) && c.fractions > 0 && c.first >= 0 && c.last >= 0 && c.first < 1 && c.last < 1 && c.timeHeading() {
			return c.index
		}
	}
	return -1
}

// mayBeClock tells a column of rising numbers headed as time, or of an epoch's
// size.
func (c *timeColumn) mayBeClock() bool {
	if isTemperatureUnit(c.h.unit) {
		return false
	}
	return c.timeHeading() || timeUnitS[c.h.unit] > 0 && !notTemperature(c.h) || c.first >= epochLow && c.rising*10 >= c.steps*8 ||
		c.index == 0 && c.first >= serialLow && c.first < serialHigh
}

// timeUnitOf gives the unit of a time heading in seconds: from its unit, or
// from a label that is one ("seconds"). 0 is unknown.
func timeUnitOf(h heading) float64 {
	if u := timeUnitS[h.unit]; u > 0 {
		return u
	}
	for _, w := range words(h.label) {
		if u := timeUnitS[w]; u > 0 {
			return u
		}
	}
	return 0
}
