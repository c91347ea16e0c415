package facts

import (
	"math"

	"posset/beverage"
	"posset/thermal/logfile"
)

// retortTemperature is the one limit that a record shows over time.
const retortTemperature beverage.LimitSubject = "retort temperature"

// Keep takes a sound reading of a probe; give it to the log reader as History.
func (r *Run) Keep(probe int, timeS, tempC float64) { r.collect(probe, timeS, tempC) }

// Departures holds a limit against a run. A limit on the retort temperature
// gives a departure for each stretch outside of it, another limit one for the
// whole run where a record shows it; none where the run keeps it. Credits are
// worked out again only for a target in minutes, or without a target.
func (r *Run) Departures(l beverage.CriticalLimit, t *Target) []beverage.Departure {
	if l.What == retortTemperature {
		return r.retortDepartures(l, t)
	}
	found, unit := r.recorded(l.What)
	o := within(found, l)
	if o == beverage.Meets {
		return nil
	}
	d := departureOf(r.Result.File, l, o)
	d.Unit = unit
	if !found.Known() {
		d.Why = "this record does not show it"
		return []beverage.Departure{d}
	}
	d.Why = "as the record shows it, the tolerance counted against it"
	d.Worst, d.Depth = beyond(found, l)
	return []beverage.Departure{d}
}

// AllTogether is the name of what several departures come to.
const AllTogether = "all departures together"

// Together is what the departures of one run come to when each is at its worst;
// nil where fewer than two of them took anything off.
func Together(list []beverage.Departure, t *Target) []beverage.Departure {
	sum := beverage.Departure{What: AllTogether, Outcome: beverage.FallsShort, Why: "what each takes off, added up", Credits: []beverage.DepartureCredit{}}
	n := 0
	for _, d := range list {
		if len(d.Credits) == 0 {
			continue
		}
		sum.File = d.File
		if n++; n == 1 {
			sum.Credits = append(sum.Credits, d.Credits...)
			continue
		}
		for i := range sum.Credits {
			sum.Credits[i] = lessBoth(sum.Credits[i], d.Credits[i], t)
		}
	}
	if n < 2 {
		return nil
	}
	return []beverage.Departure{sum}
}

// lessBoth takes off what two departures take off one container's credit.
func lessBoth(a, b beverage.DepartureCredit, t *Target) beverage.DepartureCredit {
	if a.Credited == nil || b.Credited == nil {
		return a
	}
	worst := math.Max(0, *a.AtWorst-(*b.Credited-*b.AtWorst))
	without := math.Max(0, *a.Without-(*b.Credited-*b.Without))
	a.AtWorst, a.Without, a.Outcome = &worst, &without, worstOutcome(&worst, t)
	return a
}

// worstOutcome holds a credit against a target in minutes; nil without one.
func worstOutcome(credit *float64, t *Target) *beverage.Outcome {
	if t == nil || t.IsStay() || t.Problem != "" {
		return nil
	}
	o := beverage.CannotTell
	if credit != nil && *credit >= t.Minutes {
		o = beverage.Meets
	}
	return &o
}

func departureOf(file string, l beverage.CriticalLimit, o beverage.Outcome) beverage.Departure {
	return beverage.Departure{File: file, What: string(l.What), Limit: l.Text, Outcome: o, Credits: []beverage.DepartureCredit{}}
}

// beyond is the worst end of a figure, and how far it lies outside of a limit.
func beyond(i beverage.Interval, l beverage.CriticalLimit) (worst, depth *float64) {
	below, above := math.Inf(-1), math.Inf(-1)
	if l.AtLeast.Known {
		below = l.AtLeast.V - i.Low
	}
	if l.AtMost.Known {
		above = i.High - l.AtMost.V
	}
	if below >= above {
		return &i.Low, &below
	}
	return &i.High, &above
}

// recorded finds what a record alone shows of a limit, with the unit of it.
func (r *Run) recorded(what beverage.LimitSubject) (beverage.Interval, string) {
	switch what {
	case "initial temperature":
		i, _ := coldestStart([]Run{*r})
		return i, "C"
	case "come-up time", "hold time":
		return r.holdFigure(what == "come-up time"), "s"
	}
	return beverage.Interval{}, ""
}

// holdFigure is the come-up or the hold as the medium's column has it; of
// several columns both ends.
func (r *Run) holdFigure(comeUp bool) beverage.Interval {
	var i beverage.Interval
	for k, p := range r.Log.Probes {
		if !isMedium(p.Role) || p.Hold == nil || k >= len(r.heat) {
			continue
		}
		v := p.Hold.EndS - p.Hold.StartS
		if comeUp {
			v = r.heat[k].comeUpS()
		}
		if !i.Known() {
			i = beverage.Point(v, beverage.Measured)
			continue
		}
		i = beverage.Span(math.Min(i.Low, v), math.Max(i.High, v), beverage.Measured)
	}
	return i
}

// comeUpS is the time from the last reading near the coldest one before the
// hold to the first near the hottest of all. A dip later on is none of it.
func (h *heatHistory) comeUpS() float64 {
	least := h.hottest() - logfile.HoldBandC
	coldest, fromS, toS := math.Inf(1), 0.0, 0.0
	for i, p := range h.points {
		if p.TempC >= least {
			toS = p.TimeS
			break
		}
		coldest = math.Min(coldest, h.lows[i])
	}
	for i, p := range h.points {
		if p.TimeS < toS && h.lows[i] <= coldest+logfile.HoldBandC {
			fromS = p.TimeS
		}
	}
	return toS - fromS
}

func isMedium(role logfile.Role) bool {
	return role == logfile.Retort || role == logfile.ReferenceThermometer
}

// retortDepartures are the stretches in which a column of the medium is outside
// of the limit between the time it first keeps it and the time it last does.
// What comes before is come-up, what comes after is cooling.
func (r *Run) retortDepartures(l beverage.CriticalLimit, t *Target) []beverage.Departure {
	list, shown := []beverage.Departure{}, false
	for i, p := range r.Log.Probes {
		if !isMedium(p.Role) || i >= len(r.heat) || len(r.heat[i].points) == 0 {
			continue
		}
		shown = true
		list = append(list, r.stretchesOf(i, l, t)...)
	}
	if !shown {
		d := departureOf(r.Result.File, l, beverage.CannotTell)
		d.Why, d.Unit = "no retort column of the record shows it", "C"
		list = append(list, d)
	}
	return list
}

func (r *Run) stretchesOf(probe int, l beverage.CriticalLimit, t *Target) []beverage.Departure {
	found, kept := r.heat[probe].stretches(l)
	if !kept {
		d := departureOf(r.Result.File, l, beverage.FallsShort)
		d.Column, d.Unit, d.Why = r.Log.Probes[probe].Name, "C", "the limit is never reached in this record: there is no credit to work out again"
		d.Worst, d.Depth = beyond(beverage.Point(r.heat[probe].hottest(), beverage.Measured), l)
		return []beverage.Departure{d}
	}
	var list []beverage.Departure
	for _, s := range found {
		d := departureOf(r.Result.File, l, beverage.FallsShort)
		if !s.surely {
			d.Outcome = beverage.CannotTell
		}
		d.Column, d.Unit, d.Why = r.Log.Probes[probe].Name, "C", s.why()
		d.StartS, d.EndS, d.LengthS = &s.fromS, &s.toS, &s.lengthS
		if s.surely {
			d.Worst, d.Depth = beyond(beverage.Interval{Low: s.lowC, High: s.highC}, l)
			d.Credits = r.creditsAtWorst(s, t)
		} else {
			d.Worst, d.Depth = beyond(beverage.Interval{Low: s.lowC - sensorToleranceC, High: s.highC + sensorToleranceC}, l)
		}
		list = append(list, d)
	}
	return list
}

func (s stretch) why() string {
	if s.surely {
		return "outside by the record's word; from the reading before to the reading after"
	}
	return "inside by the record's word, outside once the tolerance of the thermometer is counted, as every credit counts it already"
}

// creditsAtWorst works out each container's credit with a departure at its worst.
func (r *Run) creditsAtWorst(s stretch, t *Target) []beverage.DepartureCredit {
	list := []beverage.DepartureCredit{}
	for i, p := range r.Log.Probes {
		if p.Role != logfile.Product || i >= len(r.heat) {
			continue
		}
		c := beverage.DepartureCredit{Probe: p.Name}
		if len(p.Results) > 0 && p.Results[0].CreditedMin != nil {
			r.atWorst(&c, i, *p.Results[0].CreditedMin, s)
		}
		c.Outcome = worstOutcome(c.AtWorst, t)
		list = append(list, c)
	}
	return list
}

// atWorst takes off all that the container's own readings may have earned over
// the departure, and credits instead its whole length at the coldest of medium
// and container in it.
func (r *Run) atWorst(c *beverage.DepartureCredit, probe int, credited float64, s stretch) {
	h := &r.heat[probe]
	coldestC := math.Min(s.lowC, h.lowest(s.fromS, s.toS)) - r.toleranceC()
	without := math.Max(0, credited-h.most(r.bound, s.fromS, s.toS))
	worst := without
	if !math.IsInf(coldestC, 0) {
		worst = math.Min(credited, without+r.bound.LethalRate(coldestC)*(s.toS-s.fromS)/secondsPerMinute)
	}
	c.Credited, c.AtWorst, c.Without = &credited, &worst, &without
}

const secondsPerMinute = 60

// toleranceC is what was taken off the readings of the run.
func (r *Run) toleranceC() float64 {
	if r.tolerance.Known {
		return r.tolerance.V
	}
	return sensorToleranceC
}

// On says on which basis a run was credited, and with what tolerance, for runs
// that are read without a drink.
func (r *Run) On(b logfile.Basis, toleranceC float64) {
	r.bound, r.tolerance = BoundOf(b), beverage.Say(toleranceC)
}
