package heatpen

import (
	"fmt"
	"math"
	"sort"

	"posset/thermal"
)

// GeneralTime is the process time by the general method: the readings of the
// test, moved to another retort and initial temperature, integrated exactly.
// (RT-T)/(RT-IT) stays as it was at each time (Schultz and Olson 1940, Food
// Research 5:399, recalled), and so does (T-Tc)/(Tg-Tc) of the recorded cooling,
// with Tg at its start. That holds while the medium comes up in the same
// proportion between IT and RT as in the test. A process longer than the test
// follows the line of the curve, and no cooling is counted for it; nor for
// broken heating, whose pack may cool faster before it thickens than it did in
// the test. curve is Fit of the same test.
//
// It fails where the target cannot be reached within a week.
func GeneralTime(t Test, curve Curve, target Target, p Process) (ProcessTime, error) {
	if err := t.check(); err != nil {
		return ProcessTime{}, err
	}
	if err := p.check(target); err != nil {
		return ProcessTime{}, err
	}
	if !(curve.FhMin > 0) {
		return ProcessTime{}, fmt.Errorf("heatpen: %s: fh %g min; give the fit of the test", t.Name, curve.FhMin)
	}
	m := t.move(curve, target, p)
	heatingOnly := reach(target.Minutes, m.heating)
	if math.IsNaN(heatingOnly) {
		return ProcessTime{}, p.tooLong(t.Name)
	}
	end := heatingOnly
	if len(m.cool) > 0 && heatingOnly <= m.endMin() {
		end = reach(target.Minutes, func(tMin float64) float64 { return m.heating(tMin) + m.cooling(tMin) })
	}
	out := ProcessTime{Extended: end > m.endMin(), EndC: m.at(end)}
	out.HeatingMinutes, out.CoolingMinutes = m.heating(end), m.cooling(end)
	zero := (1 - ComeUpShare) * curve.ComeUpMin
	out.FromZeroMin = end - zero
	p.count(&out, curve, heatingOnly-zero)
	return out, nil
}

// moved is a test moved to a process. Times are minutes from steam on.
type moved struct {
	basis   thermal.Bound
	retortC float64
	coolC   float64
	heat    []thermal.Point // TimeS from steam on
	sum     []float64       // minutes of the target up to each
	fMin    float64         // of what follows the last
	cool    []thermal.Point // TempC holds (T-Tc)/(Tg-Tc), 1 at steam off
}

func (t Test) move(c Curve, target Target, p Process) moved {
	m := moved{basis: target.Basis, retortC: p.RetortC, coolC: p.CoolingC, fMin: max(c.FhMin, c.F2Min)}
	scale := (p.RetortC - p.InitialC) / (t.MediumC - t.initialC())
	for _, x := range t.Points {
		if x.TimeS < t.SteamOnS || t.cooled() && x.TimeS > t.CoolAtS {
			continue
		}
		// A reading above the medium is none of the medium's doing.
		below := max(0, t.MediumC-x.TempC)
		m.heat = append(m.heat, thermal.Point{TimeS: x.TimeS - t.SteamOnS, TempC: p.RetortC - scale*below})
	}
	m.sum = make([]float64, len(m.heat))
	for i := 1; i < len(m.heat); i++ {
		a, b := m.heat[i-1], m.heat[i]
		m.sum[i] = m.sum[i-1] + m.basis.Piece(b.TimeS-a.TimeS, a.TempC, b.TempC)/secondsPerMinute
	}
	if !c.Broken {
		m.cool = t.coolingShape()
	}
	return m
}

// coolingShape is the recorded cooling as a share of its fall, never above 1.
func (t Test) coolingShape() []thermal.Point {
	if !t.cooled() {
		return nil
	}
	first := sort.Search(len(t.Points), func(i int) bool { return t.Points[i].TimeS >= t.CoolAtS })
	if first == len(t.Points) {
		return nil
	}
	full := t.Points[first].TempC - t.CoolingC
	if !(full > leastDifferenceC) {
		return nil
	}
	var shape []thermal.Point
	for _, x := range t.Points[first:] {
		share := min(1, max(0, (x.TempC-t.CoolingC)/full))
		shape = append(shape, thermal.Point{TimeS: x.TimeS - t.Points[first].TimeS, TempC: share})
	}
	return shape
}

func (m moved) last() thermal.Point { return m.heat[len(m.heat)-1] }

func (m moved) endMin() float64 { return m.last().TimeS / secondsPerMinute }

// piece is the reading that a time comes after; at least the first.
func (m moved) piece(tS float64) int {
	return max(0, sort.Search(len(m.heat), func(i int) bool { return m.heat[i].TimeS > tS })-1)
}

// at is the product's temperature at a time.
func (m moved) at(tMin float64) float64 {
	tS := tMin * secondsPerMinute
	i := m.piece(tS)
	a := m.heat[i]
	if i == len(m.heat)-1 {
		return m.retortC - (m.retortC-a.TempC)*math.Pow(10, -(tMin-m.endMin())/m.fMin)
	}
	b := m.heat[i+1]
	return a.TempC + (b.TempC-a.TempC)*(tS-a.TimeS)/(b.TimeS-a.TimeS)
}

// heating is the target's minutes reached by heating up to a time.
func (m moved) heating(tMin float64) float64 {
	i := m.piece(tMin * secondsPerMinute)
	a := m.heat[i]
	if i == len(m.heat)-1 {
		return m.sum[i] + m.beyond(tMin-m.endMin())
	}
	return m.sum[i] + m.basis.Piece(tMin-a.TimeS/secondsPerMinute, a.TempC, m.at(tMin))
}

// beyond is what the line adds after the last reading, by the same smaller z
// that BallTime uses.
func (m moved) beyond(forMin float64) float64 {
	below := m.retortC - m.last().TempC
	rate := m.basis.LethalRate(m.retortC)
	if !(below > 0) {
		return rate * forMin
	}
	table := Table{ZC: smallerZ(m.basis), StartC: below}
	if !math.IsInf(m.basis.MinC, -1) {
		table.WorthC = m.retortC - m.basis.MinC
	}
	return rate * table.Approach(m.fMin, below, forMin)
}

// cooling is the target's minutes that the recorded cooling adds after steam
// off at a time; nothing beyond the record.
func (m moved) cooling(tMin float64) float64 {
	fallC := m.at(tMin) - m.coolC
	if tMin > m.endMin() || !(fallC > 0) {
		return 0
	}
	var sum float64
	for i := 1; i < len(m.cool); i++ {
		a, b := m.cool[i-1], m.cool[i]
		sum += m.basis.Piece(b.TimeS-a.TimeS, m.coolC+a.TempC*fallC, m.coolC+b.TempC*fallC)
	}
	return sum / secondsPerMinute
}
