package chart

import (
	"math"
	"slices"
)

// levels draws lines across, with their labels at the left, where curves that
// rise leave room. A label that something runs through there, and one too near
// the one before, stands at the other end.
func (d *drawing) levels(p Panel, y scale) {
	last, atRight := math.Inf(-1), false
	for _, l := range p.Levels {
		if !(l.At >= y.low && l.At <= y.high) {
			continue
		}
		at := y.at(l.At)
		d.line("level", left, at, width-right, at)
		text := at - 6
		if at-y.to < laneHigh { // the title of the axis stands above
			text = at + 17
		}
		if math.Abs(at-last) < laneHigh {
			atRight = !atRight
		} else {
			atRight = d.crowded(p, y, left+labelLong(l), text)
		}
		last = at
		if atRight {
			d.text("label", "end", width-right-4, text, l.Label)
		} else {
			d.text("label", "start", left+6, text, l.Label)
		}
	}
}

// labelLong is about how long a label is, at the size of a small screen.
func labelLong(l Line) float64 { return unitsPerEm * 1.5 * float64(len(l.Label)) }

// crowded tells whether a mark or a point of a curve is near a text that reaches
// from the left of the panel to x.
func (d *drawing) crowded(p Panel, y scale, x, text float64) bool {
	near := func(q Point) bool { return d.x.at(q.X) < x && math.Abs(y.at(q.Y)-text) < laneHigh*0.75 }
	for _, k := range p.Curves {
		if slices.ContainsFunc(k.Points, near) {
			return true
		}
	}
	return slices.ContainsFunc(p.Marks, func(m Mark) bool { return near(Point{m.X, m.Y}) })
}

// upright draws a line upward. Its label stands at the top, or at the foot where
// a curve runs through there.
func (d *drawing) upright(l Line, curves []Curve, y scale) {
	if !(l.At >= d.x.low && l.At <= d.x.high) {
		return
	}
	at, long := d.x.at(l.At), labelLong(l)
	d.line("level", at, y.to, at, y.from)
	anchor, from := "start", at+5
	if at+long > width-right {
		anchor, from = "end", at-5
	}
	text := y.to + 16
	for _, k := range curves {
		for _, q := range k.Points {
			if x := d.x.at(q.X); math.Abs(x-at) < long && y.at(q.Y) < y.to+laneHigh {
				text = y.from - 9
			}
		}
	}
	d.text("label", anchor, from, text, l.Label)
}

func (d *drawing) mark(m Mark, y scale, top, bottom float64) {
	if !drawable(m.X) || !drawable(m.Y) || m.X < d.x.low || m.X > d.x.high {
		return
	}
	x, at := d.x.at(m.X), math.Min(math.Max(y.at(m.Y), top), bottom)
	d.add(`<circle class="spot" cx="`, coordinate(x), `" cy="`, coordinate(at), `" r="4.5"/>`)
	if at-top < laneHigh {
		at += laneHigh + 4
	}
	d.text("letter", "middle", x, at-9, m.Letter)
}
