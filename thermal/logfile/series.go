package logfile

import "slices"

// flags of a reading, or of the piece that leads to it.
type flag uint8

const (
	brokenClock flag = 1 << iota // the clock was set back before it: no piece leads to it
	tooFar                       // too long after the reading before: no credit on the piece
	uncredited                   // the reading supports nothing: no credit on either side
	wordless                     // not a temperature at the record's word
	afterHeat                    // the reading before was just too hot to be any
)

// series is one probe's readings of a view in the order of the record, those
// that cannot be temperatures left out.
type series struct {
	t    []float64 // s
	x    []float64 // °C, the record at its word
	c    []float64 // °C, the lowest that the record supports, tolerance not yet taken off
	flag []flag
	row  []int // row of the view
	seq  []int // place in the order of the view
	alt  []alternative
}

// alternative is a second value at the time of a reading.
type alternative struct {
	at int // reading
	x  float64
}

func (s *series) reset() {
	s.t, s.x, s.c = s.t[:0], s.x[:0], s.c[:0]
	s.flag, s.row, s.seq, s.alt = s.flag[:0], s.row[:0], s.seq[:0], s.alt[:0]
}

// grow makes room for n readings.
func (s *series) grow(n int) {
	s.t, s.x, s.c = slices.Grow(s.t, n), slices.Grow(s.x, n), slices.Grow(s.c, n)
	s.flag, s.row, s.seq = slices.Grow(s.flag, n), slices.Grow(s.row, n), slices.Grow(s.seq, n)
}

func (s *series) len() int { return len(s.t) }

func (s *series) add(t, x, c float64, f flag, row, seq int) {
	s.t, s.x, s.c = append(s.t, t), append(s.x, x), append(s.c, c)
	s.flag, s.row, s.seq = append(s.flag, f), append(s.row, row), append(s.seq, seq)
}

// step is the time from the reading before; 0 where the clock is broken or
// nothing stands before.
func (s *series) step(i int) float64 {
	if i <= 0 || i >= len(s.t) || s.flag[i]&brokenClock != 0 {
		return 0
	}
	return s.t[i] - s.t[i-1]
}

// joined tells whether a reading follows the one before without a gap.
func (s *series) joined(i int) bool {
	return i > 0 && i < len(s.t) && s.flag[i]&(brokenClock|tooFar) == 0
}
