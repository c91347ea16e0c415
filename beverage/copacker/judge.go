package copacker

import (
	"fmt"
	"strconv"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/quantity"
)

// judge holds one drink against one line, or one process of it, and notes what
// is missing.
type judge struct {
	f       *facts.Facts
	o       Options
	missing []Missing
	notes   []string
}

// line notes what the line lacks: at its key where it says too little, at the
// table that lacks the key where it says nothing.
func (j *judge) line(what, key string, key1 beverage.Place, table beverage.Place, text string) {
	at := table
	if key1.Line > 0 {
		at = key1
	}
	j.missing = append(j.missing, Missing{What: what, Text: text, Side: OfLine, Key: key, At: beverage.Text(placed(at))})
}

// spec notes what the drink's own file does not say or does not allow.
func (j *judge) spec(what, key string, at beverage.Place, text, finding string) {
	if at.File == "" {
		at = beverage.Place{File: j.f.Drink.File}
	}
	j.missing = append(j.missing, Missing{What: what, Text: text, Side: OfSpec, Key: key, At: beverage.Text(placed(at)), Finding: beverage.Text(finding)})
}

// request notes what only the question asked can say.
func (j *judge) request(what, key, text string) {
	j.missing = append(j.missing, Missing{What: what, Text: text, Side: OfRequest, Key: key})
}

func (j *judge) note(text string) { j.notes = append(j.notes, text) }

func placed(p beverage.Place) string {
	if p.Line == 0 {
		return p.File
	}
	return p.File + ":" + strconv.Itoa(p.Line)
}

// telling puts a figure into words.
type telling func(v float64) string

func told(d quantity.Dimension) telling {
	return func(v float64) string { return quantity.Format(v, d, digits, quantity.Metric) }
}

func numbered(unit string) telling {
	return func(v float64) string { return quantity.Number(v, digits) + " " + unit }
}

const digits = 4 // significant, of a figure in a sentence

var (
	degrees = told(quantity.Temperature)
	spans   = told(quantity.Duration)
	fills   = told(quantity.Volume)
	flows   = told(quantity.Flow)
	viscous = told(quantity.Viscosity)
	volumes = numbered("volumes")
	megaPa  = numbered("MPa")
	micro   = numbered("µm")
	grams   = numbered("g")
)

func gauge(v float64) string {
	return quantity.FormatPressure(v, true, digits, quantity.Metric)
}

// asked is what a drink asks of a range: a figure, or a band that the range must
// reach into.
type asked struct {
	what      string
	low, high float64
	tell      telling
}

// within holds what is asked against what the line can be set to. A range that
// does not say both its ends is not known to hold anything.
func (j *judge) within(a asked, r Range, key string, table beverage.Place) {
	switch {
	case !r.AtLeast.Known && !r.AtMost.Known:
		j.line(a.what, key, beverage.Place{}, table, fmt.Sprintf("%s is asked, and the line does not say what it can do", a.words()))
	case r.AtMost.Known && a.low > r.AtMost.V:
		j.line(a.what, key+".at_most", r.AtMost.Place, table, fmt.Sprintf("%s is asked, and the line goes up to %s", a.words(), a.tell(r.AtMost.V)))
	case r.AtLeast.Known && a.high < r.AtLeast.V:
		j.line(a.what, key+".at_least", r.AtLeast.Place, table, fmt.Sprintf("%s is asked, and the line starts at %s", a.words(), a.tell(r.AtLeast.V)))
	case !r.AtMost.Known:
		j.line(a.what, key+".at_most", beverage.Place{}, r.AtLeast.Place, fmt.Sprintf("%s is asked, and the line does not say how far up it goes", a.words()))
	case !r.AtLeast.Known:
		j.line(a.what, key+".at_least", beverage.Place{}, r.AtMost.Place, fmt.Sprintf("%s is asked, and the line does not say where it starts", a.words()))
	}
}

func (a asked) words() string {
	switch {
	case a.low == a.high:
		return a.what + " of " + a.tell(a.low)
	case a.low <= lowest:
		return a.what + " of at most " + a.tell(a.high)
	case a.high >= highest:
		return a.what + " of at least " + a.tell(a.low)
	}
	return a.what + " of " + a.tell(a.low) + " to " + a.tell(a.high)
}

// Ends of a band that is open on one side.
const (
	lowest  = -1e300
	highest = 1e300
)

func exactly(what string, v float64, tell telling) asked { return asked{what, v, v, tell} }
