package report

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"posset/beverage"
	"posset/beverage/report/chart"
)

// faultMark is a fault with its place on the axis of time, seconds.
type faultMark struct {
	atS  float64
	name string
}

// placedFaults are the faults of a probe that its own clock places. A fault of
// the file's order has a row and may have no time.
func placedFaults(p beverage.ProbeResult) (placed []faultMark, left int) {
	for _, f := range p.Faults {
		after, ok := secondsBetween(p.Start, f.Time)
		if !ok || p.Trace == nil {
			left++
			continue
		}
		placed = append(placed, faultMark{p.Trace.From + after, f.Kind + ", row " + strconv.Itoa(f.Row)})
	}
	return placed, left
}

// secondsBetween reads two moments as records are told, both in one form: a date
// with a time, a time of day with the number of its day, or seconds elapsed.
func secondsBetween(from, to string) (float64, bool) {
	for _, read := range []func(string) (float64, bool){elapsedS, datedS, ofDayS} {
		if a, ok := read(from); ok {
			b, ok := read(to)
			return b - a, ok
		}
	}
	return 0, false
}

func elapsedS(s string) (float64, bool) {
	n, ok := strings.CutSuffix(s, " s")
	v, err := strconv.ParseFloat(n, 64)
	return v, ok && err == nil && isFinite(v)
}

func datedS(s string) (float64, bool) {
	t, err := time.Parse("2006-01-02T15:04:05", s)
	return float64(t.UnixMilli()) / 1e3, err == nil
}

const secondsPerDay = 86400

func ofDayS(s string) (float64, bool) {
	clock, rest, later := strings.Cut(s, " (day ")
	day := 1
	if later {
		n, err := strconv.Atoi(strings.TrimSuffix(rest, ")"))
		if err != nil {
			return 0, false
		}
		day = n
	}
	t, err := time.Parse(time.TimeOnly, clock)
	midnight := time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
	return t.Sub(midnight).Seconds() + float64(day-1)*secondsPerDay, err == nil
}

// lettering gives letters to faults: those too near each other for two letters
// share one, and so do equal faults of several probes.
type lettering struct {
	apartS float64 // least between two letters
	letter map[string]string
	left   int // faults without a letter
}

// mostLetters and mostShared bound what a legend has to explain.
const (
	mostLetters = 26
	mostShared  = 3
)

func (l *lettering) marks(faults []faultMark, axis float64) []chart.Mark {
	var marks []chart.Mark
	for i := 0; i < len(faults); {
		end := i + 1
		for end < len(faults) && faults[end].atS-faults[i].atS < l.apartS {
			end++
		}
		group := faults[i:end]
		i = end
		name := sharedName(group)
		letter, ok := l.letter[name]
		if !ok && len(l.letter) == mostLetters {
			l.left += len(group)
			continue
		}
		if !ok {
			letter = string(rune('a' + len(l.letter)))
			l.letter[name] = letter
		}
		marks = append(marks, chart.Mark{Letter: letter, Name: name, X: group[0].atS / axis})
	}
	return marks
}

func sharedName(group []faultMark) string {
	var names []string
	for _, f := range group[:min(len(group), mostShared)] {
		names = append(names, f.name)
	}
	if n := len(group) - mostShared; n > 0 {
		names = append(names, fmt.Sprintf("and %d more", n))
	}
	return strings.Join(names, "; ")
}
