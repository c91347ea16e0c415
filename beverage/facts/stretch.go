package facts

import (
	"math"

	"posset/beverage"
	"posset/thermal"
)

// stretch is a run of readings outside of a limit, or a time without any.
type stretch struct {
	fromS, toS  float64
	lengthS     float64
	lowC, highC float64
	surely      bool // outside by the record's word, not only by its tolerance
	unseen      bool // no sound reading tells
}

// stretches finds where a history is outside of a limit from one reading to
// another: a stretch reaches from the reading before it to the one after it. A
// time without a sound reading, longer than a gap at the interval of the record,
// is one by itself. All that is outside only by the tolerance is told as one,
// which comes last; of a retort that keeps the limit with the tolerance off, not
// what leads up to that, which is come-up, nor what leads away.
func (h *heatHistory) stretches(l beverage.CriticalLimit, first, last int, gapS float64) (list []stretch) {
	var doubt stretch
	sound := l.What == retortTemperature && h.anyInside(l, first, last)
	for i := first + 1; i <= last; i++ {
		if gapS > 0 && h.steps[i] > gapS {
			list = append(list, stretch{fromS: h.points[i-1].TimeS, toS: h.after(i, last), lengthS: h.steps[i], unseen: true})
		}
	}
	for i := first; i <= last; {
		how, from := h.how(i, l), i
		for i <= last && h.how(i, l) == how {
			i++
		}
		s := h.stretch(from, i, first, last)
		switch how {
		case outsideSurely:
			s.surely = true
			list = append(list, s)
		case outsideByTolerance:
			if edge := from == first || i > last; !edge || !sound {
				doubt = doubt.with(s)
			}
		}
	}
	if doubt.lengthS > 0 {
		list = append(list, doubt)
	}
	return list
}

// after is when the gap that leads to a stretch, or lies in it, is surely over.
func (h *heatHistory) after(i, last int) float64 {
	if h.stride > 1 {
		i = min(i+1, last)
	}
	return h.points[i].TimeS
}

func (h *heatHistory) anyInside(l beverage.CriticalLimit, first, last int) bool {
	for i := first; i <= last; i++ {
		if h.how(i, l) == inside {
			return true
		}
	}
	return false
}

// stretch is the readings from one to before another, with the pieces that lead
// to them and away.
func (h *heatHistory) stretch(from, to, first, last int) stretch {
	s := stretch{fromS: h.points[max(first, from-1)].TimeS, toS: h.points[min(last, to)].TimeS, lowC: math.Inf(1), highC: math.Inf(-1)}
	for i := from; i < to; i++ {
		s.lowC, s.highC = math.Min(s.lowC, h.lows[i]), math.Max(s.highC, h.points[i].TempC)
	}
	s.lengthS = s.toS - s.fromS
	return s
}

// with is both stretches told as one.
func (s stretch) with(o stretch) stretch {
	if s.lengthS == 0 {
		return o
	}
	return stretch{fromS: s.fromS, toS: o.toS, lengthS: s.lengthS + o.lengthS, lowC: math.Min(s.lowC, o.lowC), highC: math.Max(s.highC, o.highC)}
}

// How a reading stands to a limit.
const (
	inside = iota
	outsideByTolerance
	outsideSurely
)

func (h *heatHistory) how(i int, l beverage.CriticalLimit) int {
	low, high := h.lows[i], h.points[i].TempC
	switch {
	case l.AtLeast.Known && low < l.AtLeast.V, l.AtMost.Known && high > l.AtMost.V:
		return outsideSurely
	case l.AtLeast.Known && low-sensorToleranceC < l.AtLeast.V, l.AtMost.Known && high+sensorToleranceC > l.AtMost.V:
		return outsideByTolerance
	}
	return inside
}

// stretchesOf are the departures of one column from a limit. Of the retort, what
// comes before it first keeps the limit is come-up and what comes after it last
// does is cooling; of another column every reading counts.
func (r *Run) stretchesOf(probe int, l beverage.CriticalLimit, t *Target) []beverage.Departure {
	h := &r.heat[probe]
	first, last := 0, len(h.points)-1
	if l.What == retortTemperature {
		first, last = h.kept(l)
	}
	if first < 0 {
		return []beverage.Departure{r.neverReached(probe, l)}
	}
	var list []beverage.Departure
	for _, s := range h.stretches(l, first, last, gapFactor*r.Log.Understood.IntervalS) {
		list = append(list, r.departure(probe, l, s, t))
	}
	return list
}

func (r *Run) neverReached(probe int, l beverage.CriticalLimit) beverage.Departure {
	d := departureOf(r.Result.File, l, beverage.FallsShort)
	d.Column, d.Unit, d.Why = r.Log.Probes[probe].Name, unitOf(l.What), "the limit is never reached in this record: there is no credit to work out again"
	d.Worst, d.Depth = beyond(beverage.Point(r.heat[probe].hottest(), beverage.Measured), l)
	return d
}

func (r *Run) departure(probe int, l beverage.CriticalLimit, s stretch, t *Target) beverage.Departure {
	d := departureOf(r.Result.File, l, beverage.CannotTell)
	d.Column, d.Unit, d.Why = r.Log.Probes[probe].Name, unitOf(l.What), s.why()
	d.StartS, d.EndS, d.LengthS = &s.fromS, &s.toS, &s.lengthS
	switch {
	case s.unseen:
	case s.surely:
		d.Outcome = beverage.FallsShort
		d.Worst, d.Depth = beyond(beverage.Interval{Low: s.lowC, High: s.highC}, l)
		if l.What == retortTemperature {
			d.Credits = r.creditsAtWorst(s, t)
		}
	default:
		d.Worst, d.Depth = beyond(beverage.Interval{Low: s.lowC - sensorToleranceC, High: s.highC + sensorToleranceC}, l)
	}
	return d
}

func (s stretch) why() string {
	switch {
	case s.unseen:
		return "no sound reading for this long: nothing shows that the limit was kept"
	case s.surely:
		return "outside by the record's word; from the reading before to the reading after"
	}
	return "inside by the record's word, outside once the tolerance of the thermometer is counted, as every credit counts it already"
}

// kept is the first and the last reading that keeps a limit by the record's
// word; all of them count where there is no lower bound.
func (h *heatHistory) kept(l beverage.CriticalLimit) (first, last int) {
	if !l.AtLeast.Known {
		return 0, len(h.points) - 1
	}
	first, last = -1, -1
	for i := range h.points {
		if h.points[i].TempC >= l.AtLeast.V {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	return first, last
}

func (h *heatHistory) hottest() float64 {
	hot := math.Inf(-1)
	for _, p := range h.points {
		hot = math.Max(hot, p.TempC)
	}
	return hot
}

// stay is the longest unbroken time at or above a temperature, between readings:
// at the record's word and with the tolerance off.
func (h *heatHistory) stay(atC, toleranceC, intervalS float64, why string) shownFigure {
	gapS := gapFactor * intervalS
	_, _, word := h.longest(func(i int) bool { return h.points[i].TempC >= atC }, gapS)
	from, to, credited := h.longest(func(i int) bool { return h.lows[i]-toleranceC >= atC }, gapS)
	return shownFigure{beverage.Span(credited, math.Max(word, credited), beverage.Measured), from, to, why}
}

func (h *heatHistory) longest(keeps func(i int) bool, gapS float64) (fromS, toS, lengthS float64) {
	start := -1
	for i, p := range h.points {
		switch {
		case !keeps(i), h.stride > 1 && gapS > 0 && h.steps[i] > gapS: // somewhere in the stretch
			start = -1
			continue
		case start < 0, gapS > 0 && h.steps[i] > gapS:
			start = i
		}
		if n := p.TimeS - h.points[start].TimeS; n > lengthS {
			fromS, toS, lengthS = h.points[start].TimeS, p.TimeS, n
		}
	}
	return fromS, toS, lengthS
}

// most is the most lethality that the readings between two times may have
// earned, every piece that touches them counted whole at its hotter end.
func (h *heatHistory) most(bound thermal.Bound, fromS, toS float64) float64 {
	sum := 0.0
	for i := 1; i < len(h.points); i++ {
		a, b := h.points[i-1], h.points[i]
		if b.TimeS > fromS && a.TimeS < toS {
			sum += bound.LethalRate(math.Max(a.TempC, b.TempC)) * (b.TimeS - a.TimeS) / secondsPerMinute
		}
	}
	return sum
}
