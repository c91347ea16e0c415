package assess

import (
	"context"
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal"
	"posset/thermal/logfile"
)

// Evidence reads a record a second time and hands every sound reading of its
// product probes to row, with what it adds to the credit. The record is never
// held in memory. It fails where the record has changed since result was read,
// and with the error of row.
func (r *LogReader) Evidence(ctx context.Context, file string, result *beverage.LogResult, row func(beverage.EvidenceRow) error) error {
	log, err := logfile.ReadFile(ctx, file, r.opt)
	if err != nil {
		return err
	}
	w := r.witness(log, row)
	opt := r.opt
	opt.Readings = w.take
	again, err := logfile.ReadFile(ctx, file, opt)
	switch {
	case err != nil:
		return err
	case w.err != nil:
		return w.err
	case again.SHA256 != result.SHA256 || log.SHA256 != result.SHA256:
		return fmt.Errorf("%s: changed while it was read; read it again when nothing writes to it", file)
	}
	result.Evidence = &beverage.Evidence{File: file, Rule: r.rule(), Rows: w.rows, Probes: w.probes()}
	if h, ok := r.hingeOf(log, result); ok {
		h.reading = &w.runs[h.cold].EvidenceProbe
		result.Turning = h.turning()
	}
	return nil
}

// rule says how a row follows from the one before it, so that a colleague can
// work it out by hand.
func (r *LogReader) rule() string {
	b := r.opt.Bases[0]
	if ref, plain := facts.BoundOf(b).Plain(); plain {
		return fmt.Sprintf("rate = 10^((lowered - %.6g)/%.6g); piece = dt (rate1 - rate0)/(ln 10/%.6g (lowered1 - lowered0)), or dt rate where both are the same; dt in minutes", ref.TrefC, ref.ZC, ref.ZC)
	}
	bound := facts.BoundOf(b)
	return fmt.Sprintf("rate = 10^((lowered - %.6g)/z) with z %.6g below %.6g C and %.6g above it, 0 below %.6g C, above %.6g C as at %.6g C; piece = the exact integral of rate over the straight line between both lowered readings, parted where the rule changes; dt in minutes",
		bound.Below.TrefC, bound.Below.ZC, bound.Below.TrefC, bound.Above.ZC, bound.MinC, bound.MaxC, bound.MaxC)
}

// witness adds up the pieces between sound readings, one probe at a time.
type witness struct {
	log       *logfile.Log
	bound     thermal.Bound
	tolerance float64
	limitS    float64
	runs      []witnessed
	row       func(beverage.EvidenceRow) error
	rows      int
	line      int // of the file, of the latest reading
	err       error
}

// witnessed is what was added up of one probe.
type witnessed struct {
	beverage.EvidenceProbe
	seen         bool
	lastS, lastC float64
	lastPiece    float64
}

// gapFactor is how many usual steps of the clock two readings may be apart
// before nothing is counted between them, as the reader of records has it.
const gapFactor = 1.5

func (r *LogReader) witness(log *logfile.Log, row func(beverage.EvidenceRow) error) *witness {
	w := &witness{log: log, bound: facts.BoundOf(r.opt.Bases[0]), tolerance: r.opt.ToleranceC, limitS: gapFactor * log.Understood.IntervalS, row: row, runs: make([]witnessed, len(log.Probes))}
	for i, p := range log.Probes {
		w.runs[i].Name = p.Name
		if len(p.Results) > 0 {
			w.runs[i].CreditedMinutes = p.Results[0].CreditedMin
		}
	}
	return w
}

// take is add, with the row of the file.
func (w *witness) take(x logfile.Reading) {
	w.line = x.Row
	w.add(x.Probe, x.TimeS, x.TempC)
}

func (w *witness) add(probe int, timeS, tempC float64) {
	if w.err != nil || probe >= len(w.runs) || w.log.Probes[probe].Role != logfile.Product {
		return
	}
	at := &w.runs[probe]
	lowered := tempC - w.tolerance - w.log.Probes[probe].LoweredC
	e := beverage.EvidenceRow{Probe: at.Name, Row: w.line, TimeS: timeS, TempC: tempC, LoweredC: lowered, Rate: w.bound.LethalRate(lowered)}
	if dt := timeS - at.lastS; at.seen && (w.limitS <= 0 || dt < w.limitS) {
		e.PieceMin = w.bound.Piece(dt/secondsPerMinute, at.lastC, lowered)
	} else if at.seen {
		e.Note = fmt.Sprintf("not counted: %.4g s without a sound reading before it", dt)
		at.UncountedS += dt
	}
	at.SumMinutes += e.PieceMin
	e.SumMin = at.SumMinutes
	if hangs := at.lastPiece + e.PieceMin; at.seen && hangs > at.TopMinutes {
		at.TopMinutes, at.TopS = hangs, at.lastS
	}
	at.seen, at.lastS, at.lastC, at.lastPiece = true, timeS, lowered, e.PieceMin
	at.Readings++
	w.rows++
	if w.row != nil {
		w.err = w.row(e)
	}
}

func (w *witness) probes() []beverage.EvidenceProbe {
	list := []beverage.EvidenceProbe{}
	for i, p := range w.log.Probes {
		if p.Role == logfile.Product {
			list = append(list, w.runs[i].EvidenceProbe)
		}
	}
	return list
}
