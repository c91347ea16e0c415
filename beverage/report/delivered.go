package report

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

// addDelivered appends what the records of a run show against the target.
func (d *Doc) addDelivered(l *beverage.Delivered, u Units) {
	if l == nil {
		return
	}
	d.add("Delivered lethality",
		Figures{{Name: "Target", Words: targetWords(l)}, {Name: "Outcome", Words: judged(l.Outcome)}},
		recordTable(l.Logs), probeTable(l.Logs, u), atMostItems(l.Logs, u), assumedNote(l.Logs), moreTable(l.Logs, u), logErrors(l.Logs), faultTable(l.Logs))
	d.addCourse(l.Logs, u)
	d.addTurning(l.Logs)
	d.addDepartures(l.Departures, nil, l.Dispositions, u)
	d.addRecordPictures(l.Logs, u)
}

// recordTable names the run that each record is of.
func recordTable(logs []beverage.LogResult) Table {
	t := Table{Columns: columns("log", "retort", "batch", "thermometers tested", "first reading", "last reading")}
	for _, l := range logs {
		if l.Error != nil {
			continue
		}
		start, end := "-", "-"
		if len(l.Probes) > 0 {
			start, end = orDash(l.Probes[0].Start), orDash(l.Probes[0].End)
		}
		t.Rows = append(t.Rows, []string{l.File, orDash(l.Retort), orDash(l.Batch), orDash(l.Calibrated), start, end})
	}
	return t
}

// probeTable has one row a probe. Values taken at their word stand beside what
// is credited; credit is rounded down.
func probeTable(logs []beverage.LogResult, u Units) Table {
	t := Table{Columns: numbers(columns("log", "probe", u.heading("coldest", temperature), u.heading("hottest", temperature),
		"at its word, min", "credited, min", "before cooling, min", "outcome"), 2, 7)}
	for _, l := range logs {
		for _, p := range l.Probes {
			t.Rows = append(t.Rows, []string{l.File, probeName(p), u.cell(temperature, p.MinC), u.cell(temperature, p.MaxC),
				u.cell(minutes, p.LethalityMinutes), credited(p.CreditedMinutes), credited(p.CreditedBeforeCoolingMn), outcomeCell(p.Outcome)})
		}
	}
	return withoutLog(t, logs)
}

// withoutLog drops the first column, the log's name, where there is one log.
func withoutLog(t Table, logs []beverage.LogResult) Table {
	if len(logs) != 1 {
		return t
	}
	t.Columns = t.Columns[1:]
	for i, r := range t.Rows {
		t.Rows[i] = r[1:]
	}
	return t
}

// probeName tells a probe's role where it is not plainly the product.
func probeName(p beverage.ProbeResult) string {
	switch {
	case p.Role != productRole:
		return p.Name + " (" + p.Role + ")"
	case p.RoleBasis == assumedRole:
		return p.Name + " (" + assumedRole + ")"
	}
	return p.Name
}

// The words of results for a column of the product, and for one that is only
// taken for it.
const (
	productRole = "product"
	assumedRole = "assumed"
)

func assumedNote(logs []beverage.LogResult) Para {
	for _, l := range logs {
		for _, p := range l.Probes {
			if p.RoleBasis == assumedRole {
				return "assumed: the heading tells nothing, so that the column counts as the product"
			}
		}
	}
	return ""
}

func outcomeCell(o *beverage.Outcome) string {
	if o == nil {
		return "-"
	}
	return o.String()
}

func roleWords(p beverage.ProbeResult) string {
	return join(", ", p.Role, p.RoleBasis)
}

// credited rounds down: no printed credit may reach a target that the value
// behind it does not.
func credited(v *float64) string {
	if v == nil {
		return "-"
	}
	d := minutes.metric.decimals
	if r := down(*v, d); r > 0 {
		return decimal(r, d)
	}
	return decimal(*v, d)
}

// moreTable has the further bases of each probe.
func moreTable(logs []beverage.LogResult, u Units) Table {
	const plainly = 7 // columns, without what the minutes are counted as
	t, asUnits := Table{Columns: numbers(columns("log", "probe", "basis", u.heading("Tref", temperature), u.heading("z", difference), "at its word, min", "credited, min", "counted as", "at its word", "credited"), 3, 9)}, false
	for _, l := range logs {
		for _, p := range l.Probes {
			for _, b := range p.More {
				asUnits = asUnits || b.Units != ""
				t.Rows = append(t.Rows, []string{l.File, p.Name, b.Basis, u.cell(temperature, &b.TrefC), u.cell(difference, &b.ZC),
					u.cell(minutes, b.LethalityMinutes), credited(b.CreditedMinutes), orDash(b.Units), u.cell(plain, b.Value), credited(b.CreditedValue)})
			}
		}
	}
	if !asUnits {
		t.Columns = t.Columns[:plainly]
		for i := range t.Rows {
			t.Rows[i] = t.Rows[i][:plainly]
		}
	}
	return withoutLog(t, logs)
}

func logErrors(logs []beverage.LogResult) Items {
	var items Items
	for _, l := range logs {
		if l.Error != nil {
			items = append(items, Item{Mark: "unusable", ID: l.File, Title: strings.TrimPrefix(*l.Error, l.File+": ")})
		}
	}
	return items
}

// mostFaultRows is how many faults a person is shown; JSON has them all.
const mostFaultRows = 40

func faultTable(logs []beverage.LogResult) Table {
	t := Table{Columns: columns("log", "probe", "fault", "row", "time", "what was read")}
	left := 0
	for _, l := range logs {
		for _, p := range l.Probes {
			for _, f := range p.Faults {
				if len(t.Rows) == mostFaultRows {
					left++
					continue
				}
				t.Rows = append(t.Rows, []string{l.File, p.Name, f.Kind, strconv.Itoa(f.Row), orDash(f.Time), f.Detail})
			}
		}
	}
	if left > 0 {
		t.Rows = append(t.Rows, []string{"", "", "", "", "", fmt.Sprintf("and %d more; --format json has all", left)})
	}
	return withoutLog(t, logs)
}

func (l *ledger) delivered(d *beverage.Delivered, u Units) {
	if d == nil {
		return
	}
	l.put(entry{part: "lethality", name: "target", answer: targetWords(d)})
	l.put(entry{part: "lethality", name: "outcome", answer: d.Outcome.String(), text: meetsNote(d.Outcome)})
	for _, log := range d.Logs {
		if log.Error != nil {
			l.put(entry{part: "log", name: log.File, answer: "unusable", text: *log.Error})
		}
		l.put(entry{part: "record", name: log.File, answer: join(", ", named("retort ", log.Retort), named("batch ", log.Batch)), text: named("thermometers tested ", log.Calibrated)})
		for _, x := range log.Turning {
			l.put(entry{part: "would change the answer", name: log.File, answer: x.What, text: x.Text})
		}
		for _, p := range log.Probes {
			l.probe(log.File+", "+p.Name, p)
		}
	}
}

func meetsNote(o beverage.Outcome) string {
	if o == beverage.Meets {
		return besideMeets
	}
	return ""
}

// probe writes what is credited as low, and the record's word as value.
func (l *ledger) probe(name string, p beverage.ProbeResult) {
	l.put(entry{part: "probe", name: name, answer: outcomeCell(p.Outcome), value: numeral(p.LethalityMinutes), low: numeral(p.CreditedMinutes),
		unit: "min", text: join(noteSeparator, roleWords(p), counted(len(p.Faults), "fault"))})
	for _, f := range p.Faults {
		l.put(entry{part: "fault", name: name, answer: f.Kind, value: strconv.Itoa(f.Row), unit: "row", text: join(": ", f.Time, f.Detail)})
	}
}
