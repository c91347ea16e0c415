package facts

import (
	"cmp"
	"math"
	"slices"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

// Tracer makes the record of each probe small enough to draw while it is read,
// in bounded space. What it adds up is for the eye: credit is the log reader's.
type Tracer struct {
	bound   thermal.Bound
	lowerC  float64
	widthS  float64 // of a slot, the same for all probes
	tracked []traced
}

// traced is one probe.
type traced struct {
	early    []reading // until the usual step between readings is known
	usualS   float64
	last     reading
	started  bool
	credited float64
	slots    []slot
	holes    []beverage.TraceHole
}

type reading struct{ timeS, tempC float64 }

type slot struct {
	at int
	beverage.TraceSlot
}

// How much is kept of a probe.
const (
	mostSlots = 300
	mostHoles = 64
	earlyRows = 33 // 32 steps
)

// brokenStep is how much longer than usual a step between two sound readings is
// where something between them was not sound.
const brokenStep = 2.5

// NewTracer follows lethality on a basis, with the tolerance taken off.
func NewTracer(b logfile.Basis, toleranceC float64) *Tracer {
	return &Tracer{bound: BoundOf(b), lowerC: toleranceC, widthS: 1}
}

// With listens beside another; next may be nil.
func (t *Tracer) With(next func(probe int, timeS, tempC float64)) func(probe int, timeS, tempC float64) {
	if next == nil {
		return t.Collect
	}
	return func(probe int, timeS, tempC float64) {
		next(probe, timeS, tempC)
		t.Collect(probe, timeS, tempC)
	}
}

// Collect is what the log reader calls with every sound reading.
func (t *Tracer) Collect(probe int, timeS, tempC float64) {
	for len(t.tracked) <= probe {
		t.tracked = append(t.tracked, traced{})
	}
	p, r := &t.tracked[probe], reading{timeS, tempC}
	if p.usualS > 0 {
		t.follow(p, r)
		return
	}
	if p.early = append(p.early, r); len(p.early) == earlyRows {
		t.settle(p)
	}
}

// settle finds the usual step, and follows what was kept back.
func (t *Tracer) settle(p *traced) {
	var steps []float64
	for i := 1; i < len(p.early); i++ {
		steps = append(steps, p.early[i].timeS-p.early[i-1].timeS)
	}
	slices.Sort(steps)
	p.usualS = math.Inf(1)
	if len(steps) > 0 {
		p.usualS = steps[len(steps)/2]
	}
	early := p.early
	p.early = nil
	for _, r := range early {
		t.follow(p, r)
	}
}

func (t *Tracer) follow(p *traced, r reading) {
	if p.started {
		if dt := r.timeS - p.last.timeS; dt > brokenStep*p.usualS {
			p.hole(beverage.TraceHole{FromS: p.last.timeS, ToS: r.timeS})
		} else {
			p.credited += t.bound.Piece(dt, p.last.tempC-t.lowerC, r.tempC-t.lowerC) / secondsPerMinute
		}
	}
	p.started, p.last = true, r
	at := int(math.Floor(r.timeS / t.widthS))
	for len(p.slots) > 0 && at-p.slots[0].at >= mostSlots {
		t.widen()
		at = int(math.Floor(r.timeS / t.widthS))
	}
	p.put(at, beverage.TraceSlot{LowS: r.timeS, LowC: r.tempC, HighS: r.timeS, HighC: r.tempC, EndS: r.timeS, CreditedMin: p.credited})
}

// put adds what comes later to its slot.
func (p *traced) put(at int, s beverage.TraceSlot) {
	if n := len(p.slots); n > 0 && p.slots[n-1].at == at {
		last := &p.slots[n-1]
		if s.LowC < last.LowC {
			last.LowS, last.LowC = s.LowS, s.LowC
		}
		if s.HighC > last.HighC {
			last.HighS, last.HighC = s.HighS, s.HighC
		}
		last.EndS, last.CreditedMin = s.EndS, s.CreditedMin
		return
	}
	p.slots = append(p.slots, slot{at, s})
}

// widen makes the slots of every probe twice as wide.
func (t *Tracer) widen() {
	t.widthS *= 2
	for i := range t.tracked {
		p := &t.tracked[i]
		old := p.slots
		p.slots = nil
		for _, s := range old {
			p.put(int(math.Floor(s.EndS/t.widthS)), s.TraceSlot)
		}
	}
}

// hole keeps the widest holes.
func (p *traced) hole(h beverage.TraceHole) {
	if len(p.holes) < mostHoles {
		p.holes = append(p.holes, h)
		return
	}
	narrowest := 0
	for i, x := range p.holes {
		if x.ToS-x.FromS < p.holes[narrowest].ToS-p.holes[narrowest].FromS {
			narrowest = i
		}
	}
	if n := p.holes[narrowest]; h.ToS-h.FromS > n.ToS-n.FromS {
		p.holes[narrowest] = h
	}
}

// Draw gives each probe of a result its trace; log is what the tracer listened to.
func (t *Tracer) Draw(log *logfile.Log, r *beverage.LogResult) {
	for i := range t.tracked {
		if t.tracked[i].usualS == 0 {
			t.settle(&t.tracked[i])
		}
	}
	for i := range r.Probes[:min(len(r.Probes), len(t.tracked))] {
		r.Probes[i].Trace = t.tracked[i].trace(t.widthS, log.Probes[i].StartS)
	}
}

func (p *traced) trace(widthS, startS float64) *beverage.Trace {
	if len(p.slots) == 0 {
		return nil
	}
	tr := &beverage.Trace{SlotS: widthS, From: startS, Holes: p.holes}
	slices.SortFunc(tr.Holes, func(a, b beverage.TraceHole) int { return cmp.Compare(a.FromS, b.FromS) })
	for _, s := range p.slots {
		tr.Slots = append(tr.Slots, s.TraceSlot)
	}
	return tr
}

// aimOf is what a picture of the record shows it against.
func aimOf(b logfile.Basis, t *Target) *beverage.Aim {
	a := &beverage.Aim{TrefC: b.Ref.TrefC, ZC: b.Ref.ZC}
	switch {
	case t == nil || t.Problem != "":
	case t.IsStay():
		a.StayC, a.StayS = ptr(t.Stated.TrefC), ptr(t.Stated.StayS)
	default:
		a.Minutes = ptr(t.Minutes)
	}
	return a
}
