package chart

import "math"

// hatchApart is from line to line of a hatch.
const hatchApart = 7.0

// leastSpan is the width that the narrowest stretch is drawn with, lest it not
// be seen.
const leastSpan = 2.0

// hatch draws a stretch: ruled upward, downward, level or both ways.
func (d *drawing) hatch(s Span, top, bottom float64) {
	if s.Hatch == Blank {
		return
	}
	from, to := math.Max(s.From, d.x.low), math.Min(s.To, d.x.high)
	if !(from <= to) {
		return
	}
	x0, x1 := d.x.at(from), d.x.at(to)
	if x1-x0 < leastSpan {
		mid := (x0 + x1) / 2
		x0, x1 = mid-leastSpan/2, mid+leastSpan/2
	}
	w, h := x1-x0, bottom-top
	d.add(`<svg x="`, coordinate(x0), `" y="`, coordinate(top), `" width="`, coordinate(w), `" height="`, coordinate(h), `">`,
		`<path class="tint" d="M0 0H`, coordinate(w), "V", coordinate(h), `H0z"/><path class="hatch" d="`, rules(s.Hatch, w, h), `"/></svg>`)
}

// rules are the lines of a hatch over a field; what reaches out of it is cut off.
func rules(hatch int, w, h float64) string {
	switch hatch % Hatches {
	case Crossed:
		return rules(Upward, w, h) + rules(Down, w, h)
	case Level:
		path := ""
		for y := hatchApart / 2; y < h; y += hatchApart {
			path += "M0 " + coordinate(y) + "H" + coordinate(w)
		}
		return path
	}
	path := ""
	for x := hatchApart / 2; x < w+h; x += hatchApart {
		if hatch%Hatches == Upward {
			path += "M" + coordinate(x) + " 0L" + coordinate(x-h) + " " + coordinate(h)
		} else {
			path += "M" + coordinate(x-h) + " 0L" + coordinate(x) + " " + coordinate(h)
		}
	}
	return path
}
