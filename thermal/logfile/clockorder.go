package logfile

import (
	"fmt"
	"slices"
	"sort"
)

// order is the sequence of the record: rows by their clock, and where the clock
// itself is in doubt.
type order struct {
	rows   []int      // rows of the view, in the order of the record
	brk    []bool     // parallel to rows: the clock was set back before this row
	dups   []dup      // rows with the time of another
	twice  []zone     // stretches of the clock that were run over twice
	fresh  int        // of these, the first that this view found
	faults []rowFault // of whole rows
	even   bool       // rows follow each other in equal steps, and nothing else is to be said
}

// dup is a row that has the same time as another.
type dup struct{ row, of int }

// zone is a stretch of the clock that some pass of it, counted from 0, ran over
// again, so far and at most.
type zone struct {
	fromS, toS, mayS float64
	pass             int
}

// rowFault is a fault of a row, whatever the probe.
type rowFault struct {
	kind   FaultKind
	row    int
	detail string
}

// sequencer puts rows in order, window after window.
type sequencer struct {
	cad     cadence
	started bool
	minS    float64 // earliest clock so far, over all passes
	maxS    float64 // latest
	lapS    float64 // latest clock before it was set back; while running over that again
	lapping bool
	pass    int // of the clock, counted from 0
	chain   int // where in rows the present pass of the clock begins
	order   order
	v       *view
}

// shortSegment is the most rows out of place that are taken for a slip of a
// row rather than for a clock set back.
const shortSegment = 2

// sequence orders the rows of a view.
func (s *sequencer) sequence(v *view) *order {
	s.v, s.chain = v, 0
	s.order = order{rows: s.order.rows[:0], brk: s.order.brk[:0], twice: s.lasting(v)}
	s.order.fresh = len(s.order.twice)
	if s.evenly(v) {
		return &s.order
	}
	for i := 0; i < v.settled; i++ {
		s.place(i, i > 0 && v.t[i] < v.t[i-1])
	}
	for i := v.settled; i < len(v.t); {
		i = s.take(i)
	}
	for k := range s.order.twice {
		s.order.twice[k].mayS = s.order.twice[k].toS
	}
	if s.lapping && !v.last {
		s.order.twice[len(s.order.twice)-1].mayS = s.lapS // as far as it may yet run
	}
	return &s.order
}

// evenEps is how far, as a share of it, a step of an even clock may be off.
const evenEps = 1e-9

// evenly orders a view whose rows follow each other in equal steps.
func (s *sequencer) evenly(v *view) bool {
	if len(v.t) < 2 || len(s.order.twice) > 0 || s.lapping || s.started && v.t[len(v.t)-1] <= s.maxS {
		return false
	}
	step := v.t[1] - v.t[0]
	if !(step > 0 && s.cad.allows(0, step, 0)) {
		return false
	}
	for i := 1; i < len(v.t); i++ {
		if d := v.t[i] - v.t[i-1] - step; d > evenEps*step || d < -evenEps*step {
			return false
		}
	}
	s.order.rows, s.order.brk = slices.Grow(s.order.rows, len(v.t)), slices.Grow(s.order.brk, len(v.t))
	for i := range v.t {
		s.order.rows = append(s.order.rows, i)
		s.order.brk = append(s.order.brk, false)
	}
	if !s.started {
		s.started, s.minS = true, v.t[0]
	}
	s.maxS, s.order.even = v.t[len(v.t)-1], true
	return true
}

// lasting gives the zones of earlier views that this one may still run over.
func (s *sequencer) lasting(v *view) []zone {
	var zones []zone
	for _, z := range s.order.twice {
		if len(v.t) > 0 && (z.toS > v.t[0] || s.lapping) {
			zones = append(zones, z)
		}
	}
	return zones
}

// place appends a row; brk begins a new pass of the clock.
func (s *sequencer) place(row int, brk bool) {
	if brk {
		s.chain = len(s.order.rows)
	}
	s.order.rows = append(s.order.rows, row)
	s.order.brk = append(s.order.brk, brk)
}

// push places a new row and follows the clock to it.
func (s *sequencer) push(row int, brk bool) {
	s.place(row, brk)
	t := s.v.t[row]
	if s.lapping {
		s.lap(t)
	}
	if !s.started {
		s.started, s.minS, s.maxS = true, t, t
	}
	s.minS, s.maxS = min(s.minS, t), max(s.maxS, t)
}

// setBack begins a pass of the clock over hours that were recorded before.
func (s *sequencer) setBack(i int) {
	reached := s.v.t[s.order.rows[len(s.order.rows)-1]]
	s.order.faults = append(s.order.faults, rowFault{ClockBack, i,
		fmt.Sprintf("the clock was set back by %s; of what it ran over twice the lower counts", duration(reached-s.v.t[i]))})
	from := max(s.v.t[i], s.minS)
	s.pass++
	s.order.twice = append(s.order.twice, zone{fromS: from, toS: from, pass: s.pass})
	s.lapping, s.lapS = true, s.maxS
	s.push(i, true)
}

// lap widens the stretch run over twice to a moment of the present pass, up to
// where the clock had been before.
func (s *sequencer) lap(t float64) {
	if len(s.order.twice) == 0 {
		s.lapping = false
		return
	}
	z := &s.order.twice[len(s.order.twice)-1]
	z.toS = max(z.toS, min(t, s.lapS))
	s.lapping = t < s.lapS
}

// take places the row at i, or the rows from i on that run back, and returns
// the next one.
func (s *sequencer) take(i int) int {
	n := len(s.order.rows)
	if n == 0 {
		s.push(i, false)
		return i + 1
	}
	last := s.order.rows[n-1]
	switch t := s.v.t[i]; {
	case t > s.v.t[last]:
		s.push(i, false)
		return i + 1
	case t == s.v.t[last]:
		s.order.dups = append(s.order.dups, dup{i, last})
		return i + 1
	}
	return s.takeBack(i)
}

// takeBack handles rows from i on whose clock lies before what was reached.
func (s *sequencer) takeBack(i int) int {
	reached := s.v.t[s.order.rows[len(s.order.rows)-1]]
	end := i + 1
	for end < len(s.v.t) && s.v.t[end] > s.v.t[end-1] && s.v.t[end] <= reached {
		end++
	}
	seen, equal := s.match(i, end)
	n := end - i
	switch {
	case seen == n && (n <= shortSegment || equal == n):
		for ; i < end; i++ {
			s.order.dups = append(s.order.dups, dup{i, s.find(s.v.t[i])})
		}
		return end
	case n <= shortSegment || seen == 0 && s.fillsGap(s.v.t[i], s.v.t[end-1]) && end < len(s.v.t) && s.v.t[end] > reached:
		for ; i < end; i++ {
			s.insert(i)
		}
		return end
	}
	s.setBack(i)
	return i + 1
}

// position is where in the present pass a time belongs.
func (s *sequencer) position(t float64) int {
	rows := s.order.rows[s.chain:]
	return s.chain + sort.Search(len(rows), func(k int) bool { return s.v.t[rows[k]] >= t })
}

// find gives the row of the present pass with exactly this time, or -1.
func (s *sequencer) find(t float64) int {
	if p := s.position(t); p < len(s.order.rows) && s.v.t[s.order.rows[p]] == t {
		return s.order.rows[p]
	}
	return -1
}

// match counts the rows whose time was seen before, and those that are the
// same in every cell.
func (s *sequencer) match(from, to int) (seen, equal int) {
	for i := from; i < to; i++ {
		of := s.find(s.v.t[i])
		if of < 0 {
			continue
		}
		seen++
		if s.sameCells(i, of) {
			equal++
		}
	}
	return seen, equal
}

func (s *sequencer) sameCells(a, b int) bool {
	for _, col := range s.v.cols {
		if col[a] != col[b] && (col[a] == col[a] || col[b] == col[b]) {
			return false
		}
	}
	return true
}

// fillsGap tells whether a stretch belongs into one gap of the present pass.
func (s *sequencer) fillsGap(fromS, toS float64) bool {
	p := s.position(fromS)
	if p != s.position(toS) {
		return false
	}
	if p == s.chain || p >= len(s.order.rows) {
		return true
	}
	step := s.v.t[s.order.rows[p]] - s.v.t[s.order.rows[p-1]]
	return !s.cad.allows(0, step, 0)
}

// insert puts a late row where its time belongs. What was judged already stays
// as it is; a row that belongs there casts doubt on that stretch.
func (s *sequencer) insert(i int) {
	t := s.v.t[i]
	s.order.faults = append(s.order.faults, rowFault{Disorder, i, "the row stands later in the file than its time"})
	p := s.position(t)
	if p < s.v.done || (p == s.v.done && s.v.done > 0) {
		s.order.twice = append(s.order.twice, zone{fromS: t, toS: t, pass: s.pass})
		return
	}
	if p < len(s.order.rows) && s.v.t[s.order.rows[p]] == t {
		s.order.dups = append(s.order.dups, dup{i, s.order.rows[p]})
		return
	}
	s.order.rows = append(s.order.rows, 0)
	copy(s.order.rows[p+1:], s.order.rows[p:])
	s.order.rows[p] = i
	s.order.brk = append(s.order.brk, false)
	if p > s.chain {
		return
	}
	// The first row of a pass carries its break; a row put before it takes it on.
	copy(s.order.brk[p+1:], s.order.brk[p:])
	if p+1 < len(s.order.brk) {
		s.order.brk[p+1] = false
	}
}

// duration is a length of time for people.
func duration(s float64) string {
	switch {
	case s >= 2*3600:
		return fmt.Sprintf("%.3g h", s/3600)
	case s >= 2*60:
		return fmt.Sprintf("%.3g min", s/60)
	}
	return fmt.Sprintf("%.3g s", s)
}
