package logfile

import "math"

// judgeSound takes a stretch in which nothing can be wrong: an even clock, a
// value in every row, and no step that its neighbours do not share. It judges as
// the long way would, and adds up from a table of rates. false leaves the
// stretch to the long way.
func (t *track) judgeSound(v *view, column int, o *order, from, to int) bool {
	col := v.cols[column]
	if !o.even || !t.settled(v, col, from) {
		return false
	}
	start := max(0, from-contextReadings)
	calm := &t.a.scratch.calm
	low, high, ok := calm.look(col[start:], t.prof.beyondC/t.unit.factor)
	if !ok || !t.plausible(t.unit.c(low)) || !t.plausible(t.unit.c(high)) {
		return false
	}
	calm.place(start, t.unit)
	t.xC = t.inC(col)
	if !t.belowMedium(from, to) {
		return false
	}
	t.minC, t.maxC = min(t.minC, t.unit.c(low)), max(t.maxC, t.unit.c(high))
	t.lowC, t.highC = min(t.lowC, t.minC), max(t.highC, t.maxC)
	t.book(v, from, to)
	t.addUp(v, column, from, to, t.unit.c(low), t.unit.c(high))
	t.keep(v)
	t.tellSound(v, from, to)
	return true
}

// longWayOnly leaves no stretch to the short way; for tests.
var longWayOnly = false

// settled tells whether nothing of earlier views is still open, and the ledger
// stands at the reading before.
func (t *track) settled(v *view, col []float64, from int) bool {
	if t.doubtUnit != "" || t.spoilt || t.doubtC > 0 || t.tooHotC > 0 || t.missing.rows > 0 || t.run.stuck || longWayOnly {
		return false
	}
	last, word := &t.led.last, &t.wordLast
	if from == 0 {
		return !last.have && !word.have
	}
	c := t.unit.c(col[from-1])
	return last.have && last.flag == 0 && last.t == v.t[from-1] && last.c == c && word.have && word.t == last.t && word.c == c
}

// explained tells whether the reading at k, where a column bends sharply, is
// neither a spike nor beside a lone step.
func explained(x []float64, k int, limit float64) bool {
	if k < 2 || k+2 >= len(x) {
		return false
	}
	ahead, back, between := 2*x[k-1]-x[k-2], 2*x[k+1]-x[k+2], (x[k-1]+x[k+1])/2
	if !(x[k]-max(ahead, back, between) <= limit && min(ahead, back, between)-x[k] <= limit) {
		return false
	}
	limit *= catchUpFactor
	return loneBy(x, k) <= limit && loneBy(x, k+1) <= limit
}

// loneBy is how much of the step to reading i the steps beside it do not share.
func loneBy(x []float64, i int) float64 {
	step := x[i] - x[i-1]
	sign := math.Copysign(1, step)
	return sign*step - max(0, sign*(x[i+1]-x[i]), sign*(x[i-1]-x[i-2]))
}

// inC gives a column in °C.
func (t *track) inC(col []float64) []float64 {
	if t.unit == (scale{1, 0}) {
		return col
	}
	t.converted = t.converted[:0]
	for _, v := range col {
		t.converted = append(t.converted, t.unit.c(v))
	}
	return t.converted
}

// belowMedium tells whether no reading is hotter than the medium was.
func (t *track) belowMedium(from, to int) bool {
	if !t.a.hasMedium || t.role != Product {
		return true
	}
	for i := from; i < to; i++ {
		if t.samples+i-from < firstReadings {
			t.startC = max(t.startC, t.xC[i])
		}
		if t.xC[i] > max(t.a.bounds[i], t.startC)+aboveMediumC+t.prof.resC {
			return false
		}
	}
	return true
}

// book counts the readings.
func (t *track) book(v *view, from, to int) {
	if t.samples == 0 {
		t.startS, t.firstC = v.t[from], t.xC[from]
	}
	t.samples += to - from
	t.endS, t.lastLine = v.t[to-1], v.line[to-1]
}

// addUp credits the stretch, in two parts when it ends in a run of equal
// readings that may yet prove stuck.
func (t *track) addUp(v *view, column, from, to int, lowC, highC float64) {
	col := v.cols[column]
	start, calm := to-1, &t.a.scratch.calm
	for start > from && col[start-1] == col[to-1] {
		start--
	}
	ways := t.ways(lowC, highC)
	tables := make([]*rateTable, len(t.bases))
	for i := range tables {
		tables[i] = t.tableFor(i, v.decimals[column])
	}
	add := func(after, upTo int) { t.addStretch(v, col, tables, ways, max(after, 0), upTo) }
	t.led.phase.advance(v.t, t.xC, from, start+1, calm, t.a.mediumFor(t), t.led.credited, add)
	if start > from || t.run.n == 0 || t.run.x != t.unit.c(col[to-1]) {
		t.run = equalRun{x: t.xC[start], above: newDeparture(), below: newDeparture()}
	}
	t.run.n += to - start
	if t.run.before == nil && !v.last {
		before := t.led.clone()
		before.last = lastReading{have: true, t: v.t[start], c: t.xC[start]}
		t.run.before = &before
	}
	t.led.phase.advance(v.t, t.xC, start+1, to, calm, t.a.mediumFor(t), t.led.credited, add)
	last := lastReading{have: true, t: v.t[to-1], c: t.xC[to-1]}
	t.led.last, t.wordLast = last, last
}

// tableFor gives the table of rates of a basis; nil where there is none.
func (t *track) tableFor(basis, decimals int) *rateTable {
	k := rateKey{t.bases[basis].Ref, t.unit, decimals}
	if last := t.tables[basis]; last.table == nil || last.key != k {
		t.tables[basis] = keyedTable{k, tableOf(k)}
	}
	return t.tables[basis].table
}

// keyedTable is a table with what it was asked for.
type keyedTable struct {
	key   rateKey
	table *rateTable
}

// way says how a basis is credited over a stretch.
type way struct {
	factor  float64 // of the record at its word
	byPiece bool    // the stretch crosses the range the organism was measured in
}

func (t *track) ways(lowC, highC float64) []way {
	out := make([]way, len(t.bases))
	for i, b := range t.bases {
		out[i].factor = math.Exp(-b.lowerC * math.Ln10 / b.Ref.ZC)
		out[i].byPiece = b.Bound != nil || b.MinC != 0 && lowC-b.lowerC < b.MinC
		if b.MinC != 0 && highC-b.lowerC < b.MinC {
			out[i] = way{}
		}
	}
	return out
}

// addStretch adds the pieces between two readings, at the record's word and
// credited.
func (t *track) addStretch(v *view, col []float64, tables []*rateTable, ways []way, after, upTo int) {
	if after >= upTo {
		return
	}
	stepS := (v.t[upTo] - v.t[after]) / float64(upTo-after)
	for i := range t.bases {
		sum := t.sum(i, tables[i], col[after:upTo+1]) * stepS / secondsPerMinute
		t.word[i] += sum
		if !ways[i].byPiece {
			t.led.credited[i] += sum * ways[i].factor
			continue
		}
		for k := after + 1; k <= upTo; k++ {
			t.led.credited[i] += t.bases[i].piece(stepS, t.xC[k-1], t.xC[k])
		}
	}
	t.addMost(stepS, after, upTo)
	for i, at := range t.a.o.StaysAtC {
		lower := t.bases[0].lowerC
		for k := after + 1; k <= upTo; k++ {
			t.wordStay[i].piece(stepS, t.xC[k-1], t.xC[k], at)
			t.led.stays[i].piece(stepS, t.xC[k-1]-lower, t.xC[k]-lower, at)
		}
	}
}

// addMost adds the pieces between two readings by the larger rates of the bases
// with a bound.
func (t *track) addMost(stepS float64, after, upTo int) {
	for i := range t.bases {
		if t.bases[i].Bound == nil {
			continue
		}
		for k := after + 1; k <= upTo; k++ {
			t.most[i] += t.bases[i].most(stepS, t.xC[k-1], t.xC[k])
		}
	}
}

// sum is the integral of a basis' lethal rate over readings of the file, in
// steps of their spacing.
func (t *track) sum(basis int, table *rateTable, readings []float64) float64 {
	if table == nil {
		return sumOf(t.bases[basis].Ref, t.unit, readings)
	}
	return table.sum(readings)
}
