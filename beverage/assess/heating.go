package assess

import (
	"errors"
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal"
	"posset/thermal/heatpen"
)

// HeatingOptions says how heat-penetration records are read and which process
// is asked for.
type HeatingOptions struct {
	Options
	Target     beverage.Target
	RetortC    float64                 // lowest that will be held
	InitialC   float64                 // lowest that the product will have
	CoolingC   beverage.Given[float64] // coldest of the cooling medium; not given asks for the most heating
	ComeUpS    beverage.Given[float64] // shortest of the plant; not given earns no credit
	ToleranceC float64                 // of the retort's and the product's thermometer, C°
	Medium     string                  // heading of the column that shows the medium; "" by its heading
	Unit       string
	Dates      string
	Sheet      string
	Roles      map[string]string
}

// Heating works out what heat-penetration records say about a process. Records
// that cannot be used carry their error in the result and in the errors
// returned; where none is left there is no result.
func Heating(o HeatingOptions, records []HeatingRecord) (*beverage.HeatingResult, []error) {
	target, err := o.target()
	if err != nil {
		return nil, []error{err}
	}
	r := o.result(target)
	var errs []error
	var tests []heatpen.Test
	var tested []int // the container of each test
	for _, rec := range records {
		containers, usable, recErrs := rec.read()
		errs = append(errs, recErrs...)
		for i, at := range usable {
			tests = append(tests, rec.tests[i])
			tested = append(tested, len(r.Containers)+at)
		}
		r.Logs, r.Containers = append(r.Logs, rec.log), append(r.Containers, containers...)
	}
	if len(tests) == 0 {
		return nil, errs
	}
	qualify(r, tests, tested)
	if err := o.study(r, target, tests, tested); err != nil {
		return nil, append(errs, plainHeating(err))
	}
	return r, errs
}

// target is the target on the basis that process times are worked out on.
func (o HeatingOptions) target() (heatpen.Target, error) {
	g := facts.TargetOf(o.Target)
	switch {
	case g.Problem != "":
		return heatpen.Target{}, fmt.Errorf("target %q: %s", o.Target.Text, g.Problem)
	case g.IsStay():
		return heatpen.Target{}, fmt.Errorf("target %q: a process time is worked out for minutes at a basis or decimal reductions, not for a stay; write \"F0 6 min\"", o.Target.Text)
	}
	return heatpen.Target{Minutes: g.Minutes, Basis: boundOf(g)}, nil
}

func (o HeatingOptions) result(t heatpen.Target) *beverage.HeatingResult {
	r := &beverage.HeatingResult{
		Schema: beverage.HeatingSchema, Tool: o.tool(), Cautions: Cautions(), Target: o.Target.Text, TargetMinutes: t.Minutes,
		TrefC: t.Basis.Below.TrefC, ZC: t.Basis.Below.ZC, RetortC: o.RetortC, InitialC: o.InitialC, ToleranceC: o.ToleranceC,
		CoolingC: known(o.CoolingC), Criterion: heatpen.Criterion, Notes: []string{},
	}
	if o.ComeUpS.Known {
		minutes := o.ComeUpS.V / secondsPerMinute
		r.ComeUpMin = &minutes
	}
	return r
}

const secondsPerMinute = 60

// process is what is asked of heatpen, with so much taken off the thermometers.
func (o HeatingOptions) process(toleranceC float64) heatpen.Process {
	return heatpen.Process{
		RetortC: o.RetortC - toleranceC, InitialC: o.InitialC - toleranceC, CoolingC: o.CoolingC.Or(0), ComeUpMin: o.ComeUpS.Or(0) / secondsPerMinute,
	}
}

// qualify gives each test the name of its container, with its file where there
// are several.
func qualify(r *beverage.HeatingResult, tests []heatpen.Test, tested []int) {
	for i, at := range tested {
		c := r.Containers[at]
		tests[i].Name = c.Name
		if len(r.Logs) > 1 {
			tests[i].Name = c.File + ", " + c.Name
		}
	}
}

func (o HeatingOptions) study(r *beverage.HeatingResult, t heatpen.Target, tests []heatpen.Test, tested []int) error {
	s, err := heatpen.StudyOf(tests, t, o.process(o.ToleranceC))
	if err != nil {
		return err
	}
	for i, at := range tested {
		fillContainer(&r.Containers[at], s.Curves[i], s.Ball[i], s.General[i])
	}
	r.Worst = worstContainer(s)
	r.BallMinutes, r.GeneralMinutes = s.WorstBall.CountMin, s.General[s.SlowestAt].CountMin
	r.MoreByBallMin, r.CountMinutes = s.MoreByBall, s.CountMin
	if word, err := heatpen.StudyOf(tests, t, o.process(0)); err == nil {
		r.AtItsWordMinutes = &word.CountMin
	}
	r.Notes = o.notes(r, s)
	return nil
}

func worstContainer(s heatpen.Study) beverage.WorstContainer {
	w := beverage.WorstContainer{
		FhMinutes: s.Worst.FhMin, FhOf: s.Worst.FhOf, Jh: s.Worst.Jh, JhOf: s.Worst.JhOf, InitialC: s.Worst.InitialC, InitialOf: s.Worst.InitialOf,
		RetortC: s.Worst.MediumC, RetortOf: s.Worst.RetortOf, Broken: s.Worst.Broken, SlowestByGM: s.Curves[s.SlowestAt].Name,
	}
	if s.Worst.Broken {
		w.F2Minutes = &s.Worst.F2Min
	}
	if s.Worst.Cooled {
		w.FcMinutes, w.Jc = &s.Worst.FcMin, &s.Worst.Jc
	}
	return w
}

func fillContainer(to *beverage.HeatingContainer, c heatpen.Curve, ball, general heatpen.ProcessTime) {
	to.InitialC, to.FhMinutes, to.Jh, to.Heating = &c.InitialC, &c.FhMin, &c.Jh, straight(c.Heating)
	to.SlipsMinutes = append([]float64{}, c.SlipsMin...)
	if to.Broken = c.Broken; c.Broken {
		to.BreakMinutes, to.BreakC, to.F2Minutes, to.Second = &c.BreakMin, &c.BreakC, &c.F2Min, straight(c.Second)
	}
	if c.Cooled {
		to.FcMinutes, to.Jc, to.Cooling = &c.FcMin, &c.Jc, straight(c.Cooling)
	}
	to.Ball, to.General = length(ball), length(general)
}

func straight(l heatpen.Line) *beverage.StraightPart {
	return &beverage.StraightPart{
		FromMinutes: l.FromMin, ToMinutes: l.ToMin, FromC: l.FromC, ToC: l.ToC, Readings: l.Readings, Independent: l.Independent,
		FLowMinutes: l.FLowMin, FHighMinutes: l.FHighMin, JLow: l.JLow, JHigh: l.JHigh, R2: l.R2, ResidualLog: l.ResidualLog,
		WorstC: l.WorstC, WorstMinutes: l.WorstAtMin,
	}
}

func length(p heatpen.ProcessTime) *beverage.ProcessLength {
	return &beverage.ProcessLength{
		FromZeroMinutes: p.FromZeroMin, AfterComeUpMinutes: p.AfterComeUpMin, HeatingOnlyMinutes: p.HeatingOnlyMin, CountMinutes: p.CountMin,
		ComeUpCreditMin: p.ComeUpCreditMin, EndC: p.EndC, HeatingLethality: p.HeatingMinutes, CoolingLethality: p.CoolingMinutes,
		CoolingAssumed: p.CoolingAssumed, Extended: p.Extended,
	}
}

// plainHeating leaves out the name of the package that an error begins with.
func plainHeating(err error) error { return errors.New(strings.TrimPrefix(err.Error(), "heatpen: ")) }

// fewContainers is how many tested containers are told to be few: common
// practice asks for ten or more a test, no source.
const fewContainers = 10

// notes tells what a reader must know before relying on a process time.
func (o HeatingOptions) notes(r *beverage.HeatingResult, s heatpen.Study) []string {
	notes := []string{}
	if len(s.Curves) < fewContainers {
		notes = append(notes, fmt.Sprintf("%d of %d containers or more that are commonly tested: the slowest of the lot may not be among them", len(s.Curves), fewContainers))
	}
	if !o.ComeUpS.Known {
		notes = append(notes, "the come-up of the plant is not given, and nothing is credited for it; --come-up")
	}
	if !o.CoolingC.Known {
		notes = append(notes, "the cooling medium is not given and counts as 0 °C, which asks for the most heating; --cooling-temperature")
	}
	for i, c := range s.Curves {
		notes = append(notes, curveNotes(c, s.General[i], o)...)
	}
	return append(notes, faultNotes(r.Containers)...)
}

func curveNotes(c heatpen.Curve, general heatpen.ProcessTime, o HeatingOptions) []string {
	var notes []string
	if c.Broken {
		notes = append(notes, fmt.Sprintf("%s: heating slows after %.1f min at %.1f °C: the drink thickens, and cooling earns nothing by the general method", c.Name, c.BreakMin, c.BreakC))
	}
	if !c.Cooled {
		notes = append(notes, c.Name+": no cooling was read off its record, and none is relied on")
	}
	if general.Extended {
		notes = append(notes, c.Name+": the process is longer than the test, which is carried on along its line")
	}
	if d := o.RetortC - c.MediumC; d > farC || d < -farC {
		notes = append(notes, fmt.Sprintf("%s: tested at %.1f °C, %.1f C° from the process asked for; test nearer to it", c.Name, c.MediumC, max(d, -d)))
	}
	return notes
}

// farC is how far from the process a test may lie before it is told: a choice
// of ours, since a drink's viscosity moves with temperature.
const farC = 5

func faultNotes(containers []beverage.HeatingContainer) []string {
	var notes []string
	for _, c := range containers {
		if len(c.Faults) > 0 {
			notes = append(notes, fmt.Sprintf("%s: the record has %d faults; only its sound readings were used, and a fault may hide a bend", c.Name, len(c.Faults)))
		}
	}
	return notes
}

// pointsOf turns a history into points, dropping a time that does not move on.
func pointsOf(history []thermal.Point) []thermal.Point {
	out := history[:0:0]
	for _, p := range history {
		if n := len(out); n == 0 || p.TimeS > out[n-1].TimeS {
			out = append(out, p)
		}
	}
	return out
}
