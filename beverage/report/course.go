package report

import (
	"fmt"
	"strconv"

	"posset/beverage"
)

// few tells whether logs are few enough to tell each one's course to a person.
func few(logs []beverage.LogResult) bool { return len(logs) <= mostInputs }

const fewMeans = "course, spread and what would change the answer are told of %d logs at most; --format json has them of all"

// addCourse tells how heating, hold and cooling went.
func (d *Doc) addCourse(logs []beverage.LogResult, u Units) {
	if !few(logs) {
		d.add("Heating, hold and cooling", Para(fmt.Sprintf(fewMeans, mostInputs)))
		return
	}
	d.add("Heating, hold and cooling", courseTable(logs, u), spreadItems(logs), Para(courseMeans(logs)))
	d.add("Time above a temperature", aboveTable(logs, u))
}

// courseMeans is empty where no probe has a course.
func courseMeans(logs []beverage.LogResult) string {
	for _, l := range logs {
		for _, p := range l.Probes {
			if p.PeakS != nil {
				return "times since the first row; the hold as found, the longest stretch near the peak; the last three columns part the credit, in minutes, by where it came from"
			}
		}
	}
	return ""
}

func courseTable(logs []beverage.LogResult, u Units) Table {
	t := Table{Columns: numbers(columns("log", "probe", u.heading("peak", temperature), "peak at, min", "come-up, min", "hold from, min", "hold, min", "of credit: heating", "hold", "cooling"), 2, 10)}
	for _, l := range logs {
		for _, p := range l.Probes {
			if p.PeakS == nil {
				continue
			}
			var comeUp, from, length *float64
			if h := p.Hold; h != nil {
				comeUp, from, length = h.ComeUpS, &h.StartS, &h.LengthS
			}
			t.Rows = append(t.Rows, []string{l.File, probeName(p), u.cell(temperature, p.MaxC), minuteOf(p.PeakS), minuteOf(comeUp), minuteOf(from), minuteOf(length),
				credited(p.CreditedHeatingMins), credited(p.CreditedHoldMinutes), credited(p.CreditedCoolingMins)})
		}
	}
	return withoutLog(t, logs)
}

func spreadItems(logs []beverage.LogResult) Items {
	var items Items
	for _, l := range logs {
		s := l.Spread
		if s == nil {
			continue
		}
		items = append(items, Item{ID: l.File, Title: fmt.Sprintf("coldest of the product probes %s, credited %s min; warmest %s, %s min: %s min apart. The coldest decides", s.Coldest, credited(&s.ColdestMinutes), s.Warmest, credited(&s.WarmestMinutes), decimal(s.Minutes, minutes.metric.decimals))})
	}
	return items
}

func aboveTable(logs []beverage.LogResult, u Units) Table {
	t := Table{Columns: numbers(columns("log", "probe", u.heading("at or above", temperature), "in all, min", "longest, min", "longest credited, min"), 2, 6)}
	for _, l := range logs {
		for _, p := range l.Probes {
			for _, a := range p.Above {
				at := a.AtC
				t.Rows = append(t.Rows, []string{l.File, probeName(p), u.cell(temperature, &at), minuteOf(a.TotalS), minuteOf(a.LongestS), creditedMinuteOf(a.LongestCreditedS)})
			}
		}
	}
	return withoutLog(t, logs)
}

func creditedMinuteOf(s *float64) string {
	if s == nil {
		return "-"
	}
	m := *s / 60
	return credited(&m)
}

// addTurning tells what would change the answer, log by log.
func (d *Doc) addTurning(logs []beverage.LogResult) {
	if !few(logs) {
		return
	}
	for _, l := range logs {
		var items Items
		for _, x := range l.Turning {
			i := Item{ID: x.What, Title: x.Text}
			if x.Turns {
				i.Mark = "turns it"
			}
			items = append(items, i)
		}
		name := "What would change the answer"
		if len(logs) > 1 {
			name += ", " + l.File
		}
		d.add(name, items)
	}
}

// addUnderstood names the columns that were left out, and where it is asked for
// tells what each file was taken for.
func (d *Doc) addUnderstood(r *beverage.LethalityResult) {
	d.add("Columns left out", leftOutTable(r.Logs))
	if !r.ShowUnderstood {
		return
	}
	for _, l := range r.Logs {
		if l.Understood == nil {
			continue
		}
		d.add("What "+l.File+" was taken for", understoodFigures(l), rolesTable(l))
	}
}

// mostLeftOut is how many columns left out a person is shown; JSON has them all.
const mostLeftOut = 40

func leftOutTable(logs []beverage.LogResult) Table {
	t, left := Table{Columns: columns("log", "column", "why")}, 0
	for _, l := range logs {
		if l.Understood == nil {
			continue
		}
		for _, x := range l.Understood.LeftOut {
			if len(t.Rows) == mostLeftOut {
				left++
				continue
			}
			t.Rows = append(t.Rows, []string{l.File, x.Name, x.Reason})
		}
	}
	if left > 0 {
		t.Rows = append(t.Rows, []string{"", fmt.Sprintf("and %d more; --format json has all", left), ""})
	}
	return withoutLog(t, logs)
}

func understoodFigures(l beverage.LogResult) Figures {
	x := l.Understood
	return Figures{
		{Name: "File", Words: join(", ", x.Format, named("sheet ", x.Sheet), x.Encoding, named("parted by ", x.Separator), named("decimal ", x.DecimalMark))},
		{Name: "Headings", Words: lineOf(x.HeadingRow)},
		{Name: "Readings", Words: counted(x.Rows, "row") + " from " + lineOf(x.FirstRow)},
		{Name: "Rows without a time", Words: skippedWords(x)},
		{Name: "Time", Words: join("; ", x.TimeForm, dateWords(x), map[bool]string{true: "newest first, turned round"}[x.NewestFirst])},
		{Name: "A row every", Words: significant(x.IntervalS) + " s"},
		{Name: "Unit", Words: join(", by ", x.Unit, x.UnitBasis)},
		{Name: "Finest step", Words: significant(x.ResolutionC) + " C°"},
	}
}

func named(before, s string) string {
	if s == "" {
		return ""
	}
	return before + s
}

func lineOf(n int) string {
	if n == 0 {
		return "none"
	}
	return "line " + strconv.Itoa(n)
}

func skippedWords(x *beverage.Understood) string {
	if x.SkippedRows == 0 {
		return "none"
	}
	return strconv.Itoa(x.SkippedRows) + ", the first in " + lineOf(x.FirstSkipped)
}

func dateWords(x *beverage.Understood) string {
	if x.DateOrder == "" {
		return ""
	}
	return "dates " + x.DateOrder + ", by " + x.DateBasis
}

func rolesTable(l beverage.LogResult) Table {
	t := Table{Columns: columns("column", "role", "told by")}
	for _, p := range l.Probes {
		t.Rows = append(t.Rows, []string{p.Name, p.Role, p.RoleBasis})
	}
	return t
}
