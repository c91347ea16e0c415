package logfile

import "sort"

// ranTwice tells whether the clock ran over any of a stretch twice.
func (o *order) ranTwice(fromS, toS float64) bool {
	for _, z := range o.twice {
		if toS > z.fromS && fromS < z.mayS {
			return true
		}
	}
	return false
}

// ranAgain tells whether a later pass of the clock ran over any of a stretch.
func (o *order) ranAgain(pass int, fromS, toS float64) bool {
	for _, z := range o.twice {
		if z.pass > pass && toS > z.fromS && fromS < z.mayS {
			return true
		}
	}
	return false
}

// lowestOfPasses is the lowest reading that the passes of the clock before this
// one give for the piece from a moment to the reading at i. It is for the last
// pass over a stretch only; ok is false for the others, and where the passes
// before do not support the stretch all along.
func (s *series) lowestOfPasses(o *order, pass int, fromS float64, i int) (low float64, ok bool) {
	if o.ranAgain(pass, fromS, s.t[i]) {
		return 0, false
	}
	end := s.passStart(i)
	for end > 0 {
		start := s.passStart(end - 1)
		c, covered, sound := s.lowestWithin(start, end, fromS, s.t[i])
		if covered && !sound {
			return 0, false
		}
		if covered && (!ok || c < low) {
			low, ok = c, true
		}
		end = start
	}
	return low, ok
}

// passStart is the first reading of the pass of the clock that a reading is in.
func (s *series) passStart(i int) int {
	for i > 0 && s.flag[i]&brokenClock == 0 {
		i--
	}
	return i
}

// lowestWithin is the lowest of the readings of one pass within a stretch of the
// clock, those next to it outside included. covered tells that there are any,
// sound that all of them are credited and follow each other.
func (s *series) lowestWithin(start, end int, fromS, toS float64) (low float64, covered, sound bool) {
	if toS <= s.t[start] || fromS >= s.t[end-1] {
		return 0, false, false
	}
	first := start + sort.SearchFloat64s(s.t[start:end], fromS)
	if first > start && s.t[first] > fromS {
		first--
	}
	low, sound = s.c[first], s.flag[first]&uncredited == 0
	for k := first + 1; k < end && s.t[k-1] < toS; k++ {
		low = min(low, s.c[k])
		sound = sound && s.joined(k) && s.flag[k]&uncredited == 0
	}
	return low, true, sound
}
