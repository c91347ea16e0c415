package logfile

import (
	"math"
	"slices"

	"posset/thermal"
)

// ledger keeps what a probe has been credited so far. It is copied before a run
// of equal readings, so that the run can be taken back when it proves stuck.
type ledger struct {
	credited []float64 // min, by basis
	phase    phases
	stays    []stayCount
	last     lastReading
}

// lastReading is the reading that the next credited piece starts from.
type lastReading struct {
	have bool
	t, c float64
	flag flag
}

func newLedger(bases, stays int) ledger {
	l := ledger{credited: make([]float64, bases), stays: make([]stayCount, stays)}
	l.phase.reset(bases)
	return l
}

func (l *ledger) clone() ledger {
	out := *l
	out.credited = slices.Clone(l.credited)
	out.stays = slices.Clone(l.stays)
	out.phase = l.phase.clone()
	return out
}

// creditBasis is one basis with what is taken off readings before crediting.
type creditBasis struct {
	Basis
	lowerC float64 // tolerance and excess
	word   ratedC  // the latest temperature asked for, of the record at its word
	credit ratedC  // and lowered
}

// ratedC is a temperature with its lethal rate: each reading ends one piece and
// begins the next.
type ratedC struct{ c, rate float64 }

// pieceOf is Reference.Piece, in minutes, that keeps the rate at the end of the
// piece.
func (r *ratedC) pieceOf(ref thermal.Reference, dt, c0, c1 float64) float64 {
	l0 := r.rate
	if r.c != c0 || l0 == 0 {
		l0 = ref.LethalRate(c0)
	}
	r.c, r.rate = c1, ref.LethalRate(c1)
	return dt * thermal.MeanRate(l0, r.rate, (c1-c0)*(math.Ln10/ref.ZC)) / secondsPerMinute
}

// piece is the credit in minutes of a straight line from c0 to c1 lasting dt
// seconds: lowered, and cut off below the range the organism was measured in.
func (b *creditBasis) piece(dt, c0, c1 float64) float64 {
	c0, c1 = c0-b.lowerC, c1-b.lowerC
	if b.Bound != nil {
		return b.Bound.Piece(dt, c0, c1) / secondsPerMinute
	}
	if b.MinC != 0 && (c0 < b.MinC || c1 < b.MinC) {
		if c0 < b.MinC && c1 < b.MinC {
			return 0
		}
		low, high := min(c0, c1), max(c0, c1)
		dt *= (high - b.MinC) / (high - low)
		c0, c1 = b.MinC, high
	}
	return b.credit.pieceOf(b.Ref, dt, c0, c1)
}

// most is the largest lethality in minutes that the published spread gives a
// straight line at its word: at each temperature the larger of both rates, which
// is what they come to together less the smaller.
func (b *creditBasis) most(dt, c0, c1 float64) float64 {
	least := thermal.Bound{Below: b.Bound.Below, Above: b.Bound.Above, MinC: math.Inf(-1), MaxC: math.Inf(1)}
	both := b.Bound.Below.Piece(dt, c0, c1) + b.Bound.Above.Piece(dt, c0, c1)
	return (both - least.Piece(dt, c0, c1)) / secondsPerMinute
}

const secondsPerMinute = 60

// stayCount follows the longest unbroken stay at or above a temperature.
type stayCount struct {
	nowS, bestS, totalS float64
}

// piece counts a straight line; broken ends the stay before it.
func (s *stayCount) piece(dt, x0, x1, atC float64) {
	switch {
	case x0 >= atC && x1 >= atC:
		s.more(dt)
	case x0 < atC && x1 < atC:
		s.nowS = 0
	case x0 < atC: // comes up
		s.nowS = 0
		s.more(dt * (x1 - atC) / (x1 - x0))
	default:
		s.more(dt * (x0 - atC) / (x0 - x1))
		s.nowS = 0
	}
}

func (s *stayCount) more(dt float64) {
	s.nowS += dt
	s.totalS += dt
	s.bestS = math.Max(s.bestS, s.nowS)
}
