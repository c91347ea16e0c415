package facts

import (
	"math"

	"posset/beverage"
	"posset/thermal/logfile"
)

// Keep takes a sound reading of a probe; give it to the log reader as History.
func (r *Run) Keep(probe int, timeS, tempC float64) { r.collect(probe, timeS, tempC) }

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
