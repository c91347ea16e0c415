package logfile

import (
	"fmt"
	"math"
	"sort"
)

type analysis struct {
	layout    *layout
	clock     *clockReader
	o         Options
	tracks    []*track
	intervalS float64
	max       float64
	started   bool
}

type track struct {
	column
	samples      int
	startS, endS float64
	minC, maxC   float64
	have         bool
	t, x         float64
	word, cred   []float64
	faults       faultList
}

func newAnalysis(l *layout, c *clockReader, o Options) *analysis {
	a := &analysis{layout: l, clock: c, o: o}
	for _, col := range l.columns {
		a.tracks = append(a.tracks, &track{column: col, word: make([]float64, len(o.Bases)), cred: make([]float64, len(o.Bases)), minC: math.Inf(1), maxC: math.Inf(-1)})
	}
	return a
}

func toC(v float64, unit string) float64 {
	switch unit {
	case "F":
		return (v - 32) / 1.8
	case "K":
		return v - 273.15
	}
	return v
}

func (a *analysis) window(w *window) {
	if a.intervalS == 0 {
		var dts []float64
		for i := 1; i < len(w.t); i++ {
			if d := w.t[i] - w.t[i-1]; d > 0 {
				dts = append(dts, d)
			}
		}
		sort.Float64s(dts)
		if len(dts) > 0 {
			a.intervalS = dts[len(dts)/2]
		}
	}
	for i, t := range w.t {
		back := a.started && t <= a.max
		for p, tr := range a.tracks {
			tr.reading(a, p, t, w.cols[p][i], w.line[i], back)
		}
		if !back {
			a.max, a.started = t, true
		}
	}
}

func (tr *track) reading(a *analysis, p int, t, v float64, line int, back bool) {
	add := func(k FaultKind, detail string) {
		tr.faults.add(Fault{Kind: k, Row: line, Time: a.clock.text(t), Detail: detail})
	}
	x := toC(v, tr.unit)
	switch {
	case v != v:
		add(Dropout, "no value")
		return
	case x < -60 || x > 250:
		add(Code, fmt.Sprintf("%g is no temperature", v))
		return
	case back && tr.have && t == tr.t && x == tr.x:
		add(Repeat, "the row before again")
		return
	case back:
		add(ClockBack, "the clock runs back")
	}
	tr.samples++
	tr.minC, tr.maxC = min(tr.minC, x), max(tr.maxC, x)
	if tr.have && t > tr.t {
		gap := t-tr.t > 1.5*a.intervalS
		if gap {
			add(Gap, fmt.Sprintf("no reading for %g s", t-tr.t))
		}
		for i, b := range a.o.Bases {
			piece := b.Ref.Piece(t-tr.t, tr.x, x) / 60
			tr.word[i] += piece
			if !gap && !back && x-a.o.ToleranceC >= b.MinC {
				tr.cred[i] += b.Ref.Piece(t-tr.t, tr.x-a.o.ToleranceC, x-a.o.ToleranceC) / 60
			}
		}
	}
	if !tr.have {
		tr.startS = t
	}
	tr.endS, tr.t, tr.x, tr.have = t, t, x, true
	if a.o.History != nil {
		a.o.History(p, t, x)
	}
}

func (a *analysis) finish(r *rowReader) (*Log, error) {
	if r.rows < 2 {
		return nil, fmt.Errorf("%s: %d rows of readings; at least two are needed", r.name, r.rows)
	}
	l := &Log{Understood: Understood{Rows: r.rows, IntervalS: a.intervalS, TimeForm: a.layout.time.words(), LeftOut: a.layout.leftOut}}
	for _, tr := range a.tracks {
		p := Probe{Name: tr.name, Role: tr.role, RoleBasis: tr.basis, Unit: tr.unit, Samples: tr.samples, Start: a.clock.text(tr.startS), End: a.clock.text(tr.endS), StartS: tr.startS, EndS: tr.endS, MinC: tr.minC, MaxC: tr.maxC, Faults: tr.faults.list()}
		for i := range a.o.Bases {
			res := Result{LethalityMin: &tr.word[i]}
			if tr.role == Product {
				res.CreditedMin = &tr.cred[i]
				res.CreditedBeforeCoolingMin = &tr.cred[i]
			}
			p.Results = append(p.Results, res)
		}
		for _, at := range a.o.StaysAtC {
			p.Stays = append(p.Stays, Stay{AtC: at})
		}
		l.Probes = append(l.Probes, p)
	}
	return l, nil
}
