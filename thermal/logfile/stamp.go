package logfile

import "bytes"

// stamp is a date, a time of day or both as they stand in a cell, not yet
// decided which of the date's fields is the day.
type stamp struct {
	hasDate bool
	date    [3]int
	width   [3]int // digits of each date field; 0 where a month's name stands
	dateSep byte   // between the first two date fields; 0 when written together

	clockFields int // 0, 2 or 3
	clock       [3]int
	fraction    float64 // of the last clock field
	half        byte    // 'a' or 'p' of a 12-hour clock, 0 without
	hasZone     bool
	zoneS       int // east of UTC
}

// maxStampLen bounds what is looked at as a date or time.
const maxStampLen = 48

// lexStamp reads a cell as date, time of day or both. It accepts ISO 8601 and
// the forms recorders print: dots, slashes and dashes, names of months, 12-hour
// clocks, fractions with point or comma, a zone.
func lexStamp(cell []byte) (s stamp, ok bool) {
	if len(cell) == 0 || len(cell) > maxStampLen {
		return s, false
	}
	b := cell
	if !looksLikeClock(b) {
		if b, ok = s.lexDate(b); !ok {
			return s, false
		}
		b = trimStampGap(b)
		if len(b) == 0 {
			return s, true
		}
	}
	if b, ok = s.lexClock(b); !ok {
		return s, false
	}
	return s, s.lexZone(bytes.TrimLeft(b, " "))
}

// trimStampGap drops what may stand between date and time.
func trimStampGap(b []byte) []byte {
	b = bytes.TrimLeft(b, " ,_")
	if len(b) > 1 && (b[0] == 'T' || b[0] == 't') && isDigit(b[1]) {
		return b[1:]
	}
	return b
}

// looksLikeClock tells "22:41" from "14.03.2026": digits, then a colon.
func looksLikeClock(b []byte) bool {
	n := countDigits(b)
	return n > 0 && n <= 4 && n < len(b) && b[n] == ':'
}

func (s *stamp) lexDate(b []byte) ([]byte, bool) {
	if n := countDigits(b); n == 8 {
		s.hasDate = true
		s.date = [3]int{atoi(b[:4]), atoi(b[4:6]), atoi(b[6:8])}
		s.width = [3]int{4, 2, 2}
		return b[8:], true
	}
	for i := range s.date {
		if i > 0 {
			if len(b) == 0 || !isDateSep(b[0]) {
				return b, false
			}
			if i == 1 {
				s.dateSep = b[0]
			}
			b = bytes.TrimLeft(b, " .-/,")
		}
		var ok bool
		if s.date[i], s.width[i], b, ok = lexDateField(b); !ok {
			return b, false
		}
	}
	s.hasDate = s.oneYear()
	return b, s.hasDate
}

func isDateSep(c byte) bool { return c == '-' || c == '/' || c == '.' || c == ' ' || c == ',' }

// lexDateField takes one to four digits or the name of a month.
func lexDateField(b []byte) (value, width int, rest []byte, ok bool) {
	if n := countDigits(b); n == 1 || n == 2 || n == 4 {
		return atoi(b[:n]), n, b[n:], true
	}
	n := countLetters(b)
	month := monthByName(b[:n])
	return month, 0, b[n:], month > 0
}

// oneYear tells whether the fields can be a date at all: at most one name and
// at most one field of four digits, and that one first or last.
func (s *stamp) oneYear() bool {
	names, years := 0, 0
	for _, w := range s.width {
		if w == 0 {
			names++
		}
		if w == 4 {
			years++
		}
	}
	return names <= 1 && years <= 1 && s.width[1] != 4
}

func (s *stamp) lexClock(b []byte) ([]byte, bool) {
	if n := countDigits(b); n == 6 && (len(b) == 6 || b[6] != ':') && s.hasDate {
		s.clockFields = 3
		s.clock = [3]int{atoi(b[:2]), atoi(b[2:4]), atoi(b[4:6])}
		b = b[6:]
	} else {
		for s.clockFields < 3 {
			n := countDigits(b)
			if n == 0 || n > 5 || (s.clockFields > 0 && n > 2) {
				return b, false
			}
			s.clock[s.clockFields] = atoi(b[:n])
			s.clockFields++
			b = b[n:]
			if len(b) == 0 || b[0] != ':' {
				break
			}
			b = b[1:]
		}
	}
	if s.clockFields < 2 || s.clock[1] > 59 || (s.clockFields == 3 && s.clock[2] > 60) {
		return b, false
	}
	return s.lexHalf(s.lexFraction(b))
}

// lexFraction takes ".25" or ",25", and the fourth field of "22:41:07:250".
func (s *stamp) lexFraction(b []byte) []byte {
	if len(b) < 2 || (b[0] != '.' && b[0] != ',' && (b[0] != ':' || s.clockFields < 3)) {
		return b
	}
	n := min(countDigits(b[1:]), 9)
	if n == 0 {
		return b
	}
	s.fraction = float64(atoi(b[1:1+n])) / pow10[n]
	return b[1+countDigits(b[1:]):]
}

// lexHalf takes AM or PM in the spellings in use.
func (s *stamp) lexHalf(b []byte) ([]byte, bool) {
	t := bytes.TrimLeft(b, " ")
	if len(t) == 0 {
		return t, true
	}
	c := t[0] | 0x20
	if c != 'a' && c != 'p' {
		return t, true
	}
	t = bytes.TrimLeft(t[1:], ". ")
	if len(t) > 0 && t[0]|0x20 == 'm' {
		t = bytes.TrimLeft(t[1:], ".")
	}
	s.half = c
	return t, s.clock[0] >= 1 && s.clock[0] <= 12
}

func isDigit(c byte) bool { return c-'0' < 10 }

func countDigits(b []byte) int {
	n := 0
	for n < len(b) && isDigit(b[n]) {
		n++
	}
	return n
}

func countLetters(b []byte) int {
	n := 0
	for n < len(b) && (b[n] >= 0x80 || b[n]|0x20 >= 'a' && b[n]|0x20 <= 'z') {
		n++
	}
	return n
}

// atoi reads up to nine digits.
func atoi(digits []byte) int {
	v := 0
	for _, c := range digits {
		v = v*10 + int(c-'0')
	}
	return v
}

// months in the languages recorders print them in, by their first letters:
// English, German, French, Spanish, Italian, Dutch.
var months = [12][]string{
	{"jan", "ene", "gen"}, {"feb", "fév", "fev"}, {"mar", "mär", "mrz", "mrt", "maa"}, {"apr", "avr", "abr"},
	{"may", "mai", "mei", "mag"}, {"jun", "juin", "giu"}, {"jul", "juil", "lug"}, {"aug", "aoû", "aou", "ago"},
	{"sep", "set"}, {"oct", "okt", "ott"}, {"nov"}, {"dec", "dez", "déc", "dic"},
}

// monthByName gives 1 to 12, or 0.
func monthByName(b []byte) int {
	name := bytes.ToLower(b)
	for i, starts := range months {
		for _, start := range starts {
			if bytes.HasPrefix(name, []byte(start)) {
				return i + 1
			}
		}
	}
	return 0
}
