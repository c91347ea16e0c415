package report

import (
	"slices"
	"strconv"

	"posset/beverage"
	"posset/beverage/report/chart"
	"posset/beverage/sweep"
)

// The tones and hatches of what is open at a point, the graver the darker.
const (
	noteTone   = 1
	reviewTone = 2
	stopTone   = 3

	stopHatch   = chart.Crossed
	reviewHatch = chart.Upward
	noteHatch   = chart.Level
)

// fieldHigh is the height of a field of a map that has room for a letter, and
// mapHigh that of a map of many.
const (
	fieldHigh = 26.0
	mapHigh   = 400.0
)

// sweepPicture draws what moves: a map over two inputs, bands over one.
func sweepPicture(r *sweep.Result, u Units) Picture {
	switch {
	case len(r.Points) == 0 || len(r.Inputs) == 0:
		return Picture{}
	case len(r.Inputs) > 1:
		return sweptMap(r)
	}
	return sweptBands(r, u)
}

// sweptMap has a field a point: its letter is the class, its tone and its hatch
// the gravest that is open.
func sweptMap(r *sweep.Result) Picture {
	first, second := r.Inputs[0], r.Inputs[1]
	x, y := mapAxis(first), mapAxis(second)
	f := &chart.Field{XStep: stepOf(first), YStep: stepOf(second), Tones: tonesIn(r), Large: true}
	if f.Tones[stopTone] != "" {
		f.Hatched = "hatched: a stop is open"
	}
	for _, p := range r.Points {
		f.Cells = append(f.Cells, chart.Cell{X: p.At[0], Y: p.At[1], Tone: toneOf(p), Hatched: len(p.Stops) > 0, Mark: classCell(p)})
	}
	f.Signs = classSigns(r)
	panel := chart.Panel{Y: y, Field: f, Height: min(mapHigh, fieldHigh*float64(max(len(second.Values), 6)))}
	return Picture{Data: classMap(r), Chart: chart.Chart{Title: "Class and what is open over " + first.Key + " and " + second.Key,
		About: "Each field is one assessment, at the values of its middle. A line parts what differs; it runs half-way between two values that were tried, and the true place is somewhere between them.",
		X:     x, Panels: []chart.Panel{panel}}}
}

// tonesIn are the words for the tones of a map.
func tonesIn(r *sweep.Result) []string {
	words := make([]string, stopTone+1)
	for _, p := range r.Points {
		t := toneOf(p)
		words[t] = map[int]string{0: "nothing at stop or review", reviewTone: "a review is open", stopTone: "a stop is open"}[t]
	}
	return words
}

// stepOf is from value to value of an input.
func stepOf(in sweep.InputRange) float64 { return in.Values[1] - in.Values[0] }

// mapAxis reaches half a step beyond the ends, so that every field is whole.
func mapAxis(in sweep.InputRange) chart.Axis {
	half := stepOf(in) / 2
	return chart.Axis{Title: inputTitle(in), Low: in.Values[0] - half, High: in.Values[len(in.Values)-1] + half}
}

func toneOf(p sweep.Point) int {
	switch {
	case len(p.Stops) > 0:
		return stopTone
	case len(p.Reviews) > 0:
		return reviewTone
	}
	return 0
}

// classCell is a point of a map in a letter, with a mark where there is a stop.
func classCell(p sweep.Point) string {
	if len(p.Stops) > 0 {
		return classLetters[p.Class] + "!"
	}
	return classLetters[p.Class]
}

func classSigns(r *sweep.Result) []chart.Mark {
	var signs []chart.Mark
	for _, c := range classesIn(r) {
		signs = append(signs, chart.Mark{Letter: classLetters[c], Name: c.String()})
	}
	if slices.ContainsFunc(r.Points, func(p sweep.Point) bool { return len(p.Stops) > 0 }) {
		signs = append(signs, chart.Mark{Letter: "!", Name: "beside a letter: a stop"})
	}
	return signs
}

func classesIn(r *sweep.Result) []beverage.Class {
	var in []beverage.Class
	for _, p := range r.Points {
		if !slices.Contains(in, p.Class) {
			in = append(in, p.Class)
		}
	}
	return in
}

// mostBands is how many findings have a band of their own.
const mostBands = 14

// sweptBands draws, over one input, the class, each finding that a stop or a
// change is of, and the figures that move.
func sweptBands(r *sweep.Result, u Units) Picture {
	in := r.Inputs[0]
	values := in.Values
	c := chart.Chart{Title: "What moves along " + in.Key, X: chart.Axis{Title: inputTitle(in), Low: values[0], High: values[len(values)-1]}}
	lanes := []chart.Lane{classLane(r)}
	ids, left := bandIDs(r)
	for _, id := range ids {
		lanes = append(lanes, findingLane(r, id))
	}
	c.Panels = append([]chart.Panel{{Y: chart.Axis{Title: "class, and what is open"}, Lanes: lanes}}, movingPanels(r, u)...)
	c.About = "Letters tell the class, hatches the level of each finding; a band ends half-way between two values that were tried, and the true place is somewhere between them. Reviews and notes that are open all along are left out."
	if left > 0 {
		c.About += " " + counted(left, "further finding") + " that change have no band: see what changes, and where."
	}
	return Picture{Chart: c, Data: pointTable(r, u)}
}

// bandIDs are the findings worth a band: every stop, and whatever changes.
func bandIDs(r *sweep.Result) (ids []string, left int) {
	take := func(list []string, want func(id string) bool) {
		for _, id := range list {
			if want(id) && !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	for _, p := range r.Points {
		take(p.Stops, func(string) bool { return true })
	}
	changes := func(id string) bool {
		return slices.ContainsFunc(r.Changes, func(c sweep.Change) bool { return c.What == id })
	}
	for _, p := range r.Points {
		take(p.Reviews, changes)
	}
	for _, p := range r.Points {
		take(p.Notes, changes)
	}
	if left = len(ids) - mostBands; left > 0 {
		return ids[:mostBands], left
	}
	return ids, 0
}

// band is a run of points that are alike, from half-way before to half-way after.
type band struct {
	from, to float64
	first    int
}

func bandsOf(r *sweep.Result, key func(p sweep.Point) string) []band {
	var out []band
	for i, p := range r.Points {
		end := p.At[0]
		if i+1 < len(r.Points) {
			end = (p.At[0] + r.Points[i+1].At[0]) / 2
		}
		if i > 0 && key(p) == key(r.Points[i-1]) {
			out[len(out)-1].to = end
			continue
		}
		from := p.At[0]
		if i > 0 {
			from = out[len(out)-1].to
		}
		out = append(out, band{from, end, i})
	}
	return out
}

// classLane letters the classes; where two meet is told by the hatches of the
// bands below and by the table.
func classLane(r *sweep.Result) chart.Lane {
	lane := chart.Lane{}
	for _, b := range bandsOf(r, func(p sweep.Point) string { return p.Class.String() }) {
		p := r.Points[b.first]
		lane.Ends = append(lane.Ends, b.to)
		lane.Marks = append(lane.Marks, chart.Mark{Letter: classLetters[p.Class], Name: p.Class.String(), X: (b.from + b.to) / 2})
	}
	return lane
}

func findingLane(r *sweep.Result, id string) chart.Lane {
	lane := chart.Lane{Name: id}
	level := func(p sweep.Point) string { return strconv.Itoa(levelAt(p, id)) }
	for _, b := range bandsOf(r, level) {
		if h := levelAt(r.Points[b.first], id); h != chart.Blank {
			lane.Spans = append(lane.Spans, chart.Span{Name: hatchMeans[h], Hatch: h, From: b.from, To: b.to})
		}
	}
	return lane
}

var hatchMeans = map[int]string{stopHatch: "at stop", reviewHatch: "at review", noteHatch: "a note"}

func levelAt(p sweep.Point, id string) int {
	switch {
	case slices.Contains(p.Stops, id):
		return stopHatch
	case slices.Contains(p.Reviews, id):
		return reviewHatch
	case slices.Contains(p.Notes, id):
		return noteHatch
	}
	return chart.Blank
}

// moving is a figure of a point that may be worth a panel.
type moving struct {
	title  string
	curves []chart.Curve
}

// leastMove is the least change of a figure, as a share of it, that is drawn.
const leastMove = 1e-3

// mostMoving is how many panels of figures one picture has.
const mostMoving = 3

// movingPanels draw the figures that move along the input, other than the input.
func movingPanels(r *sweep.Result, u Units) []chart.Panel {
	curve := func(name string, style int, of func(p sweep.Point) *float64) chart.Curve {
		k := chart.Curve{Name: name, Style: style}
		for _, p := range r.Points {
			q := chart.Gap
			if v := of(p); v != nil {
				q = chart.Point{X: p.At[0], Y: *v}
			}
			k.Points = append(k.Points, q)
		}
		return k
	}
	g := gauge.in(u)
	all := []moving{
		{"pH", []chart.Curve{curve("pH", plainStyle, func(p sweep.Point) *float64 { return p.PH }), curve("its unfavourable end", doubtStyle, func(p sweep.Point) *float64 { return p.PHHigh })}},
		{"highest gauge pressure of the pack, " + g.unit, []chart.Curve{curve("high end, decides", doubtStyle, func(p sweep.Point) *float64 { return g.of(p.GaugeKPaHigh) })}},
		{unfoldedTitle, []chart.Curve{curve("middle of what is published", plainStyle, func(p sweep.Point) *float64 { return hundredfold(p.DenaturedFraction) })}},
		{"net charge of a molecule of the main protein", []chart.Curve{curve("net charge", plainStyle, func(p sweep.Point) *float64 { return p.NetCharge })}},
	}
	var panels []chart.Panel
	for _, m := range all {
		if r.Inputs[0].Key == "measured.ph" && m.title == "pH" || !moves(m.curves[len(m.curves)-1]) || len(panels) == mostMoving {
			continue
		}
		panels = append(panels, chart.Panel{Y: chart.Axis{Title: m.title}, Height: 120, Curves: m.curves})
	}
	return panels
}

func moves(k chart.Curve) bool {
	low, high, any := 0.0, 0.0, false
	for _, q := range k.Points {
		if !isFinite(q.Y) {
			continue
		}
		if !any {
			low, high, any = q.Y, q.Y, true
		}
		low, high = min(low, q.Y), max(high, q.Y)
	}
	return any && high-low > leastMove*max(high, -low)
}
