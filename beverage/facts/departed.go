package facts

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"posset/beverage"
	"posset/thermal/logfile"
)

// The limits that a record can speak to. The first two it shows over time.
const (
	retortTemperature  beverage.LimitSubject = "retort temperature"
	fillTemperature    beverage.LimitSubject = "fill temperature"
	initialTemperature beverage.LimitSubject = "initial temperature"
	comeUpTime         beverage.LimitSubject = "come-up time"
	holdTime           beverage.LimitSubject = "hold time"
	packHoldTime       beverage.LimitSubject = "pack hold time"
)

// Recordable are the limits that a record can be asked about. A flow or a
// pressure is no temperature: of these it is only told which column has them.
func Recordable() []beverage.LimitSubject {
	return []beverage.LimitSubject{retortTemperature, fillTemperature, initialTemperature, comeUpTime, holdTime, packHoldTime, "flow", "back pressure"}
}

// Know tells a run which limits the scheduled process states, since a hold and a
// come-up are counted at the retort temperature it asks for, and at which
// temperature the closed pack is said to be held.
func (r *Run) Know(limits []beverage.CriticalLimit, packHoldC beverage.Given[float64]) {
	r.packHoldC = packHoldC
	for _, l := range limits {
		if l.What == retortTemperature && l.AtLeast.Known {
			r.retortC = l.AtLeast
		}
	}
}

// Departures holds a limit against a run: a departure for each stretch in which
// a column leaves it, or for each column whose figure is outside of it or
// cannot be shown to be inside; none where the run keeps it. Credits are worked
// out again only for a target in minutes, or without a target.
func (r *Run) Departures(l beverage.CriticalLimit, t *Target) []beverage.Departure {
	var list []beverage.Departure
	columns := r.columnsOf(l.What)
	for _, i := range columns {
		if l.What == retortTemperature || l.What == fillTemperature {
			list = append(list, r.stretchesOf(i, l, t)...)
			continue
		}
		list = append(list, r.figureOf(i, l)...)
	}
	if len(columns) > 0 {
		return list
	}
	d := departureOf(r.Result.File, l, beverage.CannotTell)
	d.Unit, d.Why = unitOf(l.What), r.whyNot(l.What)
	return []beverage.Departure{d}
}

// Shows tells whether the record speaks of a limit.
func (r *Run) Shows(what beverage.LimitSubject) bool { return len(r.columnsOf(what)) > 0 }

// aboutFilling tells a column of the filler by its heading.
var aboutFilling = regexp.MustCompile(`(?i)\bfill(er|ing)?\b`)

// columnsOf are the columns that show what a limit speaks of.
func (r *Run) columnsOf(what beverage.LimitSubject) []int {
	var list []int
	for i, p := range r.Log.Probes {
		if i >= len(r.heat) || len(r.heat[i].points) == 0 {
			continue
		}
		var shown bool
		switch what {
		case retortTemperature:
			shown = isMedium(p.Role)
		case comeUpTime, holdTime:
			shown = isMedium(p.Role) && (r.retortC.Known || p.Hold != nil)
		case initialTemperature:
			shown = p.Role == logfile.Product
		case packHoldTime:
			shown = p.Role == logfile.Product && r.packHoldC.Known
		case fillTemperature:
			shown = aboutFilling.MatchString(p.Name) && !isMedium(p.Role)
		}
		if shown {
			list = append(list, i)
		}
	}
	return list
}

func isMedium(role logfile.Role) bool {
	return role == logfile.Retort || role == logfile.ReferenceThermometer
}

func unitOf(what beverage.LimitSubject) string {
	switch what {
	case retortTemperature, fillTemperature, initialTemperature:
		return "C"
	case comeUpTime, holdTime, packHoldTime:
		return "s"
	}
	return ""
}

// whyNot says what a record would have to hold to show a limit.
func (r *Run) whyNot(what beverage.LimitSubject) string {
	switch what {
	case retortTemperature, comeUpTime, holdTime:
		return "no retort column of the record shows it"
	case initialTemperature:
		return "no product probe of the record shows it"
	case fillTemperature:
		return "no column of the record is headed as the filler's"
	case packHoldTime:
		return "no product probe shows it at a temperature that process.pack_hold_temperature states"
	}
	for _, x := range r.Log.Understood.LeftOut {
		if strings.Contains(strings.ToLower(x.Name), lastWord(what)) {
			return fmt.Sprintf("column %q may show it, but only temperatures are read here: hold it against the limit by hand", x.Name)
		}
	}
	return "this record does not show it"
}

// lastWord is what a heading would say of a limit: pressure of "back pressure".
func lastWord(what beverage.LimitSubject) string {
	words := strings.Fields(strings.ToLower(string(what)))
	return words[len(words)-1]
}

// shownFigure is what one column shows of a limit as a whole.
type shownFigure struct {
	found      beverage.Interval
	fromS, toS float64
	why        string
}

// figureOf holds the figure of a column against a limit.
func (r *Run) figureOf(probe int, l beverage.CriticalLimit) []beverage.Departure {
	f := r.figure(probe, l.What)
	o := within(f.found, l)
	if o == beverage.Meets {
		return nil
	}
	d := departureOf(r.Result.File, l, o)
	d.Column, d.Unit, d.Why = r.Log.Probes[probe].Name, unitOf(l.What), f.why
	if !f.found.Known() {
		return []beverage.Departure{d}
	}
	length := f.toS - f.fromS
	d.StartS, d.EndS, d.LengthS = &f.fromS, &f.toS, &length
	d.Worst, d.Depth = beyond(f.found, l)
	return []beverage.Departure{d}
}

func (r *Run) figure(probe int, what beverage.LimitSubject) shownFigure {
	h, tolerance := &r.heat[probe], r.toleranceC()
	switch what {
	case initialTemperature:
		c, s := h.lows[0], h.points[0].TimeS
		return shownFigure{beverage.Interval{Low: c - tolerance, Mid: c, High: c, Basis: beverage.Measured}, s, s, "the first reading of the container; its lower end has the tolerance off"}
	case packHoldTime:
		return h.stay(r.packHoldC.V, tolerance, r.Log.Understood.IntervalS, "the longest unbroken time at the temperature stated for the closed pack; its lower end has the tolerance off")
	case holdTime:
		if r.retortC.Known {
			return h.stay(r.retortC.V, tolerance, r.Log.Understood.IntervalS, "the longest unbroken time at the retort temperature asked for; its lower end has the tolerance off")
		}
		p := r.Log.Probes[probe].Hold
		return shownFigure{beverage.Point(p.EndS-p.StartS, beverage.Measured), p.StartS, p.EndS, fmt.Sprintf("the longest stretch within %g C° of the peak", logfile.HoldBandC)}
	}
	return r.comeUp(h, tolerance)
}

// comeUp is from the start of heating to the first reading at the retort
// temperature asked for, or near the hottest of all.
func (r *Run) comeUp(h *heatHistory, tolerance float64) shownFigure {
	if !r.retortC.Known {
		from, to := h.comeUp(h.hottest() - logfile.HoldBandC)
		return shownFigure{beverage.Point(to-from, beverage.Measured), from, to, fmt.Sprintf("from the start of heating to within %g C° of the hottest reading", logfile.HoldBandC)}
	}
	from, soonest := h.comeUp(r.retortC.V)
	_, latest := h.comeUp(r.retortC.V + tolerance)
	if math.IsInf(latest, 1) {
		return shownFigure{why: "with the tolerance off, the retort temperature asked for is never reached"}
	}
	return shownFigure{beverage.Span(soonest-from, latest-from, beverage.Measured), from, latest, "from the start of heating to the retort temperature asked for, with and without the tolerance"}
}

// comeUp is the last reading near the coldest one before a temperature was first
// reached, and when it was; +Inf where it never was. A dip later on is none of
// it.
func (h *heatHistory) comeUp(leastC float64) (fromS, toS float64) {
	coldest, toS := math.Inf(1), math.Inf(1)
	for i, p := range h.points {
		if p.TempC >= leastC {
			toS = p.TimeS
			break
		}
		coldest = math.Min(coldest, h.lows[i])
	}
	if len(h.points) > 0 {
		fromS = h.points[0].TimeS
	}
	for i, p := range h.points {
		if p.TimeS < toS && h.lows[i] <= coldest+logfile.HoldBandC {
			fromS = p.TimeS
		}
	}
	return fromS, toS
}
