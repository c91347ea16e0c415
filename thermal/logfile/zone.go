package logfile

import (
	"bytes"
	"strings"
)

// zoneHours are the names of time zones that recorders write, east of UTC. Only
// their difference matters, where a log goes over a change of the clock; names
// that mean several zones stand for the one whose summer time stands here too.
var zoneHours = map[string]float64{
	"z": 0, "utc": 0, "gmt": 0, "wet": 0, "west": 1, "bst": 1, "cet": 1, "mez": 1, "cest": 2, "mesz": 2, "eet": 2, "eest": 3,
	"est": -5, "edt": -4, "cst": -6, "cdt": -5, "mst": -7, "mdt": -6, "pst": -8, "pdt": -7,
	"jst": 9, "aest": 10, "aedt": 11, "nzst": 12, "nzdt": 13,
}

// lexZone takes "Z", "UTC", "CEST", "+01:00", "+0100", "UTC+1" or nothing.
func (s *stamp) lexZone(b []byte) bool {
	if len(b) == 0 {
		return true
	}
	n := countLetters(b)
	hours, known := zoneHours[strings.ToLower(string(b[:n]))]
	switch {
	case n > 0 && !known, n > 0 && hours != 0 && n < len(b):
		return false
	case n > 0 && n == len(b):
		s.hasZone, s.zoneS = true, int(hours*3600)
		return true
	}
	return s.lexOffset(b[n:])
}

// lexOffset takes "+1", "+01", "+01:00", "+0100" and the same with a minus.
func (s *stamp) lexOffset(b []byte) bool {
	if b[0] != '+' && b[0] != '-' {
		return false
	}
	digits := bytes.Replace(b[1:], []byte(":"), nil, 1)
	n := countDigits(digits)
	if n != len(digits) || n != 1 && n != 2 && n != 4 {
		return false
	}
	hours, minutes := atoi(digits[:min(n, 2)]), atoi(digits[min(n, 2):])
	s.hasZone, s.zoneS = true, hours*3600+minutes*60
	if b[0] == '-' {
		s.zoneS = -s.zoneS
	}
	return hours <= 14 && minutes < 60
}
