package logfile

import (
	"fmt"
	"math"
)

const (
	fewestStuck     = 8   // equal readings, for the movement of others to speak against them
	moveShare       = 0.2 // of its own range by which others must have moved away
	stuckSteps      = 3   // of the resolution that it should have moved by then
	movingSpan      = 32  // readings over which a probe is seen to move
	catchUpRun      = 3   // equal readings before a step that catches up
	catchUpFactor   = 1.5 // of what is beyond noise, for such a step
	catchUpVsOthers = 1.5 // times the largest step of the others
	catchUpShare    = 0.5 // of such a step that its neighbours do not share
	slowReadings    = 20  // that a slow probe takes to cross its range
	movedShare      = 0.1 // of the step by which another probe moved meanwhile
)

// equalRun is a run of equal readings that may prove stuck.
type equalRun struct {
	n      int
	x      float64
	from   int     // reading of the view it began with; -1 when before the view
	before *ledger // as it was at its first reading, when that lies before the view
	above  departure
	below  departure
	stuck  bool
}

func (r *equalRun) ongoing() bool { return r.n > 0 && !r.stuck }

// departure follows how the other probes moved away from a reading that stands
// still. Distances and movements are C°.
type departure struct {
	least    float64 // least distance so far
	awayS    float64 // for how long they have been away
	integral float64 // C°·s by which they were away, past the time a slow probe may need
	top      [2]float64
	onset    onset
}

// onset finds back to where a movement began that shows only once it exceeds
// resolution and noise: from when it reached that and three times that. It is
// exact for a movement that grows with the square of time, and early for one
// that grows in proportion.
type onset struct{ once, thrice int } // latest readings within

const onsetBack = 1.5

func (o *onset) see(moved, beyondC float64, i int) {
	if moved <= beyondC {
		o.once = i
	}
	if moved <= 3*beyondC {
		o.thrice = i
	}
}

func (o *onset) at() int { return o.once - int(onsetBack*float64(o.thrice-o.once)) - 1 }

// findStuck notes readings that do not move though they should, and takes back
// what was credited on them.
func (t *track) findStuck(a, b int, v *view) {
	s := &t.s
	if t.run.n > 0 {
		t.run.from, t.run.above.onset, t.run.below.onset = -1, onset{-1, -1}, onset{-1, -1}
	}
	for i := a; i < b; i++ {
		if t.run.n > 0 && s.joined(i) && s.x[i] == t.run.x {
			if t.run.n++; t.run.n == 2 {
				t.run.departs()
				t.depart(i-1, 0, v)
			}
			t.depart(i, s.step(i), v)
			t.judgeRun(i, a, v)
		} else {
			t.catchUp(i, a, v)
			r := &t.run
			r.n, r.x, r.from, r.before, r.stuck = 1, s.x[i], i, nil, false
		}
		if t.run.stuck {
			s.flag[i] |= uncredited
		}
	}
}

// departs begins to follow the others, from the first two readings of a run on.
func (r *equalRun) departs() {
	r.above, r.below = newDeparture(), newDeparture()
	if r.from < 0 {
		r.above.onset, r.below.onset = onset{-1, -1}, onset{-1, -1}
	}
}

func newDeparture() departure {
	return departure{least: math.Inf(1), top: [2]float64{math.Inf(-1), math.Inf(-1)}}
}

// depart counts how far the others are from the reading at i, which stood still
// for dt.
func (t *track) depart(i int, dt float64, v *view) {
	highest, lowest, ok := t.a.others(v, t.s.row[i], t.at)
	if !ok {
		return
	}
	t.run.above.count(t.run.x-highest, [2]float64{highest, lowest}, dt, i, t)
	t.run.below.count(lowest-t.run.x, [2]float64{-highest, -lowest}, dt, i, t)
}

// count takes the others' distance from the reading, and their highest and
// lowest with the sign by which going away is falling.
func (d *departure) count(distance float64, ends [2]float64, dt float64, i int, t *track) {
	moved := 0.0
	for k, c := range ends {
		d.top[k] = max(d.top[k], c)
		moved = max(moved, d.top[k]-c)
	}
	d.onset.see(moved, t.prof.beyondC, i)
	distance = max(distance, 0) // those still on the other side of it are coming nearer, not going away
	d.least = min(d.least, distance)
	gone := distance - d.least
	if gone <= t.prof.beyondC {
		d.awayS, d.integral = 0, 0
	}
	if gone <= max(2*t.prof.beyondC, moveShare*t.rangeC()) {
		return
	}
	if d.awayS += dt; d.awayS > t.prof.lagS {
		d.integral += gone * dt
	}
}

// rangeC is what the probe has moved over so far, C°.
func (t *track) rangeC() float64 { return max(0, t.highC-t.lowC) }

// judgeRun decides whether the run that i belongs to is stuck by now.
func (t *track) judgeRun(i, a int, v *view) {
	r := &t.run
	should := stuckSteps*t.prof.resC + t.prof.beyondC
	switch {
	case r.stuck || r.n < fewestStuck:
	case t.prof.freezeAt > 0 && r.n >= t.prof.freezeAt && (r.x > (t.lowC+t.highC)/2 || t.movingBefore(r.from)):
		t.stick(r.from, a, i, v, fmt.Sprintf("%s without change over %d readings, though this probe's readings scatter", degrees(r.x), r.n))
	case r.above.integral > should*t.prof.tauS:
		t.stick(r.above.onset.at(), a, i, v, fmt.Sprintf("%s without change while the other probes fell", degrees(r.x)))
	case r.below.integral > should*t.prof.tauS:
		t.stick(r.below.onset.at(), a, i, v, fmt.Sprintf("%s without change while the other probes rose", degrees(r.x)))
	}
}

// stick marks the readings since to i as stuck. When they began before the
// view, the ledger goes back to where the run began.
func (t *track) stick(since, a, i int, v *view, detail string) {
	if since < a && t.run.from < a {
		if t.run.before != nil {
			last := t.led.last
			t.led = t.run.before.clone()
			t.led.last = last
		}
		t.led.last.flag |= uncredited
	}
	t.run.stuck = true
	if !t.a.hasMedium || t.movingBefore(t.run.from) {
		since = t.run.from // only the medium, which moves first, tells since when
	}
	since = max(since, t.run.from, a)
	t.note(v, Stuck, t.s.row[since], detail+"; nothing is credited while it stood still")
	for k := since; k <= i; k++ {
		t.s.flag[k] |= uncredited
	}
}

// movingBefore tells whether the probe was on its way when a run began, so that
// all of the run stood still.
func (t *track) movingBefore(from int) bool {
	i := from
	for t.s.joined(i) && i > from-movingSpan {
		i--
	}
	return from-i >= slopeSpan && math.Abs(t.s.x[from]-t.s.x[i]) >= max(2*t.prof.resC, t.prof.beyondC/2)
}

// catchUp looks at the step that ends a run: when it makes up at once for what
// others did meanwhile, or falls faster than a sensor can, the run was stuck.
func (t *track) catchUp(i, a int, v *view) {
	s, r := &t.s, &t.run
	if r.n < catchUpRun || !s.joined(i) || t.role != Product {
		return
	}
	if r.stuck {
		if highest, _, ok := t.a.others(v, s.row[i], t.at); ok && s.c[i] <= highest+t.prof.beyondC {
			s.flag[i] |= tooFar // back among the others: the step is the end of standing still, not a jump
		}
		return
	}
	step, lone := s.c[i]-r.x, s.loneStep(i)
	if lone <= catchUpFactor*t.beyondC() || lone < catchUpShare*math.Abs(step) {
		return
	}
	from := max(r.from, 0)
	since, ok := t.a.movedMeanwhile(v, s.row[from:i], t.at, step, t.prof.beyondC)
	if !ok {
		since, ok = 0, t.catchesUpAlone(i, step, v)
	}
	if !ok {
		t.noteStand(i, from, v)
		return
	}
	if r.from < 0 {
		since = -1 // how far the others moved before this view is not known: all of the run stood still
	}
	t.stick(from+since, a, i-1, v, fmt.Sprintf("%s without change, then %s at once", degrees(r.x), degrees(s.c[i])))
	if step < 0 {
		s.flag[i] |= tooFar
	}
}

// noteStand tells a stand too long for the probe's noise that ends in a jump up.
// Whether it stood still or is raised since is not known: nothing is taken back
// here, and nothing is credited past the jump.
func (t *track) noteStand(i, from int, v *view) {
	r := &t.run
	if t.prof.freezeAt > 0 && r.n >= t.prof.freezeAt && t.s.c[i] > r.x && t.isJump(i, v) {
		t.note(v, Stuck, t.s.row[from], fmt.Sprintf("%s without change over %d readings, though this probe's readings scatter, then %s at once", degrees(r.x), r.n, degrees(t.s.c[i])))
	}
}

// catchesUpAlone judges a step without the other probes: down, it is faster than
// a sensor follows, or than one that is slow against the log's interval; up, it
// ends a long stand in the middle of a move.
func (t *track) catchesUpAlone(i int, step float64, v *view) bool {
	if step > 0 {
		return t.run.n >= fewestStuck && t.movingBefore(t.run.from)
	}
	return t.isJump(i, v) || t.prof.tauS >= slowReadings*t.s.step(i)
}
