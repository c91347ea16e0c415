package chart

import (
	"html"
	"math"
	"strconv"
	"strings"
)

// The drawing's measures, in units. Labels must have room at the size that a
// small screen gives them, half as large again.
const (
	width      = 640.0
	left       = 58.0
	right      = 18.0
	above      = 30.0 // of a panel: its axis's title
	below      = 62.0 // of the last: ticks and the title of the common axis
	usual      = 230.0
	laneHigh   = 24.0
	xTicks     = 7
	yTicks     = 5
	unitsPerEm = 7.0 // a letter, about
)

// drawing gathers the elements of a picture.
type drawing struct {
	b strings.Builder
	x scale
}

// SVG draws the chart. id makes the names in it unique within the page.
func (c Chart) SVG(id string) string {
	high := below
	for _, p := range c.Panels {
		high += above + p.height()
	}
	d := &drawing{x: newScale(c.X, c.reachX(), xTicks, left, width-right)}
	id = html.EscapeString(id)
	d.add(`<svg class="chart" role="img" aria-labelledby="`, id, `t" aria-describedby="`, id, `d" viewBox="0 0 `, coordinate(width), " ", coordinate(high), `">`,
		`<title id="`, id, `t">`, html.EscapeString(c.Title), `</title><desc id="`, id, `d">`, html.EscapeString(c.About), `</desc>`)
	top := 0.0
	for _, p := range c.Panels {
		top += above
		d.panel(p, top)
		top += p.height()
	}
	d.commonAxis(c, top)
	d.add(`</svg>`)
	return d.b.String()
}

func (p Panel) height() float64 {
	switch {
	case len(p.Lanes) > 0:
		return laneHigh * float64(len(p.Lanes))
	case p.Height > 0:
		return p.Height
	}
	return usual
}

func (d *drawing) add(parts ...string) {
	for _, p := range parts {
		d.b.WriteString(p)
	}
}

func (d *drawing) text(class, anchor string, x, y float64, s string) {
	d.add(`<text class="`, class, `" text-anchor="`, anchor, `" x="`, coordinate(x), `" y="`, coordinate(y), `">`, html.EscapeString(s), `</text>`)
}

func (d *drawing) line(class string, x0, y0, x1, y1 float64) {
	d.add(`<path class="`, class, `" d="M`, coordinate(x0), " ", coordinate(y0), "L", coordinate(x1), " ", coordinate(y1), `"/>`)
}

// panel draws from the ground up: hatches, grid, curves, lines, marks.
func (d *drawing) panel(p Panel, top float64) {
	bottom := top + p.height()
	d.text("name", "start", left, top-9, p.Y.Title)
	for _, v := range d.x.ticks() {
		d.line("grid", d.x.at(v), top, d.x.at(v), bottom)
	}
	if len(p.Lanes) > 0 {
		d.lanes(p.Lanes, top)
	} else {
		d.curves(p, top, bottom)
	}
	d.line("axis", left, top, left, bottom)
	d.line("axis", left, bottom, width-right, bottom)
}

func (d *drawing) curves(p Panel, top, bottom float64) {
	y := newScale(p.Y, p.reachY(), yTicks, bottom, top)
	for _, s := range p.Spans {
		d.hatch(s, top, bottom)
	}
	d.field(p.Field, y)
	for _, v := range y.ticks() {
		d.line("grid", left, y.at(v), width-right, y.at(v))
		d.text("tick", "end", left-7, y.at(v)+4, y.label(v))
	}
	x0, y0, w, h := coordinate(left-markRoom), coordinate(top-markRoom), coordinate(width-right-left+2*markRoom), coordinate(bottom-top+2*markRoom)
	d.add(`<svg x="`, x0, `" y="`, y0, `" width="`, w, `" height="`, h, `" viewBox="`, x0, " ", y0, " ", w, " ", h, `">`) // cuts off what lies outside
	for _, k := range p.Curves {
		d.curve(k, y)
	}
	d.add(`</svg>`)
	d.levels(p, y)
	for _, u := range p.Uprights {
		d.upright(u, p.Curves, y)
	}
	for _, m := range p.Marks {
		d.mark(m, y, top, bottom)
	}
}

// markRoom lets a mark at the edge of a panel be seen whole.
const markRoom = 5

func (d *drawing) curve(k Curve, y scale) {
	class := curveClass(k.Style)
	d.add(`<path class="`, class, `" d="`)
	pen := "M"
	for i, q := range k.Points {
		if !drawable(q.X) || !drawable(q.Y) {
			pen = "M"
			continue
		}
		d.add(pen, coordinate(d.x.at(q.X)), " ", coordinate(y.at(q.Y)))
		if alone := pen == "M" && (i+1 == len(k.Points) || !drawable(k.Points[i+1].Y)); alone {
			d.add("h0")
		}
		pen = "L"
	}
	d.add(`"/>`)
	for _, q := range marked(k, d.x) {
		d.add(`<path class="`, class, ` dot" d="`, shape(k.Style, d.x.at(q.X), y.at(q.Y)), `"/>`)
	}
}

func curveClass(style int) string { return "c" + strconv.Itoa(style%Styles+1) }

// marksPerCurve is how many marks show which curve is which.
const marksPerCurve = 5

// marked chooses the points that carry a mark, in other places for each style
// so that curves that run together still show theirs.
func marked(k Curve, x scale) []Point {
	var out []Point
	for n := range marksPerCurve {
		share := (float64(n) + (float64(k.Style%Styles)+1)/(Styles+1)) / marksPerCurve
		at := x.low + float64(share*(x.high-x.low))
		best, off := -1, (x.high-x.low)/(2*marksPerCurve)
		for i, q := range k.Points {
			if drawable(q.Y) && math.Abs(q.X-at) < off*(1-tiny) {
				best, off = i, math.Abs(q.X-at)
			}
		}
		if best >= 0 {
			out = append(out, k.Points[best])
		}
	}
	return out
}

// shape is the mark of a style around a place: circle, square, triangle,
// diamond, saltire, cross.
func shape(style int, x, y float64) string {
	at := "M" + coordinate(x) + " " + coordinate(y)
	return at + [Styles]string{"m-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0z", "m-3.5-3.5h7v7h-7z", "m0-4.5l4.5 8h-9z", "m0-5l5 5l-5 5l-5-5z",
		"m-4-4l8 8m0-8l-8 8", "m-5 0h10m-5-5v10"}[style%Styles]
}

// lanes draws rows of stretches with their marks.
func (d *drawing) lanes(lanes []Lane, top float64) {
	for i, l := range lanes {
		from := top + laneHigh*float64(i)
		for _, s := range l.Spans {
			d.hatch(s, from+3, from+laneHigh-3)
		}
		d.line("grid", left, from+laneHigh, width-right, from+laneHigh)
		d.text("tick", "end", left-7, from+laneHigh/2+5, l.Label)
		for _, at := range l.Ends {
			if at > d.x.low && at < d.x.high {
				d.line("border", d.x.at(at), from+2, d.x.at(at), from+laneHigh-2)
			}
		}
		if l.Name != "" {
			d.text("label", "start", left+6, from+laneHigh/2+5, l.Name)
		}
		for _, m := range l.Marks {
			if m.X >= d.x.low && m.X <= d.x.high {
				d.text("letter", "middle", d.x.at(m.X), from+laneHigh/2+5, m.Letter)
			}
		}
	}
}

func (d *drawing) commonAxis(c Chart, bottom float64) {
	for _, v := range d.x.ticks() {
		d.text("tick", "middle", d.x.at(v), bottom+20, d.x.label(v))
	}
	d.text("name", "middle", (left+width-right)/2, bottom+46, c.X.Title)
}
