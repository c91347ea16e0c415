package facts

import (
	"context"
	"path/filepath"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

// Records is what the records of real runs show.
type Records struct {
	Target  *Target // nil: none stated
	Logs    []Run
	Outcome beverage.Outcome // over all records; CannotTell without any
}

// Run is one record with what was read from it.
type Run struct {
	Record beverage.Record
	Log    *logfile.Log
	Result beverage.LogResult
	Cold   int           // coldest product probe, -1 none
	Medium bool          // no product probe: the record shows the medium, not the drink
	heat   []heatHistory // what each probe saw, for what it did to the protein

	bound     thermal.Bound // that credit was given by
	tolerance beverage.Given[float64]
	retortC   beverage.Given[float64] // that the scheduled process asks for at least
	packHoldC beverage.Given[float64] // that the spec states for the closed pack
}

// sensorToleranceC is taken off every reading: the accuracy 21 CFR 113.40 asks
// of the indicating thermometer, 1 °F, as 0.5 °C.
const sensorToleranceC = 0.5

func recordsOf(ctx context.Context, d *beverage.Drink) (Records, error) {
	var r Records
	if d.Process.Target.Known {
		t := TargetOf(d.Process.Target.V)
		r.Target = &t
	}
	for _, rec := range d.Process.Records {
		run, err := runOf(ctx, d, rec, r.Target)
		if err != nil {
			return Records{}, err
		}
		r.Logs = append(r.Logs, run)
	}
	r.Outcome = outcomeOver(r.Logs)
	return r, nil
}

// outcomeOver lets the worst run decide; no run decides nothing.
func outcomeOver(runs []Run) beverage.Outcome {
	if len(runs) == 0 {
		return beverage.CannotTell
	}
	o := beverage.Meets
	for _, r := range runs {
		if r.Result.Outcome == nil {
			return beverage.CannotTell
		}
		o = o.Worse(*r.Result.Outcome)
	}
	return o
}

func runOf(ctx context.Context, d *beverage.Drink, rec beverage.Record, t *Target) (Run, error) {
	opt := logfile.Options{Unit: rec.Unit.V, ToleranceC: sensorToleranceC, Roles: map[string]logfile.Role{}}
	for heading, role := range rec.Roles {
		opt.Roles[heading] = logfile.Role(role)
	}
	opt.Bases, opt.StaysAtC = basesFor(t)
	run := Run{Record: rec}
	run.On(opt.Bases[0], sensorToleranceC)
	run.Know(d.Process.Critical, d.Process.PackHoldC)
	tracer := NewTracer(opt.Bases[0], opt.ToleranceC)
	opt.History = tracer.With(run.collect)
	path := rec.File
	if !filepath.IsAbs(path) {
		path = filepath.Join(d.Dir, path)
	}
	log, err := logfile.ReadFile(ctx, path, opt)
	if err != nil {
		return Run{}, &RecordError{Place: rec.Place, File: rec.File, Err: err}
	}
	run.Log = log
	run.Cold, run.Medium = log.ColdestProduct(0)
	run.Result = LogResultOf(log, opt.Bases, t)
	tracer.Draw(log, &run.Result)
	run.Result.File = rec.File
	run.Result.Retort, run.Result.Batch, run.Result.Calibrated = rec.Retort.V, rec.Batch.V, rec.Calibrated.V
	return run, nil
}

// basesFor asks for the target's own basis first, and for F0 and PU beside it.
func basesFor(t *Target) ([]logfile.Basis, []float64) {
	f0 := logfile.Basis{Name: "F0", Ref: thermal.F0}
	pu := logfile.Basis{Name: "PU", Ref: thermal.PU}
	if t == nil || t.Problem != "" {
		return []logfile.Basis{f0, pu}, nil
	}
	bases := []logfile.Basis{t.Basis}
	for _, b := range []logfile.Basis{f0, pu} {
		if b.Ref != t.Basis.Ref {
			bases = append(bases, b)
		}
	}
	if t.IsStay() {
		return bases, []float64{t.Stated.TrefC}
	}
	return bases, nil
}

// RecordError is a record that cannot be used.
type RecordError struct {
	Place beverage.Place
	File  string
	Err   error
}

func (e *RecordError) Error() string { return e.Place.String() + ": " + e.Err.Error() }

func (e *RecordError) Unwrap() error { return e.Err }

// LogResultOf puts a log into the words of a result; bases are those it was read
// with. Without a target no outcome is told.
func LogResultOf(log *logfile.Log, bases []logfile.Basis, t *Target) beverage.LogResult {
	r := beverage.LogResult{File: log.File, SHA256: log.SHA256, Probes: []beverage.ProbeResult{}, Aim: aimOf(bases[0], t)}
	capCredit(log)
	cold, medium := log.ColdestProduct(0)
	for i := range log.Probes {
		r.Probes = append(r.Probes, probeResult(&log.Probes[i], bases, t))
	}
	tellRecord(&r, log)
	if t == nil {
		return r
	}
	o := beverage.CannotTell
	if cold >= 0 && !medium {
		o = slowest(log, r.Probes)
	}
	r.Outcome = &o
	return r
}

// capCredit lets no credit exceed what the record says at its word: readings
// under a wrong unit say nothing until somebody says which unit they are in.
func capCredit(log *logfile.Log) {
	for i := range log.Probes {
		for k := range log.Probes[i].Results {
			x := &log.Probes[i].Results[k]
			if x.LethalityMin == nil || x.CreditedMin == nil || *x.CreditedMin <= *x.LethalityMin {
				continue
			}
			x.CreditedMin, x.CreditedBeforeCoolingMin, x.CreditedHeatingMin, x.CreditedHoldMin = x.LethalityMin, x.LethalityMin, nil, nil
		}
	}
}

// slowest lets the worst product probe decide.
func slowest(log *logfile.Log, probes []beverage.ProbeResult) beverage.Outcome {
	o := beverage.Meets
	for i, p := range log.Probes {
		if p.Role == logfile.Product && probes[i].Outcome != nil {
			o = o.Worse(*probes[i].Outcome)
		}
	}
	return o
}

func probeResult(p *logfile.Probe, bases []logfile.Basis, t *Target) beverage.ProbeResult {
	r := beverage.ProbeResult{
		Name: p.Name, Role: string(p.Role), RoleBasis: string(p.RoleBasis), Samples: p.Samples, Start: p.Start, End: p.End,
		Faults: []beverage.FaultResult{}, More: []beverage.BasisResult{},
	}
	if p.Samples > 0 {
		r.MinC, r.MaxC = ptr(p.MinC), ptr(p.MaxC)
	}
	for _, x := range p.Faults {
		r.Faults = append(r.Faults, beverage.FaultResult{Kind: string(x.Kind), Row: x.Row, Time: x.Time, Detail: x.Detail})
	}
	for i, x := range p.Results {
		if i == 0 {
			r.LethalityMinutes, r.CreditedMinutes, r.CreditedBeforeCoolingMn = x.LethalityMin, x.CreditedMin, x.CreditedBeforeCoolingMin
			r.LethalityMostMinutes = x.MostMin
			continue
		}
		b := bases[i]
		more := beverage.BasisResult{Basis: b.Name, TrefC: b.Ref.TrefC, ZC: b.Ref.ZC, LethalityMinutes: x.LethalityMin, CreditedMinutes: x.CreditedMin}
		counted(&more)
		r.More = append(r.More, more)
	}
	tellCourse(&r, p)
	if t != nil && p.Role == logfile.Product {
		o := probeOutcome(p, t)
		r.Outcome = &o
	}
	return r
}

func probeOutcome(p *logfile.Probe, t *Target) beverage.Outcome {
	switch {
	case t.Problem != "":
		return beverage.CannotTell
	case t.IsStay():
		if len(p.Stays) == 0 {
			return beverage.CannotTell
		}
		return beverage.Against(p.Stays[0].WordS, p.Stays[0].CreditedS, t.Stated.StayS)
	case len(p.Results) == 0:
		return beverage.CannotTell
	}
	word := p.Results[0].LethalityMin
	if most := p.Results[0].MostMin; most != nil {
		word = most // an organism falls short only where its other z does, too
	}
	return beverage.Against(word, p.Results[0].CreditedMin, t.Minutes)
}

// CoolingDecides tells whether the target is met only because cooling counts.
func (r Records) CoolingDecides() bool {
	if r.Target == nil || r.Target.IsStay() || r.Outcome != beverage.Meets {
		return false
	}
	for _, run := range r.Logs {
		for i, p := range run.Log.Probes {
			c := run.Result.Probes[i].CreditedBeforeCoolingMn
			if p.Role == logfile.Product && (c == nil || *c < r.Target.Minutes) {
				return true
			}
		}
	}
	return false
}
