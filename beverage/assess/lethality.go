package assess

import (
	"context"
	"fmt"
	"io"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal"
	"posset/thermal/logfile"
)

// LogOptions says how records are read and what they are held against.
type LogOptions struct {
	Options
	TrefC      float64
	ZC         float64
	Organism   string           // overrides TrefC and ZC by the organism's own figures
	Target     *beverage.Target // nil: no outcome is told
	ToleranceC float64
	Unit       string // C | F | K, "" by heading
	Dates      string // dmy | mdy | ymd, ""
	Sheet      string
	Roles      map[string]string
	Limits     []beverage.CriticalLimit // of the scheduled process, that a record can be held against
	Also       []string                 // further bases, as ParseBasis takes them
	AboveC     []float64                // temperatures that the time above is wanted of
	Understood bool                     // tell a person what each record was taken for
}

// LogReader reads records one after another, all on the same terms.
type LogReader struct {
	target *facts.Target
	opt    logfile.Options
	limits []beverage.CriticalLimit
	draw   bool
	result beverage.LethalityResult
}

// NewLogReader works out the terms. It fails for a basis that cannot be and for
// an organism that is not held.
func NewLogReader(o LogOptions) (*LogReader, error) {
	basis, err := o.basis()
	if err != nil {
		return nil, err
	}
	r := &LogReader{limits: o.Limits, draw: o.Pictures, opt: logfile.Options{
		ToleranceC: o.ToleranceC, Unit: o.Unit, Dates: o.Dates, Sheet: o.Sheet, Roles: map[string]logfile.Role{},
		Bases: []logfile.Basis{basis},
	}}
	for heading, role := range o.Roles {
		r.opt.Roles[heading] = logfile.Role(role)
	}
	r.result = beverage.LethalityResult{
		Schema: beverage.LethalitySchema, Tool: o.tool(), Cautions: Cautions(),
		TrefC: basis.Ref.TrefC, ZC: basis.Ref.ZC, Basis: basis.Name, ToleranceC: o.ToleranceC,
	}
	for _, l := range o.Limits {
		r.result.Limits = append(r.result.Limits, string(l.What)+" "+l.Text)
	}
	r.result.ShowUnderstood = o.Understood
	if o.Target != nil {
		if err := r.aim(*o.Target, o.Organism); err != nil {
			return nil, err
		}
	}
	return r, r.further(o)
}

// further adds the bases and temperatures that are told beside the first.
func (r *LogReader) further(o LogOptions) error {
	for _, text := range o.Also {
		b, err := ParseBasis(text)
		if err != nil {
			return err
		}
		r.opt.Bases = append(r.opt.Bases, b)
	}
	r.opt.StaysAtC = append(r.opt.StaysAtC, o.AboveC...)
	return nil
}

func (o LogOptions) basis() (logfile.Basis, error) {
	if o.Organism == "" {
		ref, err := thermal.NewReference(o.TrefC, o.ZC)
		return logfile.Basis{Ref: ref}, err
	}
	if _, ok := thermal.FindOrganism(o.Organism); !ok {
		return logfile.Basis{}, fmt.Errorf("no D and z are held for %q; posset help organisms lists them", o.Organism)
	}
	return ParseBasis(o.Organism)
}

// aim sets the target. Minutes are minutes at the basis of the call; any other
// form brings its own basis, which then is the one that is told.
func (r *LogReader) aim(t beverage.Target, organism string) error {
	g := facts.TargetOf(t)
	if g.Problem != "" {
		return fmt.Errorf("target %q: %s", t.Text, g.Problem)
	}
	if organism != "" && t.Kind == beverage.TargetMinutes {
		g.Basis = r.opt.Bases[0]
	}
	r.target = &g
	r.opt.Bases = []logfile.Basis{g.Basis}
	r.result.TrefC, r.result.ZC, r.result.Basis, r.result.Target = g.Basis.Ref.TrefC, g.Basis.Ref.ZC, g.Basis.Name, t.Text
	if g.IsStay() {
		r.opt.StaysAtC = []float64{t.TrefC}
		return nil
	}
	minutes := g.Minutes
	r.result.TargetMinutes = &minutes
	return nil
}

// Read reads one record from a file.
func (r *LogReader) Read(ctx context.Context, file string) (beverage.LogResult, error) {
	f, err := logfile.Open(file)
	if err != nil {
		return beverage.LogResult{}, err
	}
	defer f.Close()
	return r.ReadFrom(ctx, f, file)
}

// ReadFrom reads one record from a stream, under the name by which it is told.
// One that can be set back to its start is read again where the answer hangs on
// a single reading, to say on which; of another that stays untold.
func (r *LogReader) ReadFrom(ctx context.Context, in io.Reader, name string) (beverage.LogResult, error) {
	opt, run := r.opt, facts.Run{}
	if len(r.limits) > 0 {
		run.On(opt.Bases[0], opt.ToleranceC)
		run.Know(r.limits, beverage.Given[float64]{})
		opt.History = run.Keep
	}
	tracer := facts.NewTracer(opt.Bases[0], opt.ToleranceC)
	if r.draw {
		opt.History = tracer.With(opt.History)
	}
	log, err := logfile.Read(ctx, in, name, opt)
	if err != nil {
		return beverage.LogResult{}, err
	}
	run.Log, run.Result = log, facts.LogResultOf(log, opt.Bases, r.target)
	run.Result.Understood = facts.UnderstoodOf(log.Understood)
	tracer.Draw(log, &run.Result)
	if err := r.turn(ctx, in, log, &run.Result); err != nil {
		return beverage.LogResult{}, err
	}
	for _, l := range r.limits {
		run.Result.Departures = append(run.Result.Departures, run.Departures(l, r.target)...)
	}
	run.Result.Departures = append(run.Result.Departures, facts.Together(run.Result.Departures, r.target)...)
	return run.Result, nil
}

// turn tells what would change the answer. The readings are looked at one by
// one, which takes a second reading, only where the answer may hang on one.
func (r *LogReader) turn(ctx context.Context, in io.Reader, log *logfile.Log, result *beverage.LogResult) error {
	h, ok := r.hingeOf(log, result)
	if !ok {
		return nil
	}
	if again, ok := in.(io.Seeker); ok && h.hangsOnOne() {
		if _, err := again.Seek(0, io.SeekStart); err != nil {
			return nil // a pipe: what cannot be read again stays untold
		}
		w, opt := r.witness(log, nil), r.opt
		opt.History = w.add
		if again, err := logfile.Read(ctx, in, log.File, opt); err != nil {
			return err
		} else if again.SHA256 == log.SHA256 {
			h.reading = &w.runs[h.cold].EvidenceProbe
		}
	}
	result.Turning = h.turning()
	return nil
}

// Failed is the result of a record that could not be used.
func Failed(file string, err error) beverage.LogResult {
	text := err.Error()
	return beverage.LogResult{File: file, Error: &text, Probes: []beverage.ProbeResult{}}
}

// Result puts records under one head.
func (r *LogReader) Result(logs []beverage.LogResult) *beverage.LethalityResult {
	out := r.result
	out.Logs = logs
	for _, l := range logs {
		if len(l.Departures) > 0 {
			// Of a record alone nobody said what class its drink is.
			out.Dispositions = dispositions(beverage.Undecided, "")
		}
	}
	return &out
}
