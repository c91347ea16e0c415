package report

import (
	"fmt"
	"strconv"

	"posset/beverage"
)

func departuresOf(logs []beverage.LogResult) []beverage.Departure {
	var list []beverage.Departure
	for _, l := range logs {
		list = append(list, l.Departures...)
	}
	return list
}

const departureMeans = `each departure stands by itself. "at worst" counts the whole of it at the coldest that medium or container had in it, "without" counts nothing of it; neither releases a lot`

// addDepartures is the worksheet of what left the limits of the scheduled
// process, and what the texts ask for then.
func (d *Doc) addDepartures(list []beverage.Departure, limits []string, ways []beverage.Disposition, u Units) {
	if len(list) == 0 {
		if len(limits) > 0 {
			d.add("Departures from the limits", Para("none found in "+listed(limits)+", the tolerance counted; whether the limits are those of the scheduled process was not judged"))
		}
		return
	}
	d.add("Departures from the limits", departureTable(list, u), creditTable(list), departureNotes(list), Para(departureMeans))
	d.add("What the texts ask for then", dispositionItems(ways))
}

// departed tells in a headline how many departures there are.
func departed(logs []beverage.LogResult) string {
	n := 0
	for _, d := range departuresOf(logs) {
		if d.Limit != "" {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return "; " + counted(n, "departure") + " from the limits"
}

// mostDepartures is how many a person is shown; JSON has them all.
const mostDepartures = 60

func departureTable(list []beverage.Departure, u Units) Table {
	t := Table{Columns: numbers(columns("no", "log", "limit", "column", "start, min", "end, min", "length, min", "worst", "outside by", "outcome"), 4, 9)}
	for i, d := range list {
		if i == mostDepartures {
			t.Rows = append(t.Rows, []string{"", "", fmt.Sprintf("and %d more; --format json has all", len(list)-i), "", "", "", "", "", "", ""})
			break
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), orDash(d.File), join(" ", d.What, d.Limit), orDash(d.Column), minuteOf(d.StartS), minuteOf(d.EndS), minuteOf(d.LengthS),
			figureIn(u, d.Worst, d.Unit, false), figureIn(u, d.Depth, d.Unit, true), d.Outcome.String()})
	}
	return t
}

func minuteOf(s *float64) string {
	if s == nil {
		return "-"
	}
	return decimal(*s/60, minutes.metric.decimals)
}

// figureIn shows a figure of a limit in the reader's units.
func figureIn(u Units, v *float64, unit string, apart bool) string {
	switch {
	case v == nil:
		return "-"
	case unit == "C" && apart:
		return u.text(difference, *v)
	case unit == "C":
		return u.text(temperature, *v)
	}
	return decimal(*v, plain.metric.decimals) + unitAfter(unit)
}

func creditTable(list []beverage.Departure) Table {
	t := Table{Columns: numbers(columns("departure", "container", "as read, min", "at worst, min", "without, min", "at worst"), 2, 5)}
	for i, d := range list {
		if i == mostDepartures {
			break
		}
		for _, c := range d.Credits {
			t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), c.Probe, credited(c.Credited), credited(c.AtWorst), credited(c.Without), outcomeCell(c.Outcome)})
		}
	}
	return t
}

func departureNotes(list []beverage.Departure) Items {
	var items Items
	for i, d := range list {
		if i == mostDepartures {
			break
		}
		items = append(items, Item{ID: strconv.Itoa(i + 1), Title: d.Why})
	}
	return items
}

func dispositionItems(ways []beverage.Disposition) Items {
	var items Items
	for _, w := range ways {
		items = append(items, Item{Title: w.Text, Foot: join(noteSeparator, string(w.Market), w.Source, doubt(w.Source, w.Basis))})
	}
	return append(items, Item{Title: "No text on departures is held for other markets; ask the authority of the market. Until then the lot is set aside."})
}
