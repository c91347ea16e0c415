package logfile

import (
	"errors"
	"fmt"
	"slices"
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
	tables []sharedTable

	hasRetort, hasMedium bool
	reference            int          // probe, -1 without
	medium               *mediumClock // nil without a medium
	bounds               []float64    // hottest the medium has been, by row of the view
	boundC               float64
	referenceC           float64 // by how much the recorder reads above the reference
	extremes             []extremes
	newestFirst          bool
	views                int
	carried              carried
}

// carried is what of a view is looked at again in the next.
type carried struct {
	t    []float64
	line []int
	cols [][]float64
	done int
}

func newAnalysis(l *layout, o Options) *analysis {
	a := &analysis{layout: l, clock: clockReader{form: l.time}, o: o, reference: -1, boundC: lowestC}
	for i, col := range l.columns {
		t := newTrack(col, a)
		t.at = i
		a.tracks = append(a.tracks, t)
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
	return a
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
	v := w.view(&a.carried)
	if a.views++; a.views == 1 {
		if err := a.begin(v); err != nil {
			return err
		}
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
		a.newestFirst = true
		slices.Reverse(v.t)
		slices.Reverse(v.line)
		for _, col := range v.cols {
			slices.Reverse(col)
		}
	}
	a.seq.cad = cadenceOf(forwardSteps(v.t))
	for i, t := range a.tracks {
		if t.column.unit == "C" {
			t.doubtUnit = doubtedUnit(v.cols[i])
		}
		t.learn(v, i)
		if t.doubtUnit != "" {
			t.note(v, UnitDoubt, 0, fmt.Sprintf("said to be in °C, but the values look like %s; the lower of the two is credited", unitName(t.doubtUnit)))
		}
	}
	return nil
}

func forwardSteps(t []float64) []float64 {
	steps := make([]float64, 0, len(t))
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
