package logfile

import (
	"fmt"
	"math"
)

// missingRun is a stretch of rows without a value for a probe.
type missingRun struct {
	rows int
	line int
	time string
}

// errorCodes are values that recorders and their converters write in place of a
// temperature: open or shorted sensor, over and under range, integer overflow
// with and without its decimal places. Common practice, no source.
var errorCodes = []float64{
	999, 999.9, 9999, 999.99, 99999, 9999.9, -999, -999.9, -9999, 888.8, 8888, 7777,
	32767, 3276.7, 327.67, -32768, -3276.8, -327.68, 65535, 6553.5, 655.35, 32766, 3276.6, 65534,
	850, -127, 1372, 1370, 1820, 1999, 1e30, -1e30, 9.9e37, 3000, -200, -3000,
}

func isErrorCode(v float64) bool {
	if v > lowestC && v < highestAnyC {
		return false
	}
	for _, c := range errorCodes {
		if v == c {
			return true
		}
	}
	return false
}

// build lines up the probe's readings of a view. What cannot be a temperature
// is left out and noted.
func (t *track) build(v *view, column int, o *order) {
	s := &t.s
	s.reset()
	s.grow(len(o.rows))
	t.place = t.place[:0]
	for range v.t {
		t.place = append(t.place, -1)
	}
	col := v.cols[column]
	tooHotC := 0.
	for seq, row := range o.rows {
		x, c, f, kind, detail := t.value(col[row], v.texts)
		if seq == v.done {
			tooHotC = t.tooHotC
		}
		if kind == "" && tooHotC > 0 && tooHotC-c <= t.jumpC(t.a.seq.cad.usualS) {
			f |= afterHeat
		}
		switch {
		case kind == Range && t.unit.c(col[row]) > highestC:
			tooHotC = t.unit.c(col[row])
			t.climb(v, o, seq, tooHotC)
		case kind != Dropout:
			tooHotC = 0
		}
		if t.counts(o, seq, v) {
			t.tooHotC = tooHotC
		}
		if kind != "" {
			t.missed(v, o, seq, kind, detail)
			continue
		}
		if t.counts(o, seq, v) {
			t.endMissing(true)
		}
		if o.brk[seq] || s.len() > 0 && brokenBetween(o, s.seq[s.len()-1], seq) {
			f |= brokenClock
		}
		t.place[row] = s.len()
		s.add(v.t[row], x, c, f, row, seq)
	}
	if v.last {
		t.endMissing(false)
	}
	t.markGaps(v, o)
}

// climb looks at a reading too hot to be any. When the record climbed there
// steadily, all of it is in doubt.
func (t *track) climb(v *view, o *order, seq int, c float64) {
	n := t.s.len()
	if t.role != Product || t.spoilt || n == 0 || t.s.seq[n-1] != seq-1 || !t.counts(o, seq, v) || c-t.s.c[n-1] > t.jumpC(t.a.seq.cad.usualS) {
		return
	}
	t.spoilt = true
	t.note(v, UnitDoubt, o.rows[seq], fmt.Sprintf("the readings climb steadily to %s, which no drink reaches: another unit, or a wrong sensor; nothing of the record is credited", degrees(c)))
}

// value reads a cell: the temperature at its word, the lowest it may stand for,
// or what is wrong with it.
func (t *track) value(cell float64, texts []string) (x, c float64, f flag, kind FaultKind, detail string) {
	if cell != cell {
		if i, ok := textIndex(cell); ok {
			return 0, 0, 0, Code, fmt.Sprintf("the recorder wrote %q in place of a value", texts[i])
		}
		return 0, 0, 0, Dropout, ""
	}
	x = t.unit.c(cell)
	if c = x; t.doubtUnit != "" {
		c = min(x, scaleOf(t.doubtUnit).c(cell)-t.prof.resC/2)
	}
	if t.plausible(x) {
		return x, c, 0, "", ""
	}
	if t.doubtUnit != "" && t.plausible(c) {
		return x, c, wordless, "", ""
	}
	if isErrorCode(cell) {
		return 0, 0, 0, Code, fmt.Sprintf("%g is a recorder's error code", cell)
	}
	return 0, 0, 0, Range, fmt.Sprintf("%s is no temperature of a drink or of what heats it", degrees(x))
}

// counts tells whether a place of the order is judged in this view.
func (t *track) counts(o *order, seq int, v *view) bool {
	return seq >= v.done && (v.last || seq < len(o.rows)-lookahead)
}

// missed takes a row without a usable value.
func (t *track) missed(v *view, o *order, seq int, kind FaultKind, detail string) {
	if !t.counts(o, seq, v) {
		return
	}
	row := o.rows[seq]
	if kind != Dropout {
		t.note(v, kind, row, detail)
	}
	if t.missing.rows == 0 {
		t.missing = missingRun{line: v.line[row], time: t.a.clock.text(v.t[row])}
	}
	if kind == Dropout {
		t.missing.rows++
	}
}

// endMissing closes a stretch without values. One that the probe's own interval
// allows is no fault.
func (t *track) endMissing(resumed bool) {
	m := t.missing
	t.missing = missingRun{}
	if m.rows == 0 || resumed && t.led.last.have && t.cad.usualS > t.a.seq.cad.usualS*gapFactor && float64(m.rows)*t.a.seq.cad.usualS < t.cad.limitS {
		return
	}
	t.faults.note(Dropout, m.line, m.time, fmt.Sprintf("no value in %s; nothing is credited over them", plural(m.rows, "row")))
}

// brokenBetween tells whether the clock was set back on a row the probe has no
// value in.
func brokenBetween(o *order, after, upTo int) bool {
	for i := after + 1; i < upTo; i++ {
		if o.brk[i] {
			return true
		}
	}
	return false
}

// markGaps finds the steps too long for anything to be credited over them.
func (t *track) markGaps(v *view, o *order) {
	s := &t.s
	for i := 1; i < s.len(); i++ {
		step := s.step(i)
		if step == 0 || t.cad.allows(s.step(i-1), step, s.step(i+1)) || step >= slowFactor*t.cad.usualS && s.inSlowRun(i) {
			continue
		}
		s.flag[i] |= tooFar
		if t.counts(o, s.seq[i], v) && t.gapInRows(v, o, s.seq[i-1], s.seq[i]) {
			t.note(v, Gap, s.row[i-1], fmt.Sprintf("no reading for %s; nothing is credited over it", duration(step)))
		}
	}
}

// A recorder may keep time more slowly for a while: then several steps of the
// same length follow each other.
const (
	slowFactor = 2.5
	slowSteps  = 4
)

// inSlowRun tells whether the step to a reading is one of several equal ones.
func (s *series) inSlowRun(i int) bool {
	step, n := s.step(i), 1
	for k := i - 1; n < slowSteps && sameStep(s.step(k), step); k-- {
		n++
	}
	for k := i + 1; n < slowSteps && sameStep(s.step(k), step); k++ {
		n++
	}
	return n >= slowSteps
}

func sameStep(a, b float64) bool { return math.Abs(a-b) <= b/100 }

// gapInRows tells a gap of the whole record from cells without a value.
func (t *track) gapInRows(v *view, o *order, from, to int) bool {
	for i := from + 1; i <= to; i++ {
		step := v.t[o.rows[i]] - v.t[o.rows[i-1]]
		if !t.a.seq.cad.allows(rowStep(v, o, i-1), step, rowStep(v, o, i+1)) {
			return true
		}
	}
	return false
}

func rowStep(v *view, o *order, i int) float64 {
	if i <= 0 || i >= len(o.rows) || o.brk[i] {
		return 0
	}
	return math.Max(0, v.t[o.rows[i]]-v.t[o.rows[i-1]])
}

// mergeDups settles rows with the time of another: the same value again counts
// once, another value casts doubt, and the lower one is credited.
func (t *track) mergeDups(v *view, column int, o *order) {
	for _, d := range o.dups {
		x, c, _, kind, detail := t.value(v.cols[column][d.row], v.texts)
		i := t.place[d.of]
		if kind != "" || i < 0 {
			if kind != "" && kind != Dropout {
				t.note(v, kind, d.row, detail)
			}
			continue
		}
		if x == t.s.x[i] {
			t.note(v, Repeat, d.row, "the same time with the same value again; counted once")
			continue
		}
		t.note(v, Conflict, d.row, fmt.Sprintf("the same time with %s beside %s; the lower counts", degrees(x), degrees(t.s.x[i])))
		t.s.alt = append(t.s.alt, alternative{i, x})
		if c < t.s.c[i] {
			t.s.c[i] = c
			if t.s.seq[i] < v.done {
				t.retract(t.s.t[i])
			}
		}
	}
}
