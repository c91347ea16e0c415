package logfile

import (
	"math"
	"slices"
)

// Thresholds by which heating, hold and cooling are told apart: common
// practice, no source.
const (
	coolingDropC = 3.0  // below the peak, and the probe is cooling; as far above the trough, and it heats again
	levelC       = 0.25 // grid on which the way up is remembered
	levels       = 8    // a few more than HoldBandC / levelC
)

// mark is a moment with what was credited until then.
type mark struct {
	t        float64
	credited []float64
}

func (m *mark) set(t float64, credited []float64) {
	m.t = t
	m.credited = append(m.credited[:0], credited...)
}

// phases follows a probe through heating, hold and cooling, cycle after cycle.
type phases struct {
	started bool
	cooling bool
	peakC   float64
	peakS   float64
	trough  float64
	level   int          // highest grid level passed in this cycle
	passed  [levels]mark // when each of the latest levels was first passed
	held    mark         // last time within the band of the peak
	begin   mark         // of the cycle

	heating []float64 // credited before the hold, all cycles
	hold    []float64 // credited during it
	best    Hold      // longest hold
	bestOK  bool
	topC    float64 // highest peak of all cycles
	topS    float64

	turns *mediumClock // where the medium's turns are written down; nil for other probes
}

func (p *phases) reset(bases int) {
	p.heating, p.hold = make([]float64, bases), make([]float64, bases)
	p.topC = math.Inf(-1)
}

func (p *phases) clone() phases {
	out := *p
	for i := range out.passed {
		out.passed[i].credited = slices.Clone(p.passed[i].credited)
	}
	out.held.credited = slices.Clone(p.held.credited)
	out.begin.credited = slices.Clone(p.begin.credited)
	out.heating, out.hold = slices.Clone(p.heating), slices.Clone(p.hold)
	return out
}

func (p *phases) beginCycle(t, x float64, credited []float64) {
	p.started, p.cooling = true, false
	p.begin.set(t, credited)
	p.turns.add(t, false)
	p.peakC, p.level = math.Inf(-1), math.MinInt
	p.rise(t, x, credited)
}

// rise takes a reading above the peak.
func (p *phases) rise(t, x float64, credited []float64) {
	p.peakC, p.peakS = x, t
	top := int(math.Floor(x / levelC))
	for k := max(p.level, top-levels) + 1; k <= top; k++ {
		p.passed[k&(levels-1)].set(t, credited)
	}
	p.level = max(p.level, top)
	p.held.set(t, credited)
}

// nextLevelC is the temperature at which the way up is remembered again.
func (p *phases) nextLevelC() float64 { return float64(p.level+1) * levelC }

// startCooling books the cycle's heating and hold.
func (p *phases) startCooling(x float64) {
	p.book()
	p.turns.add(p.held.t, true)
	p.cooling, p.trough = true, x
}

func (p *phases) book() {
	k := int(math.Ceil((p.peakC - HoldBandC) / levelC))
	start := &p.passed[min(k, p.level)&(levels-1)]
	for i := range p.heating {
		p.heating[i] += start.credited[i] - p.begin.credited[i]
		p.hold[i] += p.held.credited[i] - start.credited[i]
	}
	h := Hold{ComeUpS: start.t - p.begin.t, StartS: start.t, EndS: p.held.t, PeakC: p.peakC}
	if !p.bestOK || h.EndS-h.StartS > p.best.EndS-p.best.StartS {
		p.best, p.bestOK = h, true
	}
	if p.peakC > p.topC {
		p.topC, p.topS = p.peakC, p.peakS
	}
}

// advance moves on over the readings from (inclusive) to (exclusive). NaN is a
// reading that is not believed. add credits the pieces that end after one
// reading and up to another; credited is what it adds to.
func (p *phases) advance(t, x []float64, from, to int, medium *mediumClock, credited []float64, add func(after, upTo int)) {
	done, held := from-1, -1
	flush := func(i int) {
		if i > done {
			add(done, i)
			done = i
		}
	}
	hold := func() {
		if held >= 0 {
			flush(held)
			p.held.set(t[held], credited)
			held = -1
		}
	}
	for i := from; i < to; i++ {
		switch xi := x[i]; {
		case xi != xi:
		case p.cooling && (xi < p.trough+coolingDropC || medium.cooling(t[i])):
			p.trough = min(p.trough, xi)
		case p.cooling, !p.started:
			flush(i)
			p.beginCycle(t[i], xi, credited)
		case xi < p.peakC-coolingDropC, medium.cooling(t[i]):
			hold()
			p.startCooling(xi)
		case xi >= p.nextLevelC():
			flush(i)
			held = -1
			p.rise(t[i], xi, credited)
		case xi > p.peakC:
			p.peakC, p.peakS, held = xi, t[i], i
		case xi >= p.peakC-HoldBandC:
			held = i
		}
	}
	hold()
	flush(to - 1)
}

// mediumClock tells when the medium was cooling: from the last time it stood
// near its peak until it heats again.
type mediumClock struct {
	turns []turn // in the order of the clock
}

type turn struct {
	t       float64
	cooling bool
}

func (m *mediumClock) add(t float64, cooling bool) {
	if m != nil {
		m.turns = append(m.turns, turn{t, cooling})
	}
}

// forget drops turns that no reading after t asks for.
func (m *mediumClock) forget(t float64) {
	for m != nil && len(m.turns) > 1 && m.turns[1].t <= t {
		m.turns = m.turns[1:]
	}
}

// cooling looks a moment up; a log without a medium column says no.
func (m *mediumClock) cooling(t float64) bool {
	if m == nil {
		return false
	}
	for i := len(m.turns) - 1; i >= 0; i-- {
		if m.turns[i].t <= t {
			return m.turns[i].cooling
		}
	}
	return false
}
