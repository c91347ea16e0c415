package logfile

import (
	"fmt"
	"time"
)

// findDateOrder settles which field of the dates is the day: declared, told by
// the dates themselves, or by the dot that only day-first dates carry. It never
// guesses.
func findDateOrder(file string, t *table, dates timeColumn, f timeForm, cols []timeColumn, declared string) (dateOrder, string, error) {
	possible := possibleOrders(dates.stamps)
	if len(possible) > 1 {
		possible = possibleOrders(append(dates.stamps, t.moreStamps(f.a)...))
	}
	if declared != "" {
		for _, o := range possible {
			if string(o) == declared {
				return o, "declared", nil
			}
		}
		return "", "", fmt.Errorf("%s:%d: %q cannot be a date in the order %s", file, t.first+1, t.row(t.first)[f.a], declared)
	}
	if len(possible) == 0 {
		return "", "", fmt.Errorf("%s:%d: the dates, %q first, do not agree on one order of day, month and year", file, t.first+1, t.row(t.first)[f.a])
	}
	if len(possible) == 1 {
		return possible[0], "dates", nil
	}
	if o, ok := dayFirstByDot(dates.stamps, possible); ok {
		return o, "convention", nil
	}
	return "", "", ambiguousDate(file, t, f, dates.stamps[0], possible)
}

// possibleOrders gives the orders under which every sniffed date exists.
func possibleOrders(stamps []stamp) []dateOrder {
	var possible []dateOrder
	for _, o := range dateOrders {
		if mostDatesExist(stamps, o) {
			possible = append(possible, o)
		}
	}
	if len(possible) > 1 && allNamed(stamps) {
		possible = keepNamed(possible)
	}
	return possible
}

// mostDatesExist lets one date in a hundred be damaged.
func mostDatesExist(stamps []stamp, o dateOrder) bool {
	wrong := 0
	for i := range stamps {
		if _, ok := stamps[i].day(o); !ok {
			wrong++
		}
	}
	return wrong*100 <= len(stamps) && wrong < len(stamps)
}

func allNamed(stamps []stamp) bool {
	for _, s := range stamps {
		if s.width[0] != 0 && s.width[1] != 0 {
			return false
		}
	}
	return len(stamps) > 0
}

// keepNamed reads 14-Mar-26 as day first: with the month named no one writes
// the year before it in two digits.
func keepNamed(possible []dateOrder) []dateOrder {
	for _, o := range possible {
		if o == dayFirst {
			return []dateOrder{dayFirst}
		}
	}
	return possible
}

func dayFirstByDot(stamps []stamp, possible []dateOrder) (dateOrder, bool) {
	for _, s := range stamps {
		if s.dateSep != '.' {
			return "", false
		}
	}
	for _, o := range possible {
		if o == dayFirst {
			return o, true
		}
	}
	return "", false
}

func ambiguousDate(file string, t *table, f timeForm, s stamp, possible []dateOrder) error {
	a, _ := s.day(possible[0])
	b, _ := s.day(possible[1])
	show := func(day int) string { return time.Unix(int64(day)*secondsPerDay, 0).UTC().Format("2 January 2006") }
	return fmt.Errorf("%s:%d: %q can be %s or %s; say which with --dates %s or --dates %s", file, t.first+1,
		t.row(t.first)[f.a], show(a), show(b), possible[0], possible[1])
}
