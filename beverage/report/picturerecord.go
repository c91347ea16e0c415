package report

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"posset/beverage"
	"posset/beverage/report/chart"
)

// mostPictures is how many records of one result are drawn: a page of more
// would be too heavy to open.
const mostPictures = 12

// addRecordPictures appends a picture of each record that was read for one.
func (d *Doc) addRecordPictures(logs []beverage.LogResult, u Units) {
	var pictures []Picture
	var files []string
	for _, l := range logs {
		if p, ok := RecordPicture(l, u); ok {
			pictures, files = append(pictures, p), append(files, l.File)
		}
	}
	if n := len(pictures) - mostPictures; n > 0 {
		pictures = pictures[:mostPictures]
		pictures[mostPictures-1].Chart.About += fmt.Sprintf(" The records of %s are not drawn; posset lethality draws one by itself.", counted(n, "further file"))
	}
	for i, p := range pictures {
		d.add("Picture of "+files[i], p)
	}
}

// recordView is one record on the way to its picture.
type recordView struct {
	log    beverage.LogResult
	probes []beverage.ProbeResult // those drawn, the one that decides first
	axisS  float64                // seconds in one unit of the axis of time
	unit   string
	u      Units
}

// RecordPicture is temperature over time, what is not credited, and lethality
// building up; false where the record was not read for a picture.
func RecordPicture(l beverage.LogResult, u Units) (Picture, bool) {
	traced := slices.DeleteFunc(slices.Clone(l.Probes), func(p beverage.ProbeResult) bool { return p.Trace == nil || len(p.Trace.Slots) == 0 })
	if len(traced) == 0 {
		return Picture{}, false
	}
	slices.SortStableFunc(traced, func(a, b beverage.ProbeResult) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(creditOf(a), creditOf(b)))
	})
	v := recordView{log: l, probes: traced[:min(len(traced), chart.Styles)], u: u}
	v.axisS, v.unit = timeUnit(traced)
	c := chart.Chart{Title: "Record of " + l.File, X: chart.Axis{Title: "time from the first row, " + v.unit}, Panels: []chart.Panel{v.temperatures()}}
	faults, lettered := v.faultLanes()
	if len(faults.Lanes) > 0 {
		c.Panels = append(c.Panels, faults)
	}
	if p := v.building(); len(p.Curves) > 0 {
		c.Panels = append(c.Panels, p)
	}
	c.About = v.about(len(traced), lettered)
	return Picture{Chart: c, Data: v.table()}, true
}

// rank puts the product before what heats it.
func rank(p beverage.ProbeResult) int {
	if p.Role == productRole {
		return 0
	}
	return 1
}

// creditOf puts a product of unknown credit first: it decides.
func creditOf(p beverage.ProbeResult) float64 {
	if p.CreditedMinutes == nil {
		return math.Inf(-1)
	}
	return *p.CreditedMinutes
}

// timeUnit suits the unit of the axis to the longest record.
func timeUnit(ps []beverage.ProbeResult) (seconds float64, unit string) {
	longest := 0.0
	for _, p := range ps {
		longest = max(longest, p.Trace.Slots[len(p.Trace.Slots)-1].EndS)
	}
	switch {
	case longest <= 180:
		return 1, "s"
	case longest <= 10*3600:
		return 60, "min"
	}
	return 3600, "h"
}

func (v recordView) temperatures() chart.Panel {
	t := temperature.in(v.u)
	p := chart.Panel{Y: chart.Axis{Title: "temperature, " + t.unit}}
	for i, probe := range v.probes {
		p.Curves = append(p.Curves, chart.Curve{Name: v.name(i), Style: i, Points: v.readings(probe.Trace, t)})
	}
	if a := v.log.Aim; a != nil && a.StayC != nil && a.StayS != nil {
		at := *t.of(a.StayC)
		p.Levels = []chart.Line{{Label: fmt.Sprintf("%s %s for %s s", decimal(at, t.decimals), t.unit, decimal(*a.StayS, 0)), Name: "the target: one unbroken stay at or above this", At: at}}
	}
	return p
}

func (v recordView) name(i int) string {
	s := fmt.Sprintf("%d: %s", i+1, probeName(v.probes[i]))
	if a := v.log.Aim; i == 0 && rank(v.probes[0]) == 0 && (a == nil || a.StayC == nil) { // which probe stayed shortest is not known here
		s += ", decides"
	}
	return s
}

// readings are the coldest and the hottest of each slot, in the order of time.
func (v recordView) readings(t *beverage.Trace, unit shown) []chart.Point {
	var out []chart.Point
	last, hole := math.Inf(1), 0
	put := func(atS, tempC float64) {
		for hole < len(t.Holes) && t.Holes[hole].ToS <= atS {
			if t.Holes[hole].FromS >= last {
				out = append(out, chart.Gap)
			}
			hole++
		}
		out, last = append(out, chart.Point{X: atS / v.axisS, Y: *unit.of(&tempC)}), atS
	}
	for _, s := range t.Slots {
		a, b := [2]float64{s.LowS, s.LowC}, [2]float64{s.HighS, s.HighC}
		if a[0] > b[0] {
			a, b = b, a
		}
		put(a[0], a[1])
		if b[0] > a[0] {
			put(b[0], b[1])
		}
	}
	return out
}

// building is lethality as it builds up, against the target. It never stands
// above what is credited in the end.
func (v recordView) building() chart.Panel {
	a := v.log.Aim
	if a == nil {
		return chart.Panel{}
	}
	t, z := temperature.in(v.u), difference.in(v.u)
	p := chart.Panel{Height: 170, Y: chart.Axis{Title: fmt.Sprintf("credited, min at %s %s, z %s %s", decimal(*t.of(&a.TrefC), t.decimals), t.unit, decimal(*z.of(&a.ZC), z.decimals), z.unit)}}
	for i, probe := range v.probes {
		if probe.CreditedMinutes == nil {
			continue
		}
		k := chart.Curve{Style: i, Name: v.name(i)}
		k.Points = v.credit(probe.Trace, *probe.CreditedMinutes)
		p.Curves = append(p.Curves, k)
		if i == 0 && probe.LethalityMinutes != nil {
			p.Marks = []chart.Mark{{Letter: "W", Name: "the record at its word: " + decimal(*probe.LethalityMinutes, 2) + " min; credited: " + credited(probe.CreditedMinutes) + " min",
				X: k.Points[len(k.Points)-1].X, Y: *probe.LethalityMinutes}}
		}
	}
	if a.Minutes != nil {
		p.Levels = []chart.Line{{Label: "target " + decimal(*a.Minutes, 2) + " min", Name: "the target that was stated", At: *a.Minutes}}
	}
	return p
}

// credit is what was credited by the end of each slot; over a hole it stands.
func (v recordView) credit(t *beverage.Trace, most float64) []chart.Point {
	var out []chart.Point
	hole, before := 0, 0.0
	for _, s := range t.Slots {
		for ; hole < len(t.Holes) && t.Holes[hole].ToS <= s.EndS; hole++ {
			out = append(out, chart.Point{X: t.Holes[hole].ToS / v.axisS, Y: before})
		}
		before = min(s.CreditedMin, most)
		out = append(out, chart.Point{X: s.EndS / v.axisS, Y: before})
	}
	return out
}

// holeHatch and mediumHatch tell what is not credited for want of a reading
// from what never is.
const (
	holeHatch   = 0
	mediumHatch = 2
)

// laneMarksAcross is how many letters have room in a lane, side by side.
const laneMarksAcross = 40

// faultLanes is a row a probe: where nothing is credited, and where faults are.
func (v recordView) faultLanes() (chart.Panel, *lettering) {
	endS := 0.0
	for _, p := range v.probes {
		endS = max(endS, p.Trace.Slots[len(p.Trace.Slots)-1].EndS)
	}
	letters := &lettering{apartS: endS / laneMarksAcross, letter: map[string]string{}}
	p := chart.Panel{Y: chart.Axis{Title: "hatched: not credited; letters: faults"}}
	for i, probe := range v.probes {
		lane := chart.Lane{Label: fmt.Sprint(i + 1)}
		if rank(probe) > 0 {
			lane.Spans = []chart.Span{{Name: "not the product: never credited", Hatch: mediumHatch, To: endS / v.axisS}}
		}
		for _, h := range probe.Trace.Holes {
			lane.Spans = append(lane.Spans, chart.Span{Name: "no sound reading: nothing is credited", Hatch: holeHatch, From: h.FromS / v.axisS, To: h.ToS / v.axisS})
		}
		faults, left := placedFaults(probe)
		letters.left += left
		lane.Marks = letters.marks(faults, v.axisS)
		p.Lanes = append(p.Lanes, lane)
	}
	return p, letters
}

func (v recordView) about(traced int, letters *lettering) string {
	s := "Temperature of each probe over time"
	if v.log.Aim != nil {
		s += ", and lethality as it is credited: sensor tolerance taken off, nothing over a stretch without a sound reading"
	}
	s += ". The record begins at " + v.probes[0].Start + "."
	if n := traced - len(v.probes); n > 0 {
		s += fmt.Sprintf(" %s are not drawn: %d of the least credit and of the medium are.", counted(n, "further probe"), len(v.probes))
	}
	if len(letters.letter) == 0 && letters.left == 0 {
		s += " No fault was found in what is drawn."
	}
	if letters.left > 0 {
		s += fmt.Sprintf(" %s without a letter: see the table of faults.", counted(letters.left, "fault"))
	}
	return s
}

// table has a row a slot of time.
func (v recordView) table() Table {
	t := temperature.in(v.u)
	titles := []string{"from, " + v.unit}
	for i := range v.probes {
		titles = append(titles, v.name(i)+", "+t.unit)
	}
	titles = append(titles, "credited so far, min")
	out := Table{Columns: numbers(columns(titles...), 0, len(titles))}
	slotS := v.probes[0].Trace.SlotS
	rows := map[int][]string{}
	for i, p := range v.probes {
		for _, s := range p.Trace.Slots {
			n := int(s.EndS / slotS)
			row, ok := rows[n]
			if !ok {
				row = slices.Repeat([]string{"-"}, len(titles))
				row[0] = decimal(float64(n)*slotS/v.axisS, 1)
				rows[n] = row
			}
			row[i+1] = spanCell(t, s.LowC, s.HighC)
			if i == 0 && p.CreditedMinutes != nil {
				at := min(s.CreditedMin, *p.CreditedMinutes)
				row[len(row)-1] = credited(&at)
			}
		}
	}
	for _, n := range slices.Sorted(maps.Keys(rows)) {
		out.Rows = append(out.Rows, rows[n])
	}
	return out
}

// spanCell is the coldest and the hottest of a slot, once where they are alike.
func spanCell(t shown, lowC, highC float64) string {
	low, high := fixed(*t.of(&lowC), t.decimals), fixed(*t.of(&highC), t.decimals)
	if low == high {
		return low
	}
	return low + " to " + high
}
