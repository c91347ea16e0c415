package logfile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
)

// lookahead is how many of the latest rows wait for the next view before they
// are judged, and as many judged rows are kept to judge them by.
const lookahead = 16

// analysis judges a log view by view.
type analysis struct {
	layout *layout
	clock  clockReader // to write moments down; it reads none
	o      Options
	seq    sequencer
	tracks []*track
	inTurn []*track // the medium first: products ask when it cooled

	hasRetort, hasMedium bool
	reference            int          // probe, -1 without
	medium               *mediumClock // nil without a medium
	bounds               []float64    // hottest the medium has been, by row of the view
	boundC               float64
	referenceC           float64 // by how much the recorder reads above the reference
	extremes             []extremes
	newestFirst          bool
	views                int
	kept                 []int        // columns that are probes; nil when all are
	idle                 []idleColumn // the others
	carried              carried
	scratch              *scratch
}

// carried is what of a view is looked at again in the next.
type carried struct {
	t    []float64
	line []int
	cols [][]float64
	done int
}

func newAnalysis(l *layout, o Options) *analysis {
	a := &analysis{layout: l, clock: clockReader{form: l.time}, o: o, reference: -1, boundC: lowestC, scratch: scratches.Get().(*scratch)}
	a.seq.order.rows, a.seq.order.brk = a.scratch.rows[:0], a.scratch.brk[:0]
	for _, col := range l.columns {
		a.tracks = append(a.tracks, newTrack(col, a))
	}
	return a
}

// awake leaves out the columns in which the first view shows nothing but blanks
// and error codes: channels that no sensor is connected to.
func (a *analysis) awake(v *view) {
	var tracks []*track
	for i, t := range a.tracks {
		if t.basis == Declared || anyReading(v.cols[i]) {
			tracks = append(tracks, t)
			a.kept = append(a.kept, i)
		}
	}
	if len(tracks) == len(a.tracks) || len(tracks) == 0 {
		a.kept = nil
		return
	}
	for i, t := range a.tracks {
		if !slices.Contains(a.kept, i) {
			a.idle = append(a.idle, idleColumn{i, t})
			a.layout.leftOut = append(a.layout.leftOut, LeftOut{t.name, "holds no reading"})
		}
	}
	a.tracks = tracks
}

// idleColumn is a column left out since nothing showed in it.
type idleColumn struct {
	column int
	t      *track
}

func anyReading(col []float64) bool {
	return slices.ContainsFunc(col, func(cell float64) bool { return cell == cell && !isErrorCode(cell) })
}

// watchIdle refuses a log in which a column left out shows readings later on:
// it may be the coldest.
func (a *analysis) watchIdle(v *view) error {
	for _, c := range a.idle {
		if anyReading(v.cols[c.column][v.settled:]) {
			return fmt.Errorf("column %q shows its first reading after row %d; declare its role to have it counted, or to have it ignored", c.t.name, v.line[v.settled])
		}
	}
	return nil
}

// keep drops the columns left out from a view.
func (a *analysis) keep(v *view) {
	if a.kept == nil {
		return
	}
	cols, decimals := make([][]float64, 0, len(a.kept)), make([]int, 0, len(a.kept))
	for _, i := range a.kept {
		cols, decimals = append(cols, v.cols[i]), append(decimals, v.decimals[i])
	}
	v.cols, v.decimals = cols, decimals
}

// assign gives the probes their places and finds the medium among them.
func (a *analysis) assign() {
	for i, t := range a.tracks {
		t.at = i
		if t.role == ReferenceThermometer && a.reference < 0 {
			a.reference = i
		}
		a.hasRetort = a.hasRetort || t.role == Retort
	}
	a.inTurn = slices.Clone(a.tracks)
	slices.SortStableFunc(a.inTurn, func(x, y *track) int { return a.rank(x) - a.rank(y) })
	if first := a.inTurn[0]; first.isMedium(a) {
		a.hasMedium, a.medium = true, &mediumClock{}
		first.led.phase.turns = a.medium
	}
}

func (a *analysis) rank(t *track) int {
	if t.isMedium(a) {
		return 0
	}
	return 1
}

// window judges the next rows.
func (a *analysis) window(w *window) error {
	a.clock.base = w.base
	v := w.view(&a.carried, a.kept)
	if err := a.watchIdle(v); err != nil {
		return err
	}
	if a.views++; a.views == 1 {
		if err := a.begin(v); err != nil {
			return err
		}
	} else {
		a.keep(v)
	}
	o := a.seq.sequence(v)
	a.extremes = a.extremes[:0]
	a.setBounds(v, o)
	a.compareReference(v, o)
	for _, t := range a.inTurn {
		for _, f := range o.faults {
			t.note(v, f.kind, f.row, f.detail)
		}
		t.lower()
		t.retractTwice(o)
		t.judge(v, t.at, o)
	}
	a.carry(v, o)
	return nil
}

// begin learns what the first view shows of the log.
func (a *analysis) begin(v *view) error {
	if descending(v.t) {
		if !v.last {
			return errors.New("the rows run from newest to oldest; sort them by time")
		}
		a.turnRound(v)
	}
	a.awake(v)
	a.keep(v)
	a.assign()
	a.scratch.steps = forwardSteps(a.scratch.steps[:0], v.t)
	a.seq.cad = cadenceOf(a.scratch.steps)
	for i, t := range a.tracks {
		doubt := a.unitDoubt(t, v.cols[i])
		t.doubtUnit = doubt.unit
		t.learn(v, i)
		if t.doubtUnit != "" {
			t.note(v, UnitDoubt, 0, doubt.detail())
		}
	}
	return nil
}

// unitDoubt is what is left of the doubt about a column's unit once the caller
// was heard: the caller's word settles only what can be either unit.
func (a *analysis) unitDoubt(t *track, col []float64) unitDoubt {
	if t.column.unit != "C" {
		return unitDoubt{}
	}
	d := doubtedUnit(col)
	if !(d.either && a.o.Unit == "C") {
		return d
	}
	if l := a.layout; l.basis != "declared" && !strings.HasSuffix(l.basis, settledBasis) {
		l.basis += settledBasis
	}
	return unitDoubt{}
}

// turnRound puts the rows of a file that runs from newest to oldest in order,
// and counts time from its oldest.
func (a *analysis) turnRound(v *view) {
	a.newestFirst = true
	slices.Reverse(v.t)
	slices.Reverse(v.line)
	for _, col := range v.cols {
		slices.Reverse(col)
	}
	first := math.Floor(v.t[0])
	a.clock.base += int64(first)
	for i := range v.t {
		v.t[i] -= first
	}
}

// forwardSteps appends the steps of a clock that lead on.
func forwardSteps(steps, t []float64) []float64 {
	for i := 1; i < len(t); i++ {
		if d := t[i] - t[i-1]; d > 0 {
			steps = append(steps, d)
		}
	}
	return steps
}

// descending tells a file whose rows run from newest to oldest.
func descending(t []float64) bool {
	down := 0
	for i := 1; i < len(t); i++ {
		if t[i] < t[i-1] {
			down++
		}
	}
	return len(t) > 2 && down*10 >= (len(t)-1)*9
}

// carry keeps the rows that the next view looks at again, in their order.
func (a *analysis) carry(v *view, o *order) {
	if v.last {
		return
	}
	c := &a.carried
	rows := o.rows[max(0, len(o.rows)-2*lookahead):]
	c.t, c.line = c.t[:0], c.line[:0]
	for _, r := range rows {
		c.t, c.line = append(c.t, v.t[r]), append(c.line, v.line[r])
	}
	if c.cols == nil {
		c.cols = make([][]float64, len(v.cols))
	}
	for i, col := range v.cols {
		c.cols[i] = c.cols[i][:0]
		for _, r := range rows {
			c.cols[i] = append(c.cols[i], col[r])
		}
	}
	c.done = max(0, len(rows)-lookahead)
	if len(rows) > 0 {
		a.medium.forget(v.t[rows[0]])
	}
}

// retractTwice takes back what was credited on clock time run over twice since.
func (t *track) retractTwice(o *order) {
	for _, z := range o.twice[o.fresh:] {
		if t.led.last.have && z.fromS < t.led.last.t && len(t.kept) > 0 {
			t.retract(z.fromS)
		}
	}
}
