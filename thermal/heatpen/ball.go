package heatpen

import (
	"fmt"
	"math"

	"posset/thermal"
)

// BallTime is the process time by Ball's formula, B = fh log10(jh (RT-IT)/g),
// with g where heating and cooling together reach the target. Of the modelled
// cooling SafeCoolingShare is counted, with jc and fc as measured but no more
// than the formula assumes (1.41 and fh); cooling that was not measured is
// worked out as the formula assumes it, and told, and not to be relied on.
//
// Where the basis has a spread of z the smaller one is used from the rate at the
// retort temperature down, which credits no more than the basis anywhere.
//
// It fails where the target cannot be reached within a week.
func (c Curve) BallTime(target Target, p Process) (ProcessTime, error) {
	if err := p.check(target); err != nil {
		return ProcessTime{}, err
	}
	if err := c.check(); err != nil {
		return ProcessTime{}, err
	}
	b := c.ball(target, p)
	need := p.atRetort(target)
	out := ProcessTime{CoolingAssumed: !c.Cooled}
	out.FromZeroMin = reach(need, func(tMin float64) float64 { return b.heating(tMin) + b.cooling(tMin) })
	heatingOnly := reach(need, b.heating)
	if math.IsNaN(heatingOnly) {
		return ProcessTime{}, p.tooLong(c.Name)
	}
	rate := target.Basis.LethalRate(p.RetortC)
	out.EndC = p.RetortC - b.below(out.FromZeroMin)
	out.HeatingMinutes, out.CoolingMinutes = rate*b.heating(out.FromZeroMin), rate*b.cooling(out.FromZeroMin)
	p.count(&out, c, heatingOnly)
	return out, nil
}

// Delivered is what a process delivers whose heating lasts fromZeroMin from the
// corrected zero: minutes of the basis by heating, and by cooling as far as
// BallTime counts it.
func (c Curve) Delivered(basis thermal.Bound, p Process, fromZeroMin float64) (heatingMin, coolingMin float64, err error) {
	target := Target{Minutes: 1, Basis: basis}
	if err := p.check(target); err != nil {
		return 0, 0, err
	}
	if err := c.check(); err != nil {
		return 0, 0, err
	}
	if !(fromZeroMin >= 0 && fromZeroMin <= longestMin) {
		return 0, 0, fmt.Errorf("heatpen: a process of %g min; give 0 to a week", fromZeroMin)
	}
	b, rate := c.ball(target, p), basis.LethalRate(p.RetortC)
	return rate * b.heating(fromZeroMin), rate * b.cooling(fromZeroMin), nil
}

func (c Curve) check() error {
	if c.FhMin > 0 && c.Jh > 0 && (!c.Broken || c.F2Min > 0) {
		return nil
	}
	return fmt.Errorf("heatpen: %s: fh %g min and jh %g; give figures above 0", c.Name, c.FhMin, c.Jh)
}

// ball is a curve moved to a process, with times from the corrected zero.
type ball struct {
	table     Table
	startC    float64 // below the retort, of the straight part at the corrected zero
	fh, f2    float64
	breakMin  float64 // infinite for simple heating
	breaksAtC float64 // below the retort
	fc        float64
}

func (c Curve) ball(target Target, p Process) ball {
	b := ball{
		table:  Table{ZC: smallerZ(target.Basis), DropC: p.RetortC - p.CoolingC, Jc: ballJc, CoolingShare: SafeCoolingShare, StartC: HeatingStartC},
		startC: c.Jh * (p.RetortC - p.InitialC), fh: c.FhMin, f2: c.F2Min, fc: c.FhMin, breakMin: math.Inf(1),
	}
	if least := target.Basis.MinC; !math.IsInf(least, -1) {
		b.table.WorthC = p.RetortC - least
	}
	if c.Cooled {
		b.table.Jc, b.fc = min(ballJc, c.Jc), min(c.FhMin, c.FcMin)
	}
	if c.Broken {
		b.breakMin = c.breakMin(b.startC, p)
		b.breaksAtC = b.startC * math.Pow(10, -b.breakMin/b.fh)
	}
	return b
}

// breakMin is when heating slows in another process: after the same time or at
// the same temperature of the product, whichever comes first.
func (c Curve) breakMin(startC float64, p Process) float64 {
	below := p.RetortC - c.BreakC
	if !(below > 0) {
		return c.BreakMin
	}
	return max(0, min(c.BreakMin, c.FhMin*math.Log10(startC/below)))
}

// below is RT - T at a time.
func (b ball) below(tMin float64) float64 {
	if tMin <= b.breakMin {
		return b.startC * math.Pow(10, -tMin/b.fh)
	}
	return b.breaksAtC * math.Pow(10, -(tMin-b.breakMin)/b.f2)
}

// heating is the lethality of heating up to a time, minutes at RT.
func (b ball) heating(tMin float64) float64 {
	if tMin <= b.breakMin {
		return b.table.Approach(b.fh, b.startC, tMin)
	}
	return b.table.Approach(b.fh, b.startC, b.breakMin) + b.table.Approach(b.f2, b.breaksAtC, tMin-b.breakMin)
}

// cooling is the lethality that is counted after steam off at a time, minutes
// at RT.
func (b ball) cooling(tMin float64) float64 { return b.fc * b.table.cooling(b.below(tMin)) }
