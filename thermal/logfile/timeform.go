package logfile

import (
	"bytes"
	"fmt"
	"math"
	"strings"
)

// timeKind says how the clock is written.
type timeKind int

const (
	noClock   timeKind = iota
	dated              // date and time, in one cell or two
	daily              // time of day, or elapsed hours, minutes, seconds
	counted            // a number of seconds, minutes, hours
	epoch              // seconds, milliseconds or microseconds since 1970-01-01
	serialDay          // days since 1899-12-30, or a fraction of a day
)

// timeForm is how a row's time is read.
type timeForm struct {
	kind         timeKind
	a, b         int // cells; b is -1 unless date and time stand apart
	order        dateOrder
	orderBasis   string
	minutesFirst bool    // two clock fields are minutes and seconds
	unitS        float64 // of a number, in seconds
	elapsed      bool    // counted from a start, not a time of day
	numeric      bool    // a time of day written as a fraction of the day
	from1904     bool    // days are counted from 1904-01-01
	mark         byte
}

// timeColumn is what the sniffed rows show of one column.
type timeColumn struct {
	index                  int
	filled                 int
	dateTimes, dates, tods int
	numbers, fractions     int
	rising, steps          int
	first, last            float64
	stamps                 []stamp
	h                      heading
}

// timeWords of headings.
var timeWords = setOf(`time zeit uhrzeit heure temps hora ora tid tijd tiempo tempo timestamp datetime elapsed date datum
	fecha data dato dauer duration durée t s sec seconds min minutes epoch unix clock ts`)

// findTime chooses the column or columns that hold the clock.
func findTime(file string, t *table, hs []heading, o Options, workbook bool) (timeForm, error) {
	cols := timeColumns(t, hs)
	for _, find := range []func([]timeColumn) (timeForm, bool){dateTimeColumn, dateAndTime, dailyColumn} {
		f, ok := find(cols)
		if !ok {
			continue
		}
		f.mark = t.mark
		return finishStamps(file, t, f, cols, o)
	}
	return numberColumn(file, t, cols, workbook)
}

func timeColumns(t *table, hs []heading) []timeColumn {
	cols := make([]timeColumn, t.cells)
	for i := range cols {
		cols[i] = timeColumn{index: i, h: hs[i]}
	}
	var cells [][]byte
	for _, line := range t.rows() {
		cells = splitCells(cells[:0], line, t.sep)
		for i := 0; i < min(len(cells), t.cells); i++ {
			cols[i].look(cells[i], t.mark)
		}
	}
	return cols
}

func (c *timeColumn) look(cell []byte, mark byte) {
	if isMissing(cell) {
		return
	}
	c.filled++
	if v, _, ok := parseNumber(cell, mark); ok {
		if c.numbers > 0 {
			c.steps++
			if v > c.last {
				c.rising++
			}
		} else {
			c.first = v
		}
		c.last = v
		c.numbers++
		if v != math.Trunc(v) {
			c.fractions++
		}
		if len(cell) != 8 { // 20260314 is a date as well
			return
		}
	}
	s, ok := lexStamp(cell)
	if !ok {
		return
	}
	if c.stamps == nil {
		c.stamps = make([]stamp, 0, sniffRun)
	}
	c.stamps = append(c.stamps, s)
	switch {
	case s.hasDate && s.clockFields > 0:
		c.dateTimes++
	case s.hasDate:
		c.dates++
	default:
		c.tods++
	}
}

// mostly tells whether nearly all filled cells are of one sort; one damaged row,
// or one in ten, must not hide the clock.
func (c *timeColumn) mostly(n int) bool {
	return n > 1 && n*10 >= (c.filled-1)*9 || n > 0 && n == c.filled
}

func dateTimeColumn(cols []timeColumn) (timeForm, bool) {
	for _, c := range cols {
		if c.mostly(c.dateTimes) {
			return timeForm{kind: dated, a: c.index, b: -1}, true
		}
	}
	return timeForm{}, false
}

func dateAndTime(cols []timeColumn) (timeForm, bool) {
	for _, d := range cols {
		if !d.mostly(d.dates) || d.mostly(d.numbers) && !d.timeHeading() {
			continue
		}
		for _, c := range cols {
			if c.mostly(c.tods) {
				return timeForm{kind: dated, a: d.index, b: c.index}, true
			}
		}
	}
	return timeForm{}, false
}

func dailyColumn(cols []timeColumn) (timeForm, bool) {
	for _, c := range cols {
		if c.mostly(c.tods) {
			return timeForm{kind: daily, a: c.index, b: -1}, true
		}
	}
	return timeForm{}, false
}

func (c *timeColumn) timeHeading() bool {
	for _, w := range words(c.h.label) {
		if timeWords[w] {
			return true
		}
	}
	return false
}

// finishStamps settles what the written stamps leave open: the order of the
// date, and whether two clock fields are hours or minutes first.
func finishStamps(file string, t *table, f timeForm, cols []timeColumn, o Options) (timeForm, error) {
	var err error
	if f.kind == dated {
		f.order, f.orderBasis, err = findDateOrder(file, t, cols[f.a], f, cols, o.Dates)
		return f, err
	}
	c := cols[f.a]
	low := strings.ToLower(c.h.full + " " + c.h.unit)
	f.elapsed = strings.Contains(low, "elapsed") || strings.Contains(low, "dauer") || strings.Contains(low, "duration") ||
		startsAtZero(c.stamps) || highestHour(c.stamps) > 23
	if !twoFields(c.stamps) {
		return f, nil
	}
	stamps := append(c.stamps, t.moreStamps(f.a)...)
	switch {
	case strings.Contains(low, "mm:ss"), strings.Contains(low, "m:ss"), strings.Contains(low, "min:s"):
		f.minutesFirst = true
	case strings.Contains(low, "h:mm"):
	case highestHour(stamps) > 23 || hasFraction(stamps):
		f.minutesFirst = true
	case f.elapsed || stamps[0].clock[0] == 0:
		return f, fmt.Errorf("%s:%d: %q can be hours and minutes or minutes and seconds; head the column with (hh:mm) or (mm:ss)", file, t.first+1, t.row(t.first)[f.a])
	}
	f.elapsed = f.elapsed || f.minutesFirst
	return f, nil
}

// moreStamps reads a column on through all of the sniffed text.
func (t *table) moreStamps(column int) []stamp {
	var stamps []stamp
	for _, line := range append(t.later, bytes.Split(t.rest, []byte("\n"))...) {
		if cells := splitCells(nil, trimEnd(line), t.sep); column < len(cells) {
			if s, ok := lexStamp(cells[column]); ok {
				stamps = append(stamps, s)
			}
		}
	}
	return stamps
}

func startsAtZero(stamps []stamp) bool { return stamps[0].clock == [3]int{} }

func highestHour(stamps []stamp) int {
	h := 0
	for _, s := range stamps {
		h = max(h, s.clock[0])
	}
	return h
}

func twoFields(stamps []stamp) bool {
	for _, s := range stamps {
		if s.clockFields == 3 || s.half != 0 {
			return false
		}
	}
	return true
}

func hasFraction(stamps []stamp) bool {
	for _, s := range stamps {
		if s.fraction != 0 {
			return true
		}
	}
	return false
}
