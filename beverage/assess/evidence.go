package assess

import (
	"context"
	"fmt"
	"math"

	"posset/beverage"
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
	opt.History = w.add
	again, err := logfile.ReadFile(ctx, file, opt)
	switch {
	case err != nil:
		return err
	case w.err != nil:
		return w.err
	case again.SHA256 != result.SHA256 || log.SHA256 != result.SHA256:
		return fmt.Errorf("%s: changed while it was read; read it again when nothing writes to it", file)
	}
	result.Evidence = &beverage.Evidence{File: file, Rows: w.rows, Probes: w.probes(), Turning: r.turning(log, result, w)}
	return nil
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
	b := r.opt.Bases[0]
	w := &witness{log: log, bound: b.Ref.Bound(), tolerance: r.opt.ToleranceC, limitS: gapFactor * log.Understood.IntervalS, row: row, runs: make([]witnessed, len(log.Probes))}
	if b.MinC != 0 {
		w.bound.MinC = b.MinC
	}
	for i, p := range log.Probes {
		w.runs[i].Name = p.Name
		if len(p.Results) > 0 {
			w.runs[i].CreditedMinutes = p.Results[0].CreditedMin
		}
	}
	return w
}

func (w *witness) add(probe int, timeS, tempC float64) {
	if w.err != nil || probe >= len(w.runs) || w.log.Probes[probe].Role != logfile.Product {
		return
	}
	at := &w.runs[probe]
	lowered := tempC - w.tolerance - w.log.Probes[probe].LoweredC
	e := beverage.EvidenceRow{Probe: at.Name, TimeS: timeS, TempC: tempC, LoweredC: lowered, Rate: w.bound.LethalRate(lowered)}
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
	w.err = w.row(e)
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

// turning tells what the answer hangs on; nothing without a target in minutes.
func (r *LogReader) turning(log *logfile.Log, result *beverage.LogResult, w *witness) []beverage.Turning {
	cold, mediumOnly := log.ColdestProduct(0)
	list := []beverage.Turning{}
	if r.result.TargetMinutes == nil || cold < 0 || mediumOnly || result.Outcome == nil {
		return append(list, beverage.Turning{What: "target", Text: "no target in minutes was held against a product probe: nothing turns"})
	}
	target, c := *r.result.TargetMinutes, log.Probes[cold].Results[0]
	if c.CreditedMin == nil {
		return append(list, beverage.Turning{What: "clock", Text: log.Probes[cold].Name + " has no credit that could be worked out: a usable clock would change the answer", Turns: true})
	}
	list = append(list, margin(*c.CreditedMin, target), r.tolerated(*c.CreditedMin, target))
	list = append(list, withoutProbes(log, result, target)...)
	list = append(list, hangingReading(w.runs[cold].EvidenceProbe, *c.CreditedMin, target))
	return append(list, assumed(log, cold, c, target)...)
}

func margin(credited, target float64) beverage.Turning {
	return beverage.Turning{What: "target", Text: fmt.Sprintf("credited %.4g min against %.4g: a target of more than %.4g min is not met", credited, target, credited)}
}

// tolerated is the tolerance at which the credit would come to the target: each
// C° more takes the same share off, as long as one reference holds at every
// temperature.
func (r *LogReader) tolerated(credited, target float64) beverage.Turning {
	t := beverage.Turning{What: "sensor tolerance"}
	b := r.opt.Bases[0]
	if b.MinC != 0 || !(credited > 0) {
		t.Text = "cannot be told for a basis that holds only above a temperature, or without credit"
		return t
	}
	at := r.opt.ToleranceC + b.Ref.ZC*math.Log10(credited/target)
	switch {
	case at < 0:
		t.Text = fmt.Sprintf("not even a tolerance of 0 meets the target: the readings are %.3g C° too low", -at)
	case credited >= target:
		t.Turns, t.Text = true, fmt.Sprintf("the target is met up to a tolerance of %.3g C°; %.3g was counted", at, r.opt.ToleranceC)
	default:
		t.Turns, t.Text = true, fmt.Sprintf("a tolerance of %.3g C° or less would meet the target; %.3g was counted", at, r.opt.ToleranceC)
	}
	return t
}

// withoutProbes tells whose removal would change the answer.
func withoutProbes(log *logfile.Log, result *beverage.LogResult, target float64) []beverage.Turning {
	var list []beverage.Turning
	for i, p := range log.Probes {
		if p.Role != logfile.Product {
			continue
		}
		rest, n := beverage.Meets, 0
		for k, q := range result.Probes {
			if k != i && log.Probes[k].Role == logfile.Product && q.Outcome != nil {
				rest, n = rest.Worse(*q.Outcome), n+1
			}
		}
		if n > 0 && rest != *result.Outcome {
			list = append(list, beverage.Turning{What: "probe", Text: fmt.Sprintf("without %s the outcome would be %q: it stands for the coldest packs and stays in", p.Name, rest), Turns: true})
		}
	}
	if list == nil {
		list = append(list, beverage.Turning{What: "probe", Text: "no single probe turns the outcome of the others"})
	}
	return list
}

func hangingReading(p beverage.EvidenceProbe, credited, target float64) beverage.Turning {
	t := beverage.Turning{What: "reading", Text: fmt.Sprintf("of %s most hangs on the reading at %.6g s: %.4g min with the pieces on both sides of it", p.Name, p.TopS, p.TopMinutes)}
	if credited >= target && credited-p.TopMinutes < target {
		t.Turns, t.Text = true, t.Text+"; without them the target is not met"
	}
	return t
}

// assumed tells which assumptions the answer hangs on.
func assumed(log *logfile.Log, cold int, c logfile.Result, target float64) []beverage.Turning {
	var list []beverage.Turning
	p := log.Probes[cold]
	if p.RoleBasis == logfile.Assumed {
		list = append(list, beverage.Turning{What: "role", Text: p.Name + " is only assumed to be a probe in the product; were it not, nothing would be credited", Turns: *c.CreditedMin >= target})
	}
	if b := c.CreditedBeforeCoolingMin; *c.CreditedMin >= target && (b == nil || *b < target) {
		list = append(list, beverage.Turning{What: "cooling", Text: "the target is reached only by counting the cooling", Turns: true})
	}
	if p.LoweredC > 0 {
		list = append(list, beverage.Turning{What: "reference", Text: fmt.Sprintf("%.3g C° were taken off %s beside the tolerance, by which it stood above medium or reference thermometer", p.LoweredC, p.Name)})
	}
	if n := len(p.Faults); n > 0 && *c.CreditedMin < target && c.LethalityMin != nil && *c.LethalityMin >= target {
		list = append(list, beverage.Turning{What: "faults", Text: fmt.Sprintf("%d faults of %s and the tolerance stand between its record at its word, %.4g min, and the target", n, p.Name, *c.LethalityMin), Turns: true})
	}
	return list
}
