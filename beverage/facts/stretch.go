package facts

import (
	"math"

	"posset/beverage"
	"posset/thermal"
)

// stretch is a run of readings outside of a limit.
type stretch struct {
	fromS, toS  float64
	lengthS     float64
	lowC, highC float64
	surely      bool // outside by the record's word, not only by its tolerance
}

// stretches finds where a history is outside of a limit between the first and
// the last time that it keeps it; false where it never does. A stretch reaches
// from the reading before it to the one after it. All that is outside only by
// the tolerance is told as one, which comes last.
func (h *heatHistory) stretches(l beverage.CriticalLimit) (list []stretch, kept bool) {
	first, last := h.kept(l)
	if first < 0 {
		return nil, false
	}
	var doubt stretch
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
			doubt = doubt.with(s)
		}
	}
	if doubt.lengthS > 0 {
		list = append(list, doubt)
	}
	return list, true
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
