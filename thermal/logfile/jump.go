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

// findJumps notes changes no sensor follows. After a jump up nothing is
// credited until as large a jump down takes it back: an offset that came at
// once does not go by itself.
func (t *track) findJumps(a, b int, v *view) {
	for i := a; i < b; i++ {
		switch {
		case t.s.flag[i]&afterHeat != 0:
			t.comeDown(i, v)
		case t.s.joined(i) && t.isJump(i):
			t.jump(i, v)
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

// isJump tells a step that no sensor follows. A dip of one reading counts as it
// is: neither the fall into it nor the return to no more than before is a jump.
func (t *track) isJump(i int) bool {
	if t.s.dips(i, 2*t.beyondC()) || t.s.dips(i-1, 2*t.beyondC()) {
		return false
	}
	lone := t.s.loneStep(i)
	return lone > t.jumpC(t.s.step(i)) && lone >= loneShare*math.Abs(t.s.c[i]-t.s.c[i-1])
}

func (t *track) jump(i int, v *view) {
	s := &t.s
	s.flag[i] |= tooFar
	after := "nothing is credited over it"
	switch lone := s.loneStep(i); {
	case t.role != Product:
	case s.c[i] > s.c[i-1]:
		after = "nothing is credited until it is taken back"
		t.doubtC += lone
	case lone >= returnShare*t.doubtC-2*t.beyondC():
		t.doubtC = 0
	}
	t.note(v, Rate, s.row[i], fmt.Sprintf("from %s to %s in %s: faster than a sensor in a liquid can follow; %s",
		degrees(s.c[i-1]), degrees(s.c[i]), duration(s.t[i]-s.t[i-1]), after))
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
func (s *series) loneStep(i int) float64 {
	step := s.c[i] - s.c[i-1]
	sign := math.Copysign(1, step)
	shared := 0.0
	if s.joined(i - 1) {
		shared = max(shared, sign*(s.c[i-1]-s.c[i-2]))
	}
	if s.joined(i + 1) {
		shared = max(shared, sign*(s.c[i+1]-s.c[i]))
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
