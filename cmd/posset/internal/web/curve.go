package web

import (
	"html/template"
	"math"
	"strconv"
	"strings"
	"time"

	"posset/beverage/report/chart"
	"posset/thermal/logfile"
)

// mostBins is how fine a record is drawn: about a bin a pixel.
const mostBins = 600

// trace is the readings of one probe in bins of equally many, of each the
// coldest and the hottest, so that neither a dip nor a peak is lost.
type trace struct {
	bins []bin
	each int // readings in a bin
	in   int // readings in the last one
}

// bin is readings next to each other; stepS is the longest step between two.
type bin struct{ fromS, toS, stepS, lowC, highC float64 }

func (t *trace) add(atS, tempC float64) {
	if len(t.bins) == 0 || t.in == t.each {
		if len(t.bins) == 2*mostBins {
			t.halve()
		}
		t.each = max(t.each, 1)
		t.bins, t.in = append(t.bins, bin{atS, atS, 0, tempC, tempC}), 1
		return
	}
	last := &t.bins[len(t.bins)-1]
	last.toS, last.stepS, last.lowC, last.highC = atS, max(last.stepS, atS-last.toS), min(last.lowC, tempC), max(last.highC, tempC)
	t.in++
}

// halve joins neighbours, so that memory does not grow with the record.
func (t *trace) halve() {
	for i := range mostBins {
		a, b := t.bins[2*i], t.bins[2*i+1]
		t.bins[i] = bin{a.fromS, b.toS, max(a.stepS, b.stepS, b.fromS-a.toS), min(a.lowC, b.lowC), max(a.highC, b.highC)}
	}
	t.bins, t.each = t.bins[:mostBins], t.each*2
}

// traces are those of all probes of a record.
type traces []trace

func (t *traces) add(probe int, timeS, tempC float64) {
	for probe >= len(*t) {
		*t = append(*t, trace{})
	}
	(*t)[probe].add(timeS, tempC)
}

// drawnCurve is the picture of a record.
type drawnCurve struct {
	SVG    template.HTML
	Legend []drawnEntry
	Left   int // probes that are not drawn
}

type drawnEntry struct {
	Swatch template.HTML
	Letter string
	Text   string
}

const secondsPerMinute = 60

// draw makes the picture, with an id of its own within the page; nil where there is nothing to draw. The package chart
// escapes every word that it is given.
func (t traces) draw(log *logfile.Log, id string) *drawnCurve {
	c := chart.Chart{Title: "Record of " + log.File, About: "Temperature of each probe over time; letters mark faults.", X: chart.Axis{Title: "time from the first row, min"}}
	p := chart.Panel{Y: chart.Axis{Title: "temperature, °C"}}
	left := 0
	for i := range log.Probes {
		switch {
		case i >= len(t) || len(t[i].bins) == 0:
		case len(p.Curves) == chart.Styles:
			left++
		default:
			p.Curves = append(p.Curves, chart.Curve{Name: log.Probes[i].Name + " (" + string(log.Probes[i].Role) + ")", Style: len(p.Curves), Points: t[i].points(log.Understood.IntervalS)})
			p.Marks = append(p.Marks, t[i].marks(log.Probes[i], len(p.Marks))...)
		}
	}
	c.Panels = []chart.Panel{p}
	if !c.Drawable() {
		return nil
	}
	d := &drawnCurve{SVG: template.HTML(c.SVG(id)), Left: left}
	for _, e := range c.Legend() {
		d.Legend = append(d.Legend, drawnEntry{template.HTML(e.Swatch), e.Letter, e.Text})
	}
	return d
}

// longestStep is how many intervals may lie between two readings before the
// line breaks: what nobody read is not drawn.
const longestStep = 1.5

func (t trace) points(intervalS float64) []chart.Point {
	var list []chart.Point
	for i, b := range t.bins {
		if i > 0 && intervalS > 0 && max(b.fromS-t.bins[i-1].toS, t.bins[i-1].stepS) > longestStep*intervalS {
			list = append(list, chart.Gap)
		}
		list = append(list, chart.Point{X: b.fromS / secondsPerMinute, Y: b.lowC})
		if b.highC > b.lowC {
			list = append(list, chart.Point{X: b.fromS / secondsPerMinute, Y: b.highC})
		}
	}
	return list
}

// mostMarks is how many faults are lettered; the table holds them all.
const mostMarks = 26

func (t trace) marks(p logfile.Probe, used int) []chart.Mark {
	var list []chart.Mark
	for _, f := range p.Faults {
		after, ok := secondsBetween(p.Start, f.Time)
		if !ok || used+len(list) == mostMarks {
			continue
		}
		at := p.StartS + after
		list = append(list, chart.Mark{Letter: string(rune('a' + used + len(list))), Name: p.Name + ": " + string(f.Kind) + ", row " + strconv.Itoa(f.Row),
			X: at / secondsPerMinute, Y: t.near(at)})
	}
	return list
}

// near is the curve at a moment.
func (t trace) near(atS float64) float64 {
	y := math.NaN()
	for _, b := range t.bins {
		if b.fromS > atS && !math.IsNaN(y) {
			break
		}
		y = b.lowC
	}
	return y
}

// secondsBetween reads two moments as a record tells them: a date with a time, a
// time of day with the number of its day, or seconds elapsed.
func secondsBetween(from, to string) (float64, bool) {
	a, ok := momentS(from)
	b, also := momentS(to)
	return b - a, ok && also
}

const hoursPerDay = 24

func momentS(s string) (float64, bool) {
	if n, ok := strings.CutSuffix(s, " s"); ok {
		v, err := strconv.ParseFloat(n, 64)
		return v, err == nil
	}
	if t, err := time.Parse("2006-01-02T15:04:05", s); err == nil {
		return float64(t.UnixMilli()) / 1e3, true
	}
	clock, day, _ := strings.Cut(strings.TrimSuffix(s, ")"), " (day ")
	t, err := time.Parse("15:04:05", clock)
	if err != nil {
		return 0, false
	}
	n, err := strconv.Atoi(day)
	if day == "" {
		n, err = 1, nil
	}
	since := t.Sub(time.Date(t.Year(), 1, 1, 0, 0, 0, 0, time.UTC)) + time.Duration(n-1)*hoursPerDay*time.Hour
	return since.Seconds(), err == nil
}
