package spec

import (
	"math"

	"posset/beverage"
	"posset/beverage/quantity"
)

// subject is what a critical limit can be about.
type subject struct {
	what   beverage.LimitSubject
	dim    quantity.Dimension // None: a bare number
	within span
}

const (
	limitPH    beverage.LimitSubject = "pH"
	limitOther beverage.LimitSubject = "other"
)

var subjects = []subject{
	{"retort temperature", quantity.Temperature, processRange},
	{"initial temperature", quantity.Temperature, processRange},
	{"come-up time", quantity.Duration, holdRange},
	{"hold time", quantity.Duration, holdRange},
	{"fill temperature", quantity.Temperature, processRange},
	{"pack hold time", quantity.Duration, holdRange},
	{limitPH, quantity.None, span{lowestPH, highestPH, "", false}},
	{"water activity", quantity.None, span{0, 1, "", false}},
	{"headspace", quantity.Volume, slackRange},
	{"fill", quantity.Volume, packRange},
	{"viscosity", quantity.Viscosity, flowingRange},
	{"flow", quantity.Flow, span{0, 1e9, "L/h", true}},
	{"back pressure", quantity.Pressure, span{-101.325, mostKPa, "kPa", false}},
	{limitOther, quantity.None, span{}},
}

// limitGiven is a limit while it is read: its bounds can only be understood
// once its subject is known.
type limitGiven struct {
	what            beverage.Given[beverage.LimitSubject]
	atLeast, atMost *node
}

var critical = table[limitGiven]{fields: []field[limitGiven]{
	word("what", plainSubjects(), "What the limit is about.", func(l *limitGiven) *beverage.Given[beverage.LimitSubject] { return &l.what }).must(),
	bound("at_least", "Lower bound, in a unit of its subject; pH and water activity as bare numbers.", "121.1 C", func(l *limitGiven) **node { return &l.atLeast }),
	bound("at_most", "Upper bound.", "123 C", func(l *limitGiven) **node { return &l.atMost }),
}}

func plainSubjects() []beverage.LimitSubject {
	words := make([]beverage.LimitSubject, len(subjects))
	for i, s := range subjects {
		words[i] = s.what
	}
	return words
}

func bound(key, means, example string, at func(*limitGiven) **node) field[limitGiven] {
	return field[limitGiven]{
		KeyDoc: KeyDoc{Key: key, Form: FormBound, Type: "a quantity of its subject, or a bare number", Means: means, Example: `"` + example + `"`},
		read:   func(_ *reader, n *node, l *limitGiven) { *at(l) = n },
	}
}

// limit reads the bounds in the dimension of their subject.
func (r *reader) limit(n *node, l limitGiven) (c beverage.CriticalLimit, ok bool) {
	if l.atLeast == nil && l.atMost == nil && !r.doc.broken {
		r.tell(n.at, n.path, "has neither at_least nor at_most", "write at_least = "+quantity.Quote(quantity.Temperature.Example())+", at_most, or both")
	}
	s, known := subjectOf(l.what)
	if !known {
		return c, false
	}
	c = beverage.CriticalLimit{Place: r.place(n), What: s.what}
	low, lowOK := r.bound(l.atLeast, s, &c.AtLeast)
	high, highOK := r.bound(l.atMost, s, &c.AtMost)
	if !lowOK || !highOK {
		return c, false
	}
	if c.AtLeast.Known && c.AtMost.Known && (c.AtLeast.V > c.AtMost.V || low.dim != high.dim) {
		r.wrong(l.atMost, "does not fit at_least "+quantity.Quote(l.atLeast.text), "write an at_most that is not below it")
		return c, false
	}
	c.Text = boundsText(low.text, high.text)
	return c, true
}

func subjectOf(what beverage.Given[beverage.LimitSubject]) (subject, bool) {
	for _, s := range subjects {
		if what.Known && s.what == what.V {
			return s, true
		}
	}
	return subject{}, false
}

func boundsText(low, high string) string {
	switch {
	case high == "":
		return "at least " + low
	case low == "":
		return "at most " + high
	}
	return "at least " + low + ", at most " + high
}

// boundRead is a bound as it was written.
type boundRead struct {
	text string
	dim  quantity.Dimension
}

// bound reads one bound; an absent one is fine.
func (r *reader) bound(n *node, s subject, at *beverage.Given[float64]) (b boundRead, ok bool) {
	if n == nil {
		return b, true
	}
	b.text = n.text
	var v float64
	switch {
	case s.what == limitOther && n.shape == isNumber:
		v, ok = r.numberOf(n, -math.MaxFloat32, math.MaxFloat32)
	case s.what == limitOther:
		v, b.dim, ok = r.anyQuantity(n)
	case s.dim == quantity.None:
		v, ok = r.numberOf(n, s.within.low, s.within.high)
	default:
		v, ok = r.measureOf(n, s.dim, s.within, s.dim.Example())
		ok = ok && r.gaugeOnly(n, s)
	}
	if ok {
		*at = given(r, n, v)
	}
	return b, ok
}

func (r *reader) anyQuantity(n *node) (float64, quantity.Dimension, bool) {
	if n.shape != isText {
		r.wrong(n, "is "+n.shape.String(), "write a bare number, or a number and a unit in quotes")
		return 0, quantity.None, false
	}
	q, err := quantity.Parse(n.text)
	if err != nil {
		r.wrongQuantity(n, err)
	}
	return q.Value, q.Dim, err == nil
}

// gaugeOnly refuses an absolute pressure: a limit is held against gauges.
func (r *reader) gaugeOnly(n *node, s subject) bool {
	if s.dim != quantity.Pressure {
		return true
	}
	if q, err := quantity.Parse(n.text); err != nil || q.Absolute {
		r.wrong(n, "is absolute", "write the gauge pressure, such as \"1.5 barg\"")
		return false
	}
	return true
}
