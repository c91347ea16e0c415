package logfile

import "time"

// dateOrder says which field of a written date is which.
type dateOrder string

const (
	yearFirst  dateOrder = "ymd"
	dayFirst   dateOrder = "dmy"
	monthFirst dateOrder = "mdy"
)

// dateOrders are all orders a date may be written in.
var dateOrders = []dateOrder{yearFirst, dayFirst, monthFirst}

const secondsPerDay = 24 * 60 * 60

// twoDigitCentury is added to years of two digits: no recorder file is older.
const twoDigitCentury = 2000

// day gives the day since 1970-01-01 under an order, and whether such a day
// exists.
func (s *stamp) day(o dateOrder) (int, bool) {
	var y, m, d int
	switch o {
	case yearFirst:
		y, m, d = 0, 1, 2
	case dayFirst:
		d, m, y = 0, 1, 2
	case monthFirst:
		m, d, y = 0, 1, 2
	default:
		return 0, false
	}
	if !s.widthsFit(y, m, d) {
		return 0, false
	}
	year := s.date[y]
	if s.width[y] < 4 {
		year += twoDigitCentury
	}
	return dayNumber(year, s.date[m], s.date[d])
}

// widthsFit tells whether the fields' digits agree with their meaning.
func (s *stamp) widthsFit(y, m, d int) bool {
	named := s.width[0] == 0 || s.width[1] == 0 || s.width[2] == 0
	switch {
	case named && s.width[m] != 0:
		return false
	case s.width[m] > 2 || s.width[d] > 2 || s.width[y] == 1 || s.width[y] == 0:
		return false
	case s.width[0] == 4 || s.width[2] == 4:
		return s.width[y] == 4
	}
	return true
}

// dayNumber counts days since 1970-01-01.
func dayNumber(year, month, day int) (int, bool) {
	if month < 1 || month > 12 || day < 1 || day > 31 || year < 1900 || year > 2200 {
		return 0, false
	}
	t := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	return int(t.Unix() / secondsPerDay), t.Day() == day
}

// clockS gives the seconds of the written time, as hours first or, for two
// fields, as minutes and seconds.
func (s *stamp) clockS(minutesFirst bool) (whole int, fraction float64) {
	h := s.clock[0]
	switch {
	case s.half == 'p' && h < 12:
		h += 12
	case s.half == 'a' && h == 12:
		h = 0
	}
	switch {
	case s.clockFields == 3:
		return h*3600 + s.clock[1]*60 + s.clock[2] - s.zoneS, s.fraction
	case minutesFirst:
		return h*60 + s.clock[1], s.fraction
	}
	return h*3600 + s.clock[1]*60 - s.zoneS, s.fraction * 60
}
