package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
	"posset/beverage/sweep"
)

// How much of a sweep a reader is shown; csv and json hold all of it.
const (
	mostChanges    = 60
	mostPointRows  = 121
	mostMapColumns = 25
)

// Sweep is a drink over one or two varied inputs: first where anything changes.
func Sweep(r *sweep.Result, u Units) Doc {
	d := newDoc(r.Drink, sweepHeadline(r), r.Tool, r.Input, r.Cautions)
	d.add(sweepTitle(r), sweepPicture(r, u))
	d.add("What changes, and where", changeItems(r.Changes), more(len(r.Changes)-mostChanges, "change"), unchanged(r))
	d.add("How it was varied", rangeFigures(r.Inputs), listOf(r.Notes))
	d.addPoints(r, u)
	d.Sheet = pointSheet(r)
	return d
}

func sweepTitle(r *sweep.Result) string {
	if len(r.Inputs) > 1 {
		return "Class and what is open, over both inputs"
	}
	return "What moves along the input"
}

// addPoints lists the points, which a page has under its picture; csv has them all.
func (d *Doc) addPoints(r *sweep.Result, u Units) {
	if len(r.Inputs) < 2 {
		d.add("Points", Written{pointTable(r, u)}, more(len(r.Points)-mostPointRows, "point"))
		return
	}
	if len(r.Inputs[0].Values) <= mostMapColumns {
		d.add("Class over both inputs", Written{classMap(r)}, Written{mapLegend(r)})
	}
	d.add("Points", Para(counted(len(r.Points), "point")+", each in full: --format csv or json."))
}

func sweepHeadline(r *sweep.Result) string {
	stopped := 0
	for _, p := range r.Points {
		if len(p.Stops) > 0 {
			stopped++
		}
	}
	return fmt.Sprintf("%s, %s; stops at %d of them; %s", counted(len(r.Points), "point"), counted(len(r.Changes), "change"), stopped, NotARelease)
}

func more(n int, thing string) Para {
	if n <= 0 {
		return ""
	}
	return Para(fmt.Sprintf("And %s more: --format csv or json holds all.", counted(n, thing)))
}

// changeItems tell each change in the words "class: acidified -> undecided".
func changeItems(list []sweep.Change) Items {
	items := Items{}
	for _, c := range list[:min(len(list), mostChanges)] {
		text := fmt.Sprintf("between %s %s and %s", c.Along, sweptFigure(c.Low), sweptFigure(c.High))
		if c.With != nil {
			text += ", at " + c.With.Key + " " + sweptFigure(c.With.Low)
			if c.With.Low != c.With.High {
				text += " to " + sweptFigure(c.With.High)
			}
		}
		items = append(items, Item{ID: c.What, Title: orDash(c.From) + " -> " + orDash(c.To), Text: text})
	}
	return items
}

// unchanged says what stayed, where a reader would look for it.
func unchanged(r *sweep.Result) Para {
	if len(r.Points) == 0 || slices.ContainsFunc(r.Changes, func(c sweep.Change) bool { return c.What == "class" }) {
		return ""
	}
	return Para("The class is " + r.Points[0].Class.String() + " at every point along " + r.Inputs[0].Key + ".")
}

const sweptDigits = 4

func sweptFigure(v float64) string { return quantity.Number(v, sweptDigits) }

func rangeFigures(inputs []sweep.InputRange) Figures {
	fs := make(Figures, len(inputs))
	for i, in := range inputs {
		last := len(in.Values) - 1
		fs[i] = Figure{Name: in.Key, Words: fmt.Sprintf("%s to %s%s in %d steps", sweptFigure(in.Values[0]), sweptFigure(in.Values[last]), unitAfter(in.Unit), len(in.Values))}
	}
	return fs
}

// classLetters stand for the classes in the map.
var classLetters = map[beverage.Class]string{beverage.Acid: "a", beverage.Acidified: "d", beverage.Undecided: "u", beverage.LowAcid: "L", beverage.Outside: "o"}

// classMap has a column for each value of the first input, a row for each of the
// second; an exclamation mark stands where there is a stop.
func classMap(r *sweep.Result) Table {
	if len(r.Inputs) < 2 {
		return Table{}
	}
	first, second := r.Inputs[0].Values, r.Inputs[1].Values
	t := Table{Columns: columns(inputTitle(r.Inputs[1]))}
	for _, v := range first {
		t.Columns = append(t.Columns, Column{Title: sweptFigure(v)})
	}
	for row, v := range second {
		cells := []string{sweptFigure(v)}
		for col := range first {
			p := r.Points[col*len(second)+row]
			cells = append(cells, classCell(p))
		}
		t.Rows = append(t.Rows, cells)
	}
	return t
}

func mapLegend(r *sweep.Result) Para {
	return Para("Columns: " + inputTitle(r.Inputs[0]) + ". a acid, d acidified, u undecided, L low-acid, o outside; ! a stop.")
}

func inputTitle(in sweep.InputRange) string { return join(", ", in.Key, in.Unit) }

func pointTable(r *sweep.Result, u Units) Table {
	var titles []string
	for _, in := range r.Inputs {
		titles = append(titles, inputTitle(in))
	}
	titles = append(titles, "class", "pH", "stops", "reviews", "protein flags", "unfolded, %", u.heading("pack", gauge), "routes that fit")
	at := len(r.Inputs)
	t := Table{Columns: numbers(columns(titles...), at+1, len(titles))}
	for _, p := range r.Points[:min(len(r.Points), mostPointRows)] {
		var row []string
		for _, v := range p.At {
			row = append(row, sweptFigure(v))
		}
		t.Rows = append(t.Rows, append(row, p.Class.String(), phSpan(p), strconv.Itoa(len(p.Stops)), strconv.Itoa(len(p.Reviews)), strconv.Itoa(len(p.ProteinFlags)),
			u.cell(percent, hundredfold(p.DenaturedFraction)), packCell(p, u), strconv.Itoa(len(routesAt(p, beverage.Fits)))))
	}
	return t
}

func packCell(p sweep.Point, u Units) string {
	if p.LiquidFull {
		return "full"
	}
	return u.cell(gauge, p.GaugeKPaHigh)
}

func phSpan(p sweep.Point) string {
	if p.PH == nil || p.PHLow == nil || p.PHHigh == nil {
		return "-"
	}
	return fixed(down(*p.PHLow, 2), 2) + " to " + fixed(up(*p.PHHigh, 2), 2)
}

func routesAt(p sweep.Point, outcome beverage.Fit) []string {
	names := []string{}
	for _, r := range p.Routes {
		if r.Outcome == outcome {
			names = append(names, string(r.Route))
		}
	}
	return names
}

// pointSheet has one row a point, with everything that was worked out at it.
func pointSheet(r *sweep.Result) Table {
	titles := []string{"file", "drink"}
	for _, in := range r.Inputs {
		titles = append(titles, inputTitle(in))
	}
	t := Table{Columns: columns(append(titles, "class", "ph", "ph_low", "ph_high", "ph_basis", "stops", "reviews", "notes", "protein_flags", "protein_g_per_l",
		"net_charge", "denatured_fraction", "gauge_kpa_high", "liquid_full", "needs", "routes_fit", "routes_cannot_tell", "routes_ruled_out")...)}
	for _, p := range r.Points {
		row := []string{r.Input.File, r.Drink}
		for _, v := range p.At {
			row = append(row, significant(v))
		}
		list := func(items []string) string { return strings.Join(items, "; ") }
		t.Rows = append(t.Rows, append(row, p.Class.String(), numeral(p.PH), numeral(p.PHLow), numeral(p.PHHigh), string(p.PHBasis), list(p.Stops), list(p.Reviews), list(p.Notes),
			list(p.ProteinFlags), numeral(p.ProteinGPerL), numeral(p.NetCharge), numeral(p.DenaturedFraction), numeral(p.GaugeKPaHigh), strconv.FormatBool(p.LiquidFull), p.Needs,
			list(routesAt(p, beverage.Fits)), list(routesAt(p, beverage.FitUnknown)), list(routesAt(p, beverage.DoesNotFit))))
	}
	return t
}
