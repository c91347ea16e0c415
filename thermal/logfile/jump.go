package logfile

import (
	"fmt"
	"math"
)

// How fast a sensor in a liquid can move. A sheathed sensor answers with a time
// constant of a second or more, so that a change it follows shows in the
// readings beside it as well; a lone step of this size is none it measured.
// Common practice, no source.
const (
	fastestCPerS = 3.0
	leastJumpC   = 5.0
	loneShare    = 0.75 // of a step that neither neighbour shares
	returnShare  = 0.9  // of a jump up that a jump down must take back
	mediumJump   = 3    // times as much for steam and water
)

// A smaller step is none either where it stands alone: among the other probes,
// and among the steps of its own probe. Common practice, no source.
const (
	leastAloneC = 2.0  // C°
	aloneFactor = 4    // times the largest other step of the probe near it
	aloneSpan   = 12   // readings on both sides, as long as a front may take from probe to probe
	sharedShare = 0.25 // of the step, that another probe makes at once somewhere near, and it is the process
)

// findJumps notes changes no sensor follows. After a jump up nothing is
// credited until as large a jump down takes it back: an offset that came at
// once does not go by itself.
func (t *track) findJumps(a, b int, v *view) {
	for i := a; i < b; i++ {
		switch {
		case t.s.flag[i]&afterHeat != 0:
			t.comeDown(i, v)
		case t.s.joined(i) && t.isKept(i, v):
			t.jump(i, t.s.keptStep(i), true, v)
		case t.s.joined(i) && t.isJump(i, v):
			t.jump(i, t.s.loneStep(i), t.s.c[i] > t.s.c[i-1], v)
		}
		if t.doubtC > 0 || t.spoilt {
			t.s.flag[i] |= uncredited
		}
	}
}

// jumpC is the least lone change within a time that no sensor follows.
func (t *track) jumpC(withinS float64) float64 {
	least := max(leastJumpC, 2*t.beyondC(), fastestCPerS*withinS)
	if t.role != Product {
		least *= mediumJump
	}
	return least
}

// isKept tells a jump up that was lowered as a spike but stays: the readings after
// it do not come back.
func (t *track) isKept(i int, v *view) bool {
	if t.role != Product || t.doubtUnit != "" || t.s.c[i] >= t.s.x[i] {
		return false
	}
	lone := t.s.keptStep(i)
	return lone > t.jumpC(t.s.step(i)) || lone > leastAloneC && t.alone(i, lone, v)
}

// keptStep is how much of the step up to a reading, as read, neither the steps
// beside it share nor the readings after it take back within the longest spike.
func (s *series) keptStep(i int) float64 {
	lone := s.loneOf(s.x, i)
	if s.x[i] <= s.x[i-1] {
		return 0
	}
	for k := i + 1; k <= i+widestBurst && k < s.len() && s.joined(k); k++ {
		if s.x[k] < s.x[i-1]+lone/4 {
			return 0
		}
	}
	return lone
}

// isJump tells a step that no sensor follows, or that this one alone made. A dip
// of one reading counts as it is: neither the fall into it nor the return to no
// more than before is a jump.
func (t *track) isJump(i int, v *view) bool {
	lone := t.s.loneStep(i)
	if lone <= min(leastAloneC, leastJumpC) || lone < loneShare*math.Abs(t.s.c[i]-t.s.c[i-1]) {
		return false
	}
	if t.s.dips(i, 2*t.beyondC()) || t.s.dips(i-1, 2*t.beyondC()) {
		return false
	}
	return lone > t.jumpC(t.s.step(i)) || t.alone(i, lone, v)
}

// alone tells whether a step stands out from all steps near it, of this probe
// and of the others. Without another probe nothing does.
func (t *track) alone(i int, lone float64, v *view) bool {
	if t.role != Product || lone <= max(leastAloneC, 2*t.beyondC()) {
		return false
	}
	s := &t.s
	from, to := max(1, i-aloneSpan), min(s.len()-1, i+aloneSpan)
	if !s.standsOut(i, lone, from, to) {
		return false
	}
	others := false
	for p, o := range t.a.tracks {
		if p == t.at || !o.speaks(v.cols[p][s.row[i-1]]) || !o.speaks(v.cols[p][s.row[i]]) {
			continue
		}
		if others = true; o.steps(v.cols[p], s.row[from-1:to+1], math.Copysign(sharedShare*lone, s.x[i]-s.x[i-1])) {
			return false
		}
	}
	return others
}

// standsOut tells whether no other step of its probe from one reading to another
// comes near a lone step, save one that takes it back. The others count as they
// were read: what a spike was lowered to is no step of the probe.
func (s *series) standsOut(i int, lone float64, from, to int) bool {
	back := 0
	for k := from; k <= to; k++ {
		step := s.x[k] - s.x[k-1]
		if k == i || !s.joined(k) || aloneFactor*math.Abs(step) <= lone {
			continue
		}
		if back++; back > 1 || step*(s.x[i]-s.x[i-1]) > 0 || 2*math.Abs(step) < lone {
			return false
		}
	}
	return true
}

// steps tells whether a probe makes a step of a size, and of its sign, between
// two rows next to each other.
func (t *track) steps(col []float64, rows []int, size float64) bool {
	for k := 1; k < len(rows); k++ {
		a, b := col[rows[k-1]], col[rows[k]]
		if step := t.unit.c(b) - t.unit.c(a); t.speaks(a) && t.speaks(b) && math.Abs(step) >= math.Abs(size) && step*size > 0 {
			return true
		}
	}
	return false
}

// jump notes a step of a size, up or down.
func (t *track) jump(i int, lone float64, up bool, v *view) {
	s := &t.s
	s.flag[i] |= tooFar
	after := "nothing is credited over it"
	switch {
	case t.role != Product:
	case up:
		after = "nothing is credited until it is taken back"
		t.doubtC += lone
	case lone >= returnShare*t.doubtC-2*t.beyondC():
		t.doubtC = 0
	}
	why := "faster than a sensor in a liquid can follow"
	if lone <= t.jumpC(s.step(i)) {
		why = "a step that no other probe shares and this one makes nowhere else near"
	}
	t.note(v, Rate, s.row[i], fmt.Sprintf("from %s to %s in %s: %s; %s", degrees(s.x[i-1]), degrees(s.x[i]), duration(s.t[i]-s.t[i-1]), why, after))
}

// comeDown takes the first reading after ones just too hot to be any: what
// raised them is still there.
func (t *track) comeDown(i int, v *view) {
	if t.role != Product {
		return
	}
	t.doubtC += highestC
	t.note(v, Rate, t.s.row[i], fmt.Sprintf("%s comes down from readings too hot to be any; nothing more is credited", degrees(t.s.c[i])))
}

// loneStep is how much of the step to a reading the steps beside it do not
// share.
func (s *series) loneStep(i int) float64 { return s.loneOf(s.c, i) }

func (s *series) loneOf(c []float64, i int) float64 {
	step := c[i] - c[i-1]
	sign := math.Copysign(1, step)
	shared := 0.0
	if s.joined(i - 1) {
		shared = max(shared, sign*(c[i-1]-c[i-2]))
	}
	if s.joined(i + 1) {
		shared = max(shared, sign*(c[i+1]-c[i]))
	}
	return sign*step - shared
}

// dips tells a single reading far below both beside it, of which the later is no
// higher than the earlier beyond noise.
func (s *series) dips(i int, beyond float64) bool {
	if i < 1 || !s.joined(i) || !s.joined(i+1) {
		return false
	}
	before, after := s.c[i-1], s.c[i+1]
	return s.c[i] < min(before, after)-beyond && after <= before+beyond
}
