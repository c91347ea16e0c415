package logfile

import (
	"fmt"
	"math"
)

// track follows one probe through the file.
type track struct {
	column
	at    int // place among the probes
	unit  scale
	prof  profile
	cad   cadence // of its own readings
	a     *analysis
	bases []creditBasis

	word     []float64 // min, by basis
	most     []float64 // min, by basis; of those with a bound
	wordStay []stayCount
	wordLast lastReading
	led      ledger
	kept     []ledger // as it was at the end of earlier views, for a clock set back beyond what is in view

	samples      int
	minC, maxC   float64 // of the readings counted
	lowC, highC  float64 // of those seen
	startS, endS float64
	faults       faultBook
	missing      missingRun
	run          equalRun
	doubtC       float64 // by how much an implausible jump raised the record, until one takes it back
	firstC       float64
	lastLine     int
	startC       float64 // how warm the probe came in
	aboveC       float64 // most it stood above the medium
	excessC      float64 // taken off beside the tolerance
	pass         int     // of the clock, counted from 0
	told         bool    // a reading was handed to the caller, the latest at toldS
	toldS        float64
	tooHotC      float64 // the latest reading, when it was too hot to be a temperature; 0 otherwise
	spoilt       bool    // nothing of the record can be believed
	doubtUnit    string  // the unit the values look like, when it is not the one stated
	s            series
	tables       []keyedTable // of rates, by basis
	believed     []float64
	xC           []float64 // the column in °C
	converted    []float64 // room for it
	place        []int     // reading of a row of the view, -1 without
}

func newTrack(c column, a *analysis) *track {
	t := &track{column: c, unit: scaleOf(c.unit), a: a, minC: math.Inf(1), maxC: math.Inf(-1), startC: lowestC, lowC: math.Inf(1), highC: math.Inf(-1)}
	for _, b := range a.o.Bases {
		t.bases = append(t.bases, creditBasis{Basis: b, lowerC: a.o.ToleranceC})
	}
	t.word, t.most, t.tables = make([]float64, len(t.bases)), make([]float64, len(t.bases)), make([]keyedTable, len(t.bases))
	t.wordStay = make([]stayCount, len(a.o.StaysAtC))
	t.led = newLedger(len(t.bases), len(a.o.StaysAtC))
	return t
}

// Readings of a drink or of what heats it; outside, a value is no temperature
// of either: below, it would be frozen solid; above, no such process exists.
const (
	lowestC     = -40.0
	highestC    = 160.0
	highestAnyC = 200.0 // of medium and others: superheated steam and air
)

// plausible tells temperatures from other values.
func (t *track) plausible(c float64) bool { return c >= lowestC && c <= t.highestC() }

func (t *track) highestC() float64 {
	if t.role == Product {
		return highestC
	}
	return highestAnyC
}

// learn makes the profile from the first view.
func (t *track) learn(v *view, column int) {
	unit := t.unit
	if t.doubtUnit != "" {
		unit = scaleOf(t.doubtUnit)
	}
	t.prof = t.a.scratch.learn(v.t, v.cols[column], unit, v.decimals[column], lowestC, t.highestC())
	t.cad = ownCadence(v, column, t.a.seq.cad)
}

// ownCadence is the interval of a probe that does not get a value in every row,
// as multiplexed recorders write; for others it is that of the rows.
func ownCadence(v *view, column int, rows cadence) cadence {
	absent := 0
	for _, x := range v.cols[column] {
		absent += count(x != x)
	}
	if absent*3 < len(v.t) {
		return rows
	}
	var steps []float64
	last := math.NaN()
	for i, x := range v.cols[column] {
		if x != x {
			continue
		}
		if d := v.t[i] - last; d > 0 {
			steps = append(steps, d)
		}
		last = v.t[i]
	}
	own := cadenceOf(steps)
	if own.mixed || own.usualS == 0 {
		return rows
	}
	return own
}

// note books a fault at a row of the view.
func (t *track) note(v *view, kind FaultKind, row int, detail string) {
	t.faults.note(kind, v.line[row], t.a.clock.text(v.t[row]), detail)
}

// judge takes a view: what is sound is added up, what is not is noted.
func (t *track) judge(v *view, column int, o *order) {
	from, to := v.done, len(o.rows)
	if !v.last {
		to -= lookahead
	}
	if to <= from {
		return
	}
	if t.judgeSound(v, column, o, from, to) {
		return
	}
	t.build(v, column, o)
	t.mergeDups(v, column, o)
	t.widen()
	a, b := t.span(from, to)
	t.findSpikes(a, b, v)
	t.findStuck(a, b, v) // before jumps: the step that ends a stuck run is no jump
	t.findJumps(a, b, v)
	t.findAboveMedium(a, b, v)
	t.integrate(a, b, v, o)
}

// widen notes between what readings the probe has moved.
func (t *track) widen() {
	for _, x := range t.s.x {
		t.lowC, t.highC = min(t.lowC, x), max(t.highC, x)
	}
}

// span gives the readings that stand in a stretch of the order.
func (t *track) span(from, to int) (a, b int) {
	for a < t.s.len() && t.s.seq[a] < from {
		a++
	}
	b = a
	for b < t.s.len() && t.s.seq[b] < to {
		b++
	}
	return a, b
}

// degrees writes a temperature for a sentence.
func degrees(c float64) string { return fmt.Sprintf("%.4g °C", c) }
