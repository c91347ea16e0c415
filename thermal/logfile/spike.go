package logfile

import (
	"fmt"
	"math"
)

const (
	contextReadings = 8   // before the judged ones, looked over again so that their spikes do not count as neighbours
	oneSided        = 2   // times what is beyond noise, where neighbours stand on one side only
	widestBurst     = 5   // readings a spike may span
	longestBurstS   = 90  // s; longer, it can be the process itself
	burstFactor     = 2   // of what is beyond noise, for a spike of several readings
	leastBurstC     = 1.0 // C°
	mediumFactor    = 2.0 // steam and water move more sharply than a drink
	leastMediumC    = 1.0
)

// beyondC is what neither rounding nor noise explain in this probe.
func (t *track) beyondC() float64 {
	if t.role == Product {
		return t.prof.beyondC
	}
	return max(leastMediumC, mediumFactor*t.prof.beyondC)
}

// findSpikes notes readings that their neighbours do not support. One that
// stands out upward is credited below all that its neighbours support; one that
// stands out downward counts as it is.
func (t *track) findSpikes(a, b int, v *view) {
	s := &t.s
	for i := max(0, a-contextReadings); i < b; i++ {
		beyond := t.beyondC()
		if !s.joined(i) || !s.joined(i+1) {
			beyond *= oneSided
		}
		least, most, low, ok := s.expected(i)
		up, down := s.c[i]-most, least-s.c[i]
		switch {
		case !ok:
		case up > beyond:
			t.noteSpike(v, i, a, up, "above")
			s.c[i] = min(s.c[i], low-beyond)
		case down > beyond && s.joined(i) && s.joined(i+1):
			if s.x[i] > s.c[i] && t.doubtUnit == "" {
				continue // the lower of two values at one time; in a doubted unit every reading is lower
			}
			t.noteSpike(v, i, a, down, "below")
		default:
			i = t.findBurst(i, a, b, v)
		}
	}
}

func (t *track) noteSpike(v *view, i, a int, by float64, side string) {
	if i < a {
		return
	}
	how := "it counts as it is"
	if side == "above" {
		how = "the lower neighbour counts"
	}
	t.note(v, Spike, t.s.row[i], fmt.Sprintf("%s stands %s C° %s what the readings beside it support; %s", degrees(t.s.x[i]), trim(by), side, how))
}

func trim(c float64) string { return fmt.Sprintf("%.3g", c) }

// expected is between what a reading is to be expected: the lines through the
// readings before and after it, carried on to it, and the line between them; low
// is the lowest that neighbours and lines support. ok is false without
// neighbours.
func (s *series) expected(i int) (least, most, low float64, ok bool) {
	left, right := s.joined(i), s.joined(i+1)
	switch {
	case left && right:
		before, after := s.ahead(i), s.back(i)
		between := s.c[i-1] + (s.c[i+1]-s.c[i-1])*(s.t[i]-s.t[i-1])/(s.t[i+1]-s.t[i-1])
		least, most = min(before, after, between), max(before, after, between)
		return least, most, min(least, s.c[i-1], s.c[i+1]), true
	case left:
		before := s.ahead(i)
		least, most = min(before, s.c[i-1]), max(before, s.c[i-1])
	case right:
		after := s.back(i)
		least, most = min(after, s.c[i+1]), max(after, s.c[i+1])
	}
	return least, most, least, left || right
}

// ahead carries the line through the two readings before i on to it.
func (s *series) ahead(i int) float64 {
	if !s.joined(i - 1) {
		return s.c[i-1]
	}
	return s.c[i-1] + (s.c[i-1]-s.c[i-2])*(s.t[i]-s.t[i-1])/(s.t[i-1]-s.t[i-2])
}

// back carries the line through the two readings after i back to it.
func (s *series) back(i int) float64 {
	if !s.joined(i + 2) {
		return s.c[i+1]
	}
	return s.c[i+1] + (s.c[i+1]-s.c[i+2])*(s.t[i+1]-s.t[i])/(s.t[i+2]-s.t[i+1])
}

// findBurst notes a spike of several readings from i on, and returns its last
// reading, or i when there is none.
func (t *track) findBurst(i, a, b int, v *view) int {
	s := &t.s
	least := max(leastBurstC, burstFactor*t.beyondC())
	if !s.joined(i) || math.Abs(s.c[i]-s.c[i-1]) <= least {
		return i
	}
	sign := math.Copysign(1, s.c[i]-s.c[i-1])
	for end := i + 1; end < i+widestBurst && end < s.len()-1; end++ {
		if !s.joined(end) || !s.joined(end+1) || s.t[end+1]-s.t[i-1] > longestBurstS {
			return i
		}
		low, ok := s.burst(i, end, sign, least)
		if !ok {
			continue
		}
		for k := i; k <= end; k++ {
			if k < b {
				t.noteSpike(v, k, a, math.Abs(s.c[k]-low), map[bool]string{true: "above", false: "below"}[sign > 0])
			}
			if sign > 0 {
				s.c[k] = min(s.c[k], low-t.beyondC())
			}
		}
		return end
	}
	return i
}

// burst tells whether the readings i to end all stand out by more than least
// from the lines before, after and between; low is the lowest of these lines.
func (s *series) burst(i, end int, sign, least float64) (low float64, ok bool) {
	low = math.Inf(1)
	before, after := s.slope(i-1), s.slope(end+2)
	t0, c0, t1, c1 := s.t[i-1], s.c[i-1], s.t[end+1], s.c[end+1]
	for k := i; k <= end; k++ {
		lines := [3]float64{
			c0 + before*(s.t[k]-t0),
			c1 + after*(s.t[k]-t1),
			c0 + (c1-c0)*(s.t[k]-t0)/(t1-t0),
		}
		for _, c := range lines {
			if sign*(s.c[k]-c) <= least {
				return 0, false
			}
			low = min(low, c)
		}
	}
	return low, true
}

// slope of the piece that leads to a reading, C°/s; 0 where none does.
func (s *series) slope(i int) float64 {
	if !s.joined(i) {
		return 0
	}
	return (s.c[i] - s.c[i-1]) / (s.t[i] - s.t[i-1])
}
