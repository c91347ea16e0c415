package copacker

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/need"
)

// settings holds what the spec states of its own process against what the line
// can be set to, and where it states no heat, asks whether the line can come up
// to what such a route needs at all.
func (j *judge) settings(p *Process) {
	s := j.f.Drink.Process // of another route than the stated one it says nothing
	hold, holdS := hottest(s), longest(s)
	ask := func(what string, v beverage.Given[float64], tell telling, r Range, key string) {
		if v.Known {
			j.within(exactly(what, v.V, tell), r, "line.process."+key, p.Place)
		}
	}
	ask("hold temperature", hold, degrees, p.HoldC, "hold_temperature")
	ask("hold time", holdS, spans, p.HoldS, "hold_time")
	ask("fill temperature", s.FillTempC, degrees, p.FillC, "fill_temperature")
	ask("pack hold time", s.PackHoldS, spans, p.PackHoldS, "pack_hold_time")
	switch p.Route.V {
	case beverage.HighPressure:
		j.press(p)
	case beverage.SterileFiltration:
		j.filter(p)
	case beverage.HotFill:
		if !s.FillTempC.Known || !s.PackHoldS.Known {
			j.reach(p, p.FillC.AtMost, p.PackHoldS.AtMost, "fill_temperature", "pack_hold_time")
		}
	default:
		if j.f.Process.Heats() && (!hold.Known || !holdS.Known) {
			j.reach(p, p.HoldC.AtMost, p.HoldS.AtMost, "hold_temperature", "hold_time")
		}
	}
}

// hottest is the hold temperature, or that of the hottest zone of a tunnel.
func hottest(p beverage.Process) beverage.Given[float64] {
	t := p.HoldTempC
	for _, z := range p.Zones {
		if !p.HoldTempC.Known && (!t.Known || z.TempC > t.V) {
			t = beverage.Given[float64]{V: z.TempC, Known: true, Place: p.Place}
		}
	}
	return t
}

// longest is the hold time, or that in the hottest zone of a tunnel.
func longest(p beverage.Process) beverage.Given[float64] {
	t, hot := p.HoldS, hottest(p)
	for _, z := range p.Zones {
		if !p.HoldS.Known && z.TempC == hot.V {
			t = beverage.Given[float64]{V: t.V + z.TimeS, Known: true, Place: p.Place}
		}
	}
	return t
}

// reach asks whether the line at its hottest and longest comes up to the target
// that the spec states, else to what published figures ask of such a route.
func (j *judge) reach(p *Process, tC, holdS beverage.Given[float64], keyC, keyS string) {
	wanted, words, told := j.wanted()
	if !told {
		return
	}
	text := words + " is asked"
	switch {
	case !tC.Known:
		j.line("heat", "line.process."+keyC+".at_most", beverage.Place{}, p.Place, text+", and the line does not say how hot it goes")
	case !holdS.Known:
		j.line("heat", "line.process."+keyS+".at_most", beverage.Place{}, p.Place, text+", and the line does not say how long it holds")
	case holdS.V < wanted(tC.V):
		j.line("heat", "line.process."+keyS+".at_most", holdS.Place, p.Place, fmt.Sprintf("%s, and the line reaches %s for %s", text, degrees(tC.V), spans(holdS.V)))
	}
}

// wanted is the hold, seconds, that a temperature has to be kept for.
func (j *judge) wanted() (holdS func(tC float64) float64, words string, told bool) {
	if t := j.f.Drink.Process.Target; t.Known {
		return targetHold(facts.TargetOf(t.V)), "the target " + t.V.Text, true
	}
	n := need.For(j.f)
	if _, told := n.HoldS(0); !told {
		return nil, "", false
	}
	return func(tC float64) float64 { s, _ := n.HoldS(tC); return s }, n.Text, true
}

const secondsPerMinute = 60

// targetHold is the hold that a stated target asks for; +Inf where it cannot be
// worked out.
func targetHold(t facts.Target) func(tC float64) float64 {
	return func(tC float64) float64 {
		switch {
		case t.Problem != "":
			return math.Inf(1)
		case t.IsStay() && tC >= t.Stated.TrefC:
			return t.Stated.StayS
		case t.IsStay():
			return math.Inf(1)
		}
		return secondsPerMinute * t.Minutes / t.Basis.Ref.LethalRate(tC)
	}
}

// press asks for the pressure that the spec states, or for any at all.
func (j *judge) press(p *Process) {
	v := j.f.Drink.Process.PressureMPa
	switch {
	case v.Known:
		j.within(exactly("pressure", v.V, megaPa), p.PressureMPa, "line.process.pressure", p.Place)
	case !p.PressureMPa.AtMost.Known:
		j.line("pressure", "line.process.pressure.at_most", beverage.Place{}, p.Place, "the line does not say how much pressure it reaches")
	}
}

// filter asks for a filter as fine as the spec states, or for any at all.
func (j *judge) filter(p *Process) {
	v, has := j.f.Drink.Process.FilterPoreUM, p.FilterPoreUM
	switch {
	case !has.Known:
		j.line("filter", "line.process.filter_pore", beverage.Place{}, p.Place, "the line does not say how fine its filter is")
	case v.Known && has.V > v.V:
		j.line("filter", "line.process.filter_pore", has.Place, p.Place, fmt.Sprintf("a filter of %s is asked, and the line's finest is %s", micro(v.V), micro(has.V)))
	}
}

// limits asks that the line can be run inside the limits which a scheduled
// process states.
func (j *judge) limits(p *Process) {
	for _, c := range j.f.Drink.Process.Critical {
		r, key, tell, ok := setting(p, c.What)
		if !ok {
			continue
		}
		a := asked{what: "a " + string(c.What), low: c.AtLeast.Or(lowest), high: c.AtMost.Or(highest), tell: tell}
		j.within(a, r, "line.process."+key, p.Place)
	}
}

// setting is what a line is set to for a subject of a critical limit.
func setting(p *Process, what beverage.LimitSubject) (r Range, key string, tell telling, ok bool) {
	switch what {
	case "retort temperature":
		return p.HoldC, "hold_temperature", degrees, true
	case "hold time":
		return p.HoldS, "hold_time", spans, true
	case "fill temperature":
		return p.FillC, "fill_temperature", degrees, true
	case "pack hold time":
		return p.PackHoldS, "pack_hold_time", spans, true
	case "flow":
		return p.FlowLPerH, "flow", flows, true
	case "back pressure":
		return p.BackKPa, "back_pressure", gauge, true
	}
	return Range{}, "", nil, false
}
