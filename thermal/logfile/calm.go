package logfile

import (
	"math"
	"slices"
)

// calmSpan is how many readings are looked at together: a whole number of the
// pairs that one run of equal readings cannot slip between.
const calmSpan = 8 * (fewestStuck - 1)

// calmSpans remembers between what readings each span of a stretch runs, so that
// what asks for nothing else need not look at each of them again. A nil one
// remembers none.
type calmSpans struct {
	start     int       // reading of the view that the first span begins with
	low, high []float64 // °C, once placed
}

// look tells whether in a column nothing stands out from what its neighbours let
// expect by more than the limit, and no value stands still for long; and between
// what readings it runs. A value that is no number is never calm.
func (s *calmSpans) look(x []float64, limit float64) (low, high float64, ok bool) {
	s.low, s.high = s.low[:0], s.high[:0]
	if len(x) < 3 {
		return 0, 0, false
	}
	low, high = math.Inf(1), math.Inf(-1)
	for from := 0; from < len(x); from += calmSpan {
		to := min(from+calmSpan, len(x))
		for i := max(2, from); i < to; i++ {
			if i += straight(x[i-2:to], limit); i < to && !explained(x, i-1, limit) {
				return 0, 0, false
			}
		}
		least, most := ends(x[from:to])
		if stands(x, from, to) {
			return 0, 0, false
		}
		low, high = min(low, least), max(high, most)
		s.low, s.high = append(s.low, least), append(s.high, most)
	}
	return low, high, low-low == 0
}

// straight is for how many readings after its first two a column bends by no
// more than a limit.
func straight(x []float64, limit float64) int {
	last, was := x[1], x[1]-x[0]
	for i, c := range x[2:] {
		step := c - last
		if !(math.Abs(step-was) <= limit) {
			return i
		}
		last, was = c, step
	}
	return len(x) - 2
}

// ends are the least and the most of some readings, none of which is NaN. Above
// zero they are in the order of their bits, which are compared without a branch
// that noise would mislead.
func ends(x []float64) (least, most float64) {
	low := int64(math.Float64bits(x[0]))
	high := low
	for _, c := range x[1:] {
		k := int64(math.Float64bits(c))
		low, high = min(low, k), max(high, k)
	}
	if low < 0 {
		return slices.Min(x), slices.Max(x)
	}
	return math.Float64frombits(uint64(low)), math.Float64frombits(uint64(high))
}

// place says which reading of the view the first span begins with, and turns
// the spans into °C.
func (s *calmSpans) place(start int, unit scale) {
	s.start = start
	for i := range s.low {
		s.low[i], s.high[i] = unit.c(s.low[i]), unit.c(s.high[i])
	}
}

// whole gives the span that begins with a reading of the view and ends before
// another; -1 when none does.
func (s *calmSpans) whole(i, to int) int {
	if s == nil {
		return -1
	}
	n := i - s.start
	if n < 0 || n%calmSpan != 0 || i+calmSpan > to {
		return -1
	}
	return n / calmSpan
}

// next is the reading of the view that the next span begins with.
func (s *calmSpans) next(i int) int {
	switch {
	case s == nil:
		return math.MaxInt
	case i < s.start:
		return s.start
	}
	return s.start + ((i-s.start)/calmSpan+1)*calmSpan
}

// stands tells whether a span of a column is in a run of as many equal values as
// is looked into. Every such run holds a pair that is looked at.
func stands(x []float64, from, to int) bool {
	for i := from + fewestStuck - 2; i < to; i += fewestStuck - 1 {
		if x[i] == x[i-1] && runAround(x, i) >= fewestStuck {
			return true
		}
	}
	return false
}

// runAround is how many values equal to the one at i stand beside each other
// there.
func runAround(x []float64, i int) int {
	from, to := i, i
	for from > 0 && x[from-1] == x[i] {
		from--
	}
	for to+1 < len(x) && x[to+1] == x[i] {
		to++
	}
	return to - from + 1
}
