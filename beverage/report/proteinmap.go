package report

import (
	"math"
	"slices"
	"strings"

	"posset/beverage"
)

// levelMarks stand before the letters of a cell, beside its colour.
var levelMarks = map[beverage.Level]string{beverage.Stop: "!!", beverage.Review: "!"}

// levelTones are the tones of a cell by its gravest finding.
var levelTones = map[beverage.Level]int{beverage.Note: 1, beverage.Review: 2, beverage.Stop: 3}

var toneNames = []string{"no mark: no finding here, which clears nothing", "no mark, letters: notes alone", "!: a review, its letters first", "!!: a stop, its letters first"}

const (
	untoldSign = "?"
	untoldName = "cannot tell: something lies outside the range of every source that was read"
)

// addProteinMap appends the map of the protein findings, where one was asked for.
func (d *Doc) addProteinMap(m *beverage.ProteinMap, u Units) {
	if m == nil {
		return
	}
	y := newRows(m, u)
	legend := "Letters are findings, capitals those of the gravest level of the place: " + signWords(m) + ". !! a stop, ! a review; - none, which clears nothing; " +
		untoldSign + " " + untoldName + "; " + hereSign + " the place nearest to the drink; " + moreSign + " more letters than fit: --format csv or json holds all."
	d.add("Findings over pH and "+m.Y.Name, Para(mapAbout(m)), mapPicture(m, y), Para(legend))
	d.add("At every place of the map", everywhereItems(m))
	d.add("What cannot be told on the map, and where", untoldItems(m, y))
	d.add("Published windows that speak on the map", listOf(m.Sources))
	d.add("How the map was made", listOf(append([]string{"each place is worked out by the rules of the findings themselves, its pH over the whole width of its cell; everything else is as the spec states it"}, m.Notes...)))
}

func mapAbout(m *beverage.ProteinMap) string {
	text := "What the protein findings say at each pH and " + m.Y.Name + ", " + m.Heat + "."
	if len(m.Everywhere) > 0 {
		text += " What is found at every place stands apart."
	}
	return text
}

func signWords(m *beverage.ProteinMap) string {
	words := each(m.Signs, func(s beverage.MapSign) string { return s.Letter + " " + s.ID })
	if len(words) == 0 {
		return "none is raised"
	}
	return strings.Join(words, ", ")
}

// rows is the second axis in the reader's units.
type rows struct {
	title string
	unit  string
	of    func(v float64) float64
}

func newRows(m *beverage.ProteinMap, u Units) rows {
	r := rows{title: join(", ", m.Y.Name, m.Y.Unit), unit: m.Y.Unit, of: func(v float64) float64 { return v }}
	if t := temperature.in(u); m.Y.Unit == temperature.metric.unit {
		r.title, r.unit, r.of = m.Y.Name+", "+t.unit, t.unit, func(v float64) float64 { return *t.of(&v) }
	}
	return r
}

// nearest is the cell nearest to the drink, or -1.
func nearest(m *beverage.ProteinMap) int {
	if m.Drink.X == nil || m.Drink.Y == nil {
		return -1
	}
	best, off := -1, math.Inf(1)
	for i, c := range m.Cells {
		dx, dy := (c.X-*m.Drink.X)/m.X.Step, (c.Y-*m.Drink.Y)/m.Y.Step
		if o := dx*dx + dy*dy; math.Abs(dx) <= 1 && math.Abs(dy) <= 1 && o < off {
			best, off = i, o
		}
	}
	return best
}

// cellLetters are the letters of a cell: capitals for its gravest level, small
// ones for the rest.
func cellLetters(m *beverage.ProteinMap, c beverage.MapCell) (grave, rest string) {
	for _, f := range c.Findings {
		i := slices.IndexFunc(m.Signs, func(s beverage.MapSign) bool { return s.ID == f.ID })
		if i < 0 || strings.Contains(grave, m.Signs[i].Letter) {
			continue
		}
		if f.Level == *c.Level {
			grave += m.Signs[i].Letter
		} else if l := strings.ToLower(m.Signs[i].Letter); !strings.Contains(rest, l) {
			rest += l
		}
	}
	return grave, rest
}

func cellMark(c beverage.MapCell) string {
	if c.Level == nil {
		return ""
	}
	return levelMarks[*c.Level]
}

// mapTable has a row for each pH and a column for each value of the second axis.
func mapTable(m *beverage.ProteinMap, y rows) Table {
	t := Table{Columns: columns("pH")}
	for i, v := range m.Y.Values {
		title := decimal(y.of(v), 0)
		if i == 0 {
			title += " " + y.unit
		}
		t.Columns = append(t.Columns, Column{Title: title})
	}
	t.Columns = append(t.Columns, Column{Title: "looks"})
	here, wide := nearest(m), len(m.X.Values)
	for x, pH := range m.X.Values {
		cells := []string{decimal(pH, 2)}
		for i := range m.Y.Values {
			cells = append(cells, cellWords(m, i*wide+x, here))
		}
		row := max(0, here) / wide
		t.Rows = append(t.Rows, append(cells, m.Cells[row*wide+x].Looks))
	}
	return t
}

func cellWords(m *beverage.ProteinMap, i, here int) string {
	c := m.Cells[i]
	grave, rest := cellLetters(m, c)
	text, tail := cellMark(c)+grave+rest, ""
	if text == "" {
		text = "-"
	}
	if len(c.CannotTell) > 0 {
		tail += untoldSign
	}
	if i == here {
		tail += hereSign
	}
	if room := widestCell - len(tail); len(text) > room {
		text = text[:room-len(moreSign)] + moreSign
	}
	return text + tail
}

// What a cell of the text may hold beside letters, and how long it may be for the
// table to fit a page.
const (
	hereSign   = "*"
	moreSign   = "+"
	widestCell = 7
)

func everywhereItems(m *beverage.ProteinMap) Items {
	var items Items
	for _, f := range m.Everywhere {
		items = append(items, Item{Mark: f.Level.String(), ID: f.ID})
	}
	return items
}

// untoldItems tell each reason once, with the pH and the rows at which it holds.
func untoldItems(m *beverage.ProteinMap, y rows) Items {
	var items Items
	for _, reason := range untoldReasons(m) {
		var held []beverage.MapCell
		for _, c := range m.Cells {
			if slices.Contains(c.CannotTell, reason) {
				held = append(held, c)
			}
		}
		where := "at every place"
		if len(held) < len(m.Cells) {
			low, high := ends(held, func(c beverage.MapCell) float64 { return c.X })
			from, to := ends(held, func(c beverage.MapCell) float64 { return c.Y })
			where = "pH " + reach(low, high, 2) + ", " + y.title + ": " + reach(y.of(from), y.of(to), 0)
		}
		items = append(items, Item{Title: sentences([]string{reason}), Text: where + "."})
	}
	return items
}

func reach(low, high float64, decimals int) string {
	if low == high {
		return decimal(low, decimals)
	}
	return decimal(low, decimals) + " to " + decimal(high, decimals)
}

func untoldReasons(m *beverage.ProteinMap) []string {
	var all []string
	for _, c := range m.Cells {
		for _, r := range c.CannotTell {
			if !slices.Contains(all, r) {
				all = append(all, r)
			}
		}
	}
	return all
}

func ends(cells []beverage.MapCell, of func(beverage.MapCell) float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range cells {
		low, high = math.Min(low, of(c)), math.Max(high, of(c))
	}
	return low, high
}

func (l *ledger) proteinMap(m *beverage.ProteinMap) {
	if m == nil {
		return
	}
	for _, f := range m.Everywhere {
		l.put(entry{part: "map, every place", name: f.ID, answer: f.Level.String()})
	}
	for _, c := range m.Cells {
		e := entry{part: "map", name: "pH " + decimal(c.X, 2) + ", " + m.Y.Name + " " + decimal(c.Y, 0) + " " + m.Y.Unit, answer: "no finding", value: numeral(c.Denatured)}
		if c.Level != nil {
			e.answer = c.Level.String()
		}
		ids := each(c.Findings, func(f beverage.MapFinding) string { return join(" ", f.Level.String(), f.ID, f.Window) })
		e.text = join("; ", "looks "+c.Looks, strings.Join(ids, "; "), join(": ", cannotTell(c), strings.Join(c.CannotTell, "; ")))
		l.put(e)
	}
}

func cannotTell(c beverage.MapCell) string {
	if len(c.CannotTell) == 0 {
		return ""
	}
	return beverage.CannotTell.String()
}
