package logfile

import (
	"math"
	"slices"
)

// Thresholds by which heating, hold and cooling are told apart: common
// practice, no source.
const (
	coolingDropC = 3.0 // below the peak, and the probe is cooling; as far above the trough, and it heats again
	levelC       = 0.5 // grid on which the way up is remembered
	levels       = 4   // a few more than HoldBandC / levelC
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
	p.turns.add(t, false)
	p.peakC, p.peakS, p.level = x, t, int(math.Floor(x/levelC))
	p.begin.set(t, credited)
	p.held.set(t, credited)
	for k := range p.passed {
		p.passed[k].set(t, credited)
	}
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
// reading and up to another; credited is what it adds to. spans are between what
// the readings run, nil where nobody looked.
func (p *phases) advance(t, x []float64, from, to int, spans *calmSpans, medium *mediumClock, credited []float64, add func(after, upTo int)) {
	done := from - 1
	flush := func(i int) {
		if i > done {
			add(done, i)
			done = i
		}
	}
	due := noMarks
	settle := func() {
		for k := p.level - levels + 1; k <= p.level; k++ {
			if i := due.passed[k&(levels-1)]; i >= 0 {
				flush(i)
				p.passed[k&(levels-1)].set(t[i], credited)
			}
		}
		if due.held >= 0 {
			flush(due.held)
			p.held.set(t[due.held], credited)
		}
		due = noMarks
	}
	for i := from; i < to; {
		cools, heats := i, to
		if coolS, heatS := medium.cooling(t[i]); coolS > t[i] {
			cools, heats = i+firstFrom(t[i:to], coolS), i
		} else {
			heats = i + firstFrom(t[i:to], heatS)
		}
		switch xi := x[i]; {
		case xi != xi:
			i++
		case p.cooling && (xi < p.trough+coolingDropC || i < heats):
			i = p.cool(x, i, to, heats)
		case p.cooling, !p.started:
			flush(i)
			p.beginCycle(t[i], xi, credited)
			i++
		case xi < p.peakC-coolingDropC, i >= cools:
			settle()
			p.startCooling(xi)
			i++
		default:
			i = p.stay(t, x, i, cools, spans, &due)
		}
	}
	settle()
	flush(to - 1)
}

// marks are readings at which the credit is still to be marked down; -1 is none.
type marks struct {
	passed [levels]int // by grid level
	held   int
}

var noMarks = marks{passed: [levels]int{-1, -1, -1, -1}, held: -1}

// firstFrom is the place of the first moment not before another.
func firstFrom(t []float64, s float64) int {
	if t[len(t)-1] < s {
		return len(t)
	}
	n, _ := slices.BinarySearch(t, s)
	return n
}

// cool passes over readings that go on cooling, and returns the next one. Before
// heats the medium cools too.
func (p *phases) cool(x []float64, i, to, heats int) int {
	trough := p.trough
	for ; i < to; i++ {
		if xi := x[i]; xi < trough {
			trough = xi
		} else if !(xi < trough+coolingDropC || i < heats) {
			break // heats again, or is not believed
		}
	}
	p.trough = trough
	return i
}

// stay passes over readings that heat or hold, until one drops to cooling or is
// not believed; it returns that one.
func (p *phases) stay(t, x []float64, i, to int, spans *calmSpans, due *marks) int {
	top := -1 // where a span with the peak begins
	defer func() {
		if top >= 0 {
			p.peakS = t[top+slices.Index(x[top:], p.peakC)]
		}
	}()
	for i < to {
		if n := spans.whole(i, to); n >= 0 && p.holds(spans.low[n], spans.high[n]) {
			if spans.high[n] > p.peakC {
				p.peakC, top = spans.high[n], i
			}
			i += calmSpan
			due.held = i - 1
			continue
		}
		end, peakC := min(to, spans.next(i)), p.peakC
		i = p.stayEach(t, x, i, end, due)
		if p.peakC > peakC {
			top = -1
		}
		if i < end {
			return i
		}
	}
	return i
}

// holds tells whether readings between two temperatures all stand within the
// hold's band, whichever of them comes first, and pass no level.
func (p *phases) holds(lowC, highC float64) bool {
	return lowC >= max(p.peakC, highC)-HoldBandC && highC < p.nextLevelC()
}

// stayEach is stay, reading by reading.
func (p *phases) stayEach(t, x []float64, i, to int, due *marks) int {
	peak, level, held, top := p.peakC, p.nextLevelC(), due.held, -1
	band, drop := peak-HoldBandC, peak-coolingDropC
	for ; i < to; i++ {
		xi := x[i]
		if !(xi >= band) {
			if xi >= drop {
				continue
			}
			break
		}
		held = i
		if xi > peak {
			peak, top = xi, i
			band, drop = peak-HoldBandC, peak-coolingDropC
			if xi >= level {
				level = p.pass(xi, i, due)
			}
		}
	}
	if top >= 0 {
		p.peakC, p.peakS = peak, t[top]
	}
	due.held = held
	return i
}

// pass notes that a reading passed grid levels on its way up, and gives the next
// one.
func (p *phases) pass(x float64, i int, due *marks) (nextC float64) {
	p.level++
	due.passed[p.level&(levels-1)] = i
	if nextC = p.nextLevelC(); x < nextC {
		return nextC // one level, as nearly always
	}
	top := int(math.Floor(x / levelC))
	for k := max(p.level, top-levels) + 1; k <= top; k++ {
		due.passed[k&(levels-1)] = i
	}
	p.level = top
	return p.nextLevelC()
}
