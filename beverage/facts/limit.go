package facts

import (
	"math"

	"posset/beverage"
	"posset/thermal/logfile"
)

// LimitCheck is one critical limit held against what is known.
type LimitCheck struct {
	Limit   beverage.CriticalLimit
	Found   beverage.Interval // in the limit's unit; unknown where nothing shows it
	Why     string            // where it was found, or what is missing
	Outcome beverage.Outcome
}

// Limits holds every critical limit of the scheduled process against the
// record, the spec and the measured values, in that order of weight.
func (f *Facts) Limits() []LimitCheck {
	var list []LimitCheck
	for _, l := range f.Drink.Process.Critical {
		c := LimitCheck{Limit: l}
		c.Found, c.Why = f.subject(l.What)
		c.Outcome = within(c.Found, l)
		f.byRecords(&c)
		list = append(list, c)
	}
	return list
}

// byRecords lets the records decide where any of them shows what a limit speaks
// of: the worst of their columns, and what a record does not show is in doubt.
func (f *Facts) byRecords(c *LimitCheck) {
	shown, outcome := false, beverage.Meets
	for i := range f.Records.Logs {
		run := &f.Records.Logs[i]
		if run.Shows(c.Limit.What) {
			shown = true
		}
		for _, d := range run.Departures(c.Limit, nil) {
			if d.Outcome.Worse(outcome) != outcome {
				c.Why = d.Why
			}
			outcome = outcome.Worse(d.Outcome)
		}
	}
	if shown {
		c.Outcome = outcome
	}
}

// within decides on the unfavourable end of either bound.
func within(i beverage.Interval, l beverage.CriticalLimit) beverage.Outcome {
	if !i.Known() {
		return beverage.CannotTell
	}
	o := beverage.Meets
	if l.AtLeast.Known {
		o = o.Worse(beverage.Against(&i.High, &i.Low, l.AtLeast.V))
	}
	if l.AtMost.Known {
		most, low, high := -l.AtMost.V, -i.Low, -i.High
		o = o.Worse(beverage.Against(&low, &high, most))
	}
	return o
}

// subject finds what a limit speaks of.
func (f *Facts) subject(what beverage.LimitSubject) (beverage.Interval, string) {
	d := f.Drink
	stated := func(g beverage.Given[float64], key string) (beverage.Interval, string) {
		if !g.Known {
			return beverage.Interval{}, "nothing shows it; " + key + " is not given"
		}
		return beverage.Point(g.V, beverage.Stated), "as the spec states it, not recorded"
	}
	switch what {
	case retortTemperature:
		return f.retortHold()
	case initialTemperature:
		if i, why := f.recordedStart(); i.Known() {
			return i, why
		}
		return stated(d.Process.InitialC, "process.initial_temperature")
	case comeUpTime:
		if i, why := f.recordedFigure(what); i.Known() {
			return i, why
		}
	case holdTime:
		if i, why := f.recordedFigure(what); i.Known() {
			return i, why
		}
		return stated(d.Process.HoldS, "process.hold_time")
	case fillTemperature:
		if i, why := f.recordedFill(); i.Known() {
			return i, why
		}
		return stated(d.Process.FillTempC, "process.fill_temperature")
	case packHoldTime:
		if i, why := f.recordedFigure(what); i.Known() {
			return i, why
		}
		return stated(d.Process.PackHoldS, "process.pack_hold_time")
	case "pH":
		if f.PH.Decides.Known() {
			return f.PH.Decides, string(f.PH.Decides.Basis)
		}
		return beverage.Interval{}, "no pH is known"
	case "water activity":
		return stated(d.Measured.WaterActivity, "measured.water_activity")
	case "viscosity":
		return stated(d.Measured.ViscosityMilliPa, "measured.viscosity")
	case "fill":
		return f.fillVolume()
	case "headspace":
		return f.headspace()
	}
	return beverage.Interval{}, "no record or figure of it is read here: hold it against the plant's own record"
}

func (f *Facts) fillVolume() (beverage.Interval, string) {
	p := f.Drink.Package
	if !p.FillML.Known {
		return beverage.Interval{}, "package.fill is not given"
	}
	return beverage.Around(p.FillML.V, p.FillToleranceML.Or(p.FillML.V*fillTolerancePct/100), beverage.Stated), "as the spec states it, with its tolerance"
}

func (f *Facts) headspace() (beverage.Interval, string) {
	p := f.Drink.Package
	fill, why := f.fillVolume()
	if !fill.Known() || !p.BrimfulML.Known {
		return beverage.Interval{}, "package.fill and package.brimful are needed"
	}
	return beverage.Interval{Low: p.BrimfulML.V - fill.High, Mid: p.BrimfulML.V - fill.Mid, High: p.BrimfulML.V - fill.Low, Basis: beverage.Stated}, why
}

// recordedStart is the coldest first reading of a product probe, less the
// sensor's tolerance.
func (f *Facts) recordedStart() (beverage.Interval, string) { return coldestStart(f.Records.Logs) }

func coldestStart(runs []Run) (beverage.Interval, string) {
	low := math.Inf(1)
	for _, run := range runs {
		for i := range run.heat {
			if run.Log.Probes[i].Role == logfile.Product && len(run.heat[i].points) > 0 {
				low = math.Min(low, run.heat[i].lows[0])
			}
		}
	}
	if math.IsInf(low, 1) {
		return beverage.Interval{}, ""
	}
	return beverage.Around(low, sensorToleranceC, beverage.Measured), "the coldest first reading of a product probe"
}

// recordedFigure is what the columns of all records show of a time, both ends.
func (f *Facts) recordedFigure(what beverage.LimitSubject) (i beverage.Interval, why string) {
	for k := range f.Records.Logs {
		run := &f.Records.Logs[k]
		for _, probe := range run.columnsOf(what) {
			g := run.figure(probe, what)
			switch {
			case !g.found.Known():
			case !i.Known():
				i, why = g.found, g.why
			default:
				i = beverage.Span(math.Min(i.Low, g.found.Low), math.Max(i.High, g.found.High), beverage.Measured)
			}
		}
	}
	return i, why
}

// recordedFill is the lowest and the highest reading of the filler's columns,
// less and more the sensor's tolerance.
func (f *Facts) recordedFill() (beverage.Interval, string) {
	low, high := math.Inf(1), math.Inf(-1)
	for k := range f.Records.Logs {
		run := &f.Records.Logs[k]
		for _, probe := range run.columnsOf(fillTemperature) {
			low, high = math.Min(low, run.heat[probe].lowest(math.Inf(-1), math.Inf(1))), math.Max(high, run.heat[probe].hottest())
		}
	}
	if math.IsInf(low, 1) {
		return beverage.Interval{}, ""
	}
	return beverage.Span(low-sensorToleranceC, high+sensorToleranceC, beverage.Measured), "the readings of the filler's column"
}

// retortHold is the lowest temperature that a retort or reference column keeps
// through its hold, less the sensor's tolerance.
func (f *Facts) retortHold() (beverage.Interval, string) {
	low := math.Inf(1)
	for _, run := range f.Records.Logs {
		for i, p := range run.Log.Probes {
			if (p.Role == logfile.Retort || p.Role == logfile.ReferenceThermometer) && p.Hold != nil && i < len(run.heat) {
				low = math.Min(low, run.heat[i].lowest(p.Hold.StartS, p.Hold.EndS))
			}
		}
	}
	if math.IsInf(low, 1) {
		return beverage.Interval{}, "no retort column of a record shows it"
	}
	return beverage.Around(low, sensorToleranceC, beverage.Measured), "the lowest reading of the retort during its hold"
}
