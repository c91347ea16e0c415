package heatpen

import (
	"fmt"
	"math"

	"posset/thermal"
)

// Test is one container of a heat-penetration test. Times are seconds of one
// clock that only moves forward, temperatures °C.
type Test struct {
	Name     string
	Points   []thermal.Point // at the cold spot, from steam on or before
	SteamOnS float64         // the first reading at or after it is the initial temperature
	ComeUpS  float64         // that the medium took to its temperature; 0 where nobody told
	MediumC  float64         // temperature the medium was then held at
	CoolAtS  float64         // when cooling began; 0 where the record does not hold it
	CoolingC float64         // temperature of the cooling medium
}

// Curve is how a container heats and, where that was recorded, cools.
type Curve struct {
	Name      string
	MediumC   float64
	InitialC  float64
	ComeUpMin float64
	FhMin     float64
	Jh        float64
	Broken    bool    // heating slows at BreakMin to F2Min
	BreakMin  float64 // from the corrected zero
	BreakC    float64 // temperature of the product then
	F2Min     float64
	Cooled    bool // FcMin and Jc are known
	FcMin     float64
	Jc        float64

	SlipsMin []float64 // single readings left out of the fit as slips, minutes from the corrected zero
	Heating  Line      // of fh and jh
	Second   Line      // of f2, where Broken
	Cooling  Line      // of fc and jc, where Cooled
}

const (
	hottestC   = 200 // °C, of anything in a retort
	coldestC   = -10
	mostPoints = 1 << 17
)

// Fit finds fh, jh and, where cooling was recorded, fc and jc; see Criterion for
// the straight part. It fails where the record is no heating curve.
func Fit(t Test) (Curve, error) {
	if err := t.check(); err != nil {
		return Curve{}, err
	}
	c := Curve{Name: t.Name, MediumC: t.MediumC, ComeUpMin: t.ComeUpS / secondsPerMinute, InitialC: t.initialC()}
	s, err := t.heatingSeries()
	if err != nil {
		return Curve{}, err
	}
	s, c.SlipsMin = s.withoutSlips()
	parts, ok := s.split()
	if !ok {
		return Curve{}, fmt.Errorf("heatpen: %s: no straight part: the log of %g °C less the product bends all the way; check the temperature of the medium and when it was reached", t.Name, t.MediumC)
	}
	c.Heating = s.line(parts.first[0], parts.first[1], t.MediumC-c.InitialC)
	c.FhMin, c.Jh = c.Heating.FMin, c.Heating.J
	if parts.second[1] > 0 {
		c.breaks(s.line(parts.second[0], parts.second[1], t.MediumC-c.InitialC))
	}
	t.cool(&c)
	return c, nil
}

// breaks adds the slower second part, from where both lines meet.
func (c *Curve) breaks(second Line) {
	c.Second, c.Broken, c.F2Min = second, true, second.FMin
	c.BreakMin = max(0, (second.level-c.Heating.level)/(c.Heating.slope-second.slope))
	c.BreakC = c.MediumC - c.Heating.difference(c.BreakMin)
}

func (t Test) check() error {
	switch {
	case !(t.MediumC > coldestC && t.MediumC < hottestC):
		return fmt.Errorf("heatpen: %s: a medium at %g °C; give its temperature in the hold, below 200 °C", t.Name, t.MediumC)
	case !(t.ComeUpS >= 0):
		return fmt.Errorf("heatpen: %s: a come-up of %g s; give 0 where it is not known", t.Name, t.ComeUpS)
	case len(t.Points) > mostPoints:
		return fmt.Errorf("heatpen: %s: %d readings are too many; thin them to %d", t.Name, len(t.Points), mostPoints)
	case math.IsNaN(t.SteamOnS + t.CoolAtS):
		return fmt.Errorf("heatpen: %s: steam on or cooling has no time; give seconds of the record's clock", t.Name)
	}
	for i, p := range t.Points {
		if !(p.TempC > coldestC && p.TempC < hottestC) || math.IsNaN(p.TimeS) || i > 0 && !(p.TimeS > t.Points[i-1].TimeS) {
			return fmt.Errorf("heatpen: %s: reading %d: %g °C at %g s; give temperatures of -10 to 200 °C at times that rise", t.Name, i+1, p.TempC, p.TimeS)
		}
	}
	if t.initialC() >= t.MediumC-leastDifferenceC || math.IsNaN(t.initialC()) {
		return fmt.Errorf("heatpen: %s: no reading at steam on that is colder than the medium's %g °C", t.Name, t.MediumC)
	}
	return nil
}

// initialC is the product's temperature at steam on; NaN where it is not there.
func (t Test) initialC() float64 {
	for _, p := range t.Points {
		if p.TimeS >= t.SteamOnS {
			return p.TempC
		}
	}
	return math.NaN()
}

// zeroS is the corrected zero.
func (t Test) zeroS() float64 { return t.SteamOnS + (1-ComeUpShare)*t.ComeUpS }

// cooled tells whether the record holds cooling.
func (t Test) cooled() bool { return t.CoolAtS > t.SteamOnS+t.ComeUpS }

// heatingSeries holds the readings between come-up and the end of heating that
// are far enough from the medium.
func (t Test) heatingSeries() (*series, error) {
	var x, d []float64
	for _, p := range t.Points {
		below := t.MediumC - p.TempC
		if p.TimeS < t.SteamOnS+t.ComeUpS {
			continue
		}
		if below < leastDifferenceC || t.cooled() && p.TimeS > t.CoolAtS {
			break
		}
		x, d = append(x, (p.TimeS-t.zeroS())/secondsPerMinute), append(d, below)
	}
	if len(x) < fewestReadings {
		return nil, fmt.Errorf("heatpen: %s: %d readings between come-up and 1 C° short of the medium; a line needs %d", t.Name, len(x), fewestReadings)
	}
	return newSeries(x, d), nil
}

// withoutSlips leaves slips out and says when they were.
func (s *series) withoutSlips() (*series, []float64) {
	slips := s.slips()
	if len(slips) == 0 || len(s.x)-len(slips) < fewestReadings {
		return s, nil
	}
	var x, d, at []float64
	for i := range s.x {
		if len(slips) > 0 && slips[0] == i {
			at, slips = append(at, s.x[i]), slips[1:]
			continue
		}
		x, d = append(x, s.x[i]), append(d, s.d[i])
	}
	return newSeries(x, d), at
}

const leastCoolingShare = 0.1 // of the fall to the cooling medium, down to which fc is read

// cool reads fc and jc where the record allows; where not, Cooled stays false.
func (t Test) cool(c *Curve) {
	if !t.cooled() {
		return
	}
	var x, d []float64
	startC := math.NaN()
	for _, p := range t.Points {
		if p.TimeS < t.CoolAtS {
			continue
		}
		above := p.TempC - t.CoolingC
		if math.IsNaN(startC) {
			startC = above
		}
		if !(above >= max(leastDifferenceC, leastCoolingShare*startC)) {
			break
		}
		x, d = append(x, (p.TimeS-t.CoolAtS)/secondsPerMinute), append(d, above)
	}
	if len(x) < fewestReadings {
		return
	}
	s := newSeries(x, d)
	from, ok := s.longest(len(x), leastLegLog)
	if !ok {
		return
	}
	c.Cooling, c.Cooled = s.line(from, len(x), startC), true
	c.FcMin, c.Jc = c.Cooling.FMin, c.Cooling.J
}
