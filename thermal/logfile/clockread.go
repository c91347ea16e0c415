package logfile

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"time"
)

// clockReader turns the clock cells of row after row into seconds since the
// first row, and back into text.
type clockReader struct {
	form    timeForm
	started bool
	base    int64 // whole seconds that stand for 0
	days    int64 // midnights passed, of a clock without date
	last    int64 // latest whole seconds, days included, of a clock without date

	seen   [maxStampLen]byte // the latest cell that ends in plain seconds
	length int               // of it, 0 without
	minute int64             // whole seconds of its minute
}

// seconds reads one row's clock. ok is false when the cells are no time.
func (c *clockReader) seconds(a, b []byte) (tS float64, ok bool) {
	whole, fraction, ok := c.sameMinute(a)
	if !ok {
		if whole, fraction, ok = c.read(a, b); !ok {
			return 0, false
		}
	}
	return c.since(whole, fraction), true
}

// since turns a clock into seconds since the first row's.
func (c *clockReader) since(whole int64, fraction float64) float64 {
	if !c.started {
		c.started, c.base, c.last = true, whole, whole
	}
	if c.form.kind == daily && !c.form.minutesFirst {
		whole = c.acrossMidnight(whole)
	}
	return float64(whole-c.base) + fraction
}

// sameMinute reads a cell that differs from the one before in its seconds only.
func (c *clockReader) sameMinute(cell []byte) (whole int64, fraction float64, ok bool) {
	n := len(cell) - 2
	if c.length == 0 || n+2 != c.length || !bytes.Equal(cell[:n], c.seen[:n]) {
		return 0, 0, false
	}
	tens, ones := cell[n]-'0', cell[n+1]-'0'
	return c.minute + int64(tens)*10 + int64(ones), 0, tens < 6 && ones < 10
}

// remember keeps a cell that ends in plain seconds for sameMinute.
func (c *clockReader) remember(cell []byte, s *stamp, whole int64) {
	c.length = 0
	if s.clockFields == 3 && s.fraction == 0 && s.half == 0 && !s.hasZone && s.clock[2] < 60 && bytes.Equal(cell[len(cell)-3:len(cell)-2], []byte(":")) {
		c.length = copy(c.seen[:], cell)
		c.minute = whole - int64(s.clock[2])
	}
}

// acrossMidnight puts a time of day on the day nearest the row before.
func (c *clockReader) acrossMidnight(whole int64) int64 {
	if whole >= secondsPerDay { // elapsed hours beyond a day
		c.last = whole
		return whole
	}
	whole += c.days * secondsPerDay
	switch d := whole - c.last; {
	case d < -secondsPerDay/2:
		whole += secondsPerDay
		c.days++
	case d > secondsPerDay/2 && c.days > 0:
		whole -= secondsPerDay
		c.days--
	}
	c.last = whole
	return whole
}

func (c *clockReader) read(a, b []byte) (whole int64, fraction float64, ok bool) {
	switch {
	case c.form.kind == dated:
		return c.readDated(a, b)
	case c.form.kind == daily && !c.form.numeric:
		s, ok := lexStamp(a)
		if !ok || s.hasDate {
			return 0, 0, false
		}
		w, f := s.clockS(c.form.minutesFirst)
		c.remember(a, &s, int64(w))
		return int64(w), f, true
	}
	v, _, ok := parseNumber(a, c.form.mark)
	if ok && c.form.b >= 0 {
		var ofDay float64
		ofDay, _, ok = parseNumber(b, c.form.mark)
		v += ofDay
	}
	if !ok {
		return 0, 0, false
	}
	return c.fromNumber(v)
}

func (c *clockReader) readDated(a, b []byte) (int64, float64, bool) {
	s, ok := lexStamp(a)
	if !ok || !s.hasDate {
		return 0, 0, false
	}
	day, ok := s.day(c.form.order)
	if !ok {
		return 0, 0, false
	}
	if c.form.b >= 0 {
		if s, ok = lexStamp(b); !ok || s.hasDate {
			return 0, 0, false
		}
	}
	w, f := s.clockS(false)
	whole := int64(day)*secondsPerDay + int64(w)
	if c.form.b < 0 {
		c.remember(a, &s, whole)
	}
	return whole, f, true
}

// clockDigits is the precision to which a day's fraction written as a number is
// taken: a millisecond.
const clockDigits = 1e3

func (c *clockReader) fromNumber(v float64) (int64, float64, bool) {
	s := v * c.form.unitS
	switch {
	case c.form.kind == serialDay:
		if v -= serialToUnixDays; c.form.from1904 {
			v += days1904
		}
		s = math.Round(v*secondsPerDay*clockDigits) / clockDigits
	case c.form.kind == daily:
		s = math.Round(v*secondsPerDay*clockDigits) / clockDigits
	}
	if !(math.Abs(s) < 1e11) {
		return 0, 0, false
	}
	whole := math.Floor(s)
	return int64(whole), s - whole, true
}

// text shows a moment as the file's own clock would.
func (c *clockReader) text(tS float64) string {
	if c.form.elapsed || c.form.kind == counted {
		return strconv.FormatFloat(math.Round((float64(c.base)+tS)*1e3)/1e3, 'f', -1, 64) + " s"
	}
	ms := int64(math.Round(tS * 1e3))
	t := time.UnixMilli(c.base*1e3 + ms).UTC()
	clock := "15:04:05"
	if ms%1000 != 0 {
		clock = "15:04:05.000"
	}
	if c.form.kind == daily {
		if day := t.Unix() / secondsPerDay; day > 0 {
			return fmt.Sprintf("%s (day %d)", t.Format(clock), day+1)
		}
		return t.Format(clock)
	}
	return t.Format("2006-01-02T" + clock)
}

// words describes the form for people.
func (f timeForm) words() string {
	switch {
	case f.kind == dated && f.b >= 0:
		return "date and time in two columns"
	case f.kind == dated:
		return "date and time"
	case f.kind == daily && f.minutesFirst:
		return "minutes and seconds elapsed"
	case f.kind == daily && f.elapsed:
		return "hours, minutes and seconds elapsed"
	case f.kind == daily:
		return "time of day"
	case f.kind == epoch:
		return "seconds since 1970-01-01"
	case f.kind == serialDay:
		return "days as a number"
	}
	return fmt.Sprintf("number of %g s", f.unitS)
}
