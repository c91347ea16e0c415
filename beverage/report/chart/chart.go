// Package chart draws curves as SVG that stands inside a page: text as text, no
// colour of its own but classes that the page's style sheet paints, no script,
// no style attribute, nothing fetched. Line, mark and hatch differ with the
// colour. Equal charts give equal bytes on every machine: coordinates are
// rounded to a tenth of a unit.
//
// It knows no chemistry. What cannot be drawn (NaN, infinity) is left out.
package chart

import "math"

// Chart is panels above each other over one common axis.
type Chart struct {
	Title  string // names the picture to who cannot see it
	About  string // what it shows, in a sentence or two
	X      Axis
	Panels []Panel
}

// Axis is a scale. Without ends of its own (Low and High equal) it reaches over
// what is drawn on it.
type Axis struct {
	Title     string // with its unit
	Low, High float64
}

// Panel is one field of a chart: either curves over a numbered axis, or lanes.
type Panel struct {
	Y        Axis
	Height   float64 // units, of 640 the chart is wide; 0: as high as is usual
	Field    *Field  // cells under everything else; the axes need ends of their own
	Curves   []Curve
	Levels   []Line // across, at a value of Y
	Uprights []Line // upward, at a value of the common axis
	Spans    []Span // stretches of the common axis, hatched over the whole height
	Marks    []Mark
	Lanes    []Lane // in place of all of the above but Y.Title
}

// Point is one point of a curve. One that cannot be drawn breaks the line.
type Point struct{ X, Y float64 }

// Gap breaks a line.
var Gap = Point{X: math.NaN(), Y: math.NaN()}

// Curve is a line through points. Its style, 0 to Styles-1, is its dash, its
// mark and its colour; two curves of a chart that differ should differ in it.
type Curve struct {
	Name   string
	Style  int
	Points []Point
}

// Line is a straight line at a value. Label stands beside it in the picture,
// Name, where there is one, in the legend.
type Line struct {
	Label, Name string
	At          float64
}

// Span is a hatched stretch. Equal names have equal hatches.
type Span struct {
	Name     string
	Hatch    int // 0 to Hatches-1
	From, To float64
}

// Mark is a lettered place, explained in the legend. In a lane its Y is not
// looked at.
type Mark struct {
	Letter, Name string
	X, Y         float64
}

// Lane is a row of stretches and marks: what was the case when.
type Lane struct {
	Label string    // a word or a number, at the axis
	Name  string    // written into the lane, at its left
	Ends  []float64 // where a line parts what stands left and right of it
	Spans []Span
	Marks []Mark
}

// How many styles of lines and of hatches are told apart.
const (
	Styles  = 6
	Hatches = 4
)

// Hatches by what they look like.
const (
	Blank   = -1
	Upward  = 0
	Down    = 1
	Level   = 2
	Crossed = 3
)

// Drawable tells whether the chart has anything that can be drawn.
func (c Chart) Drawable() bool {
	for _, p := range c.Panels {
		if len(p.Lanes) > 0 || len(p.Field.drawable()) > 0 {
			return true
		}
		for _, k := range p.Curves {
			for _, q := range k.Points {
				if drawable(q.X) && drawable(q.Y) {
					return true
				}
			}
		}
	}
	return false
}

// mostDrawn is the largest figure that an axis reaches to.
const mostDrawn = 1e15

func drawable(v float64) bool { return math.Abs(v) <= mostDrawn } // false for NaN

// extent is the reach of values.
type extent struct{ low, high float64 }

func nothing() extent { return extent{math.Inf(1), math.Inf(-1)} }

func (e *extent) take(vs ...float64) {
	for _, v := range vs {
		if drawable(v) {
			e.low, e.high = math.Min(e.low, v), math.Max(e.high, v)
		}
	}
}

// reachX is how far everything drawn reaches along the common axis.
func (c Chart) reachX() extent {
	e := nothing()
	for _, p := range c.Panels {
		for _, k := range p.Curves {
			for _, q := range k.Points {
				e.take(q.X)
			}
		}
		for _, l := range p.Uprights {
			e.take(l.At)
		}
		for _, m := range p.Marks {
			e.take(m.X)
		}
	}
	return e
}

// reachY is how far a panel's curves, levels and marks reach.
func (p Panel) reachY() extent {
	e := nothing()
	for _, k := range p.Curves {
		for _, q := range k.Points {
			if drawable(q.X) {
				e.take(q.Y)
			}
		}
	}
	for _, l := range p.Levels {
		e.take(l.At)
	}
	for _, m := range p.Marks {
		e.take(m.Y)
	}
	return e
}
