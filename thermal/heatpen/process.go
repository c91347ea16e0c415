package heatpen

import (
	"fmt"
	"math"

	"posset/thermal"
)

// Process is what a process time is wanted for: the lowest retort temperature
// that will be held and the lowest initial temperature, each with the tolerance
// of its thermometer taken off, °C.
type Process struct {
	RetortC   float64
	InitialC  float64
	CoolingC  float64 // coldest the cooling medium gets; 0 asks for the most heating
	ComeUpMin float64 // shortest come-up of the plant; 0 where not known, and no credit
}

// Target is what the process has to reach: minutes on a basis. The basis of
// one reference is its Bound, of decimal reductions that of the organism.
type Target struct {
	Minutes float64
	Basis   thermal.Bound
}

// ProcessTime is one answer to how long a container has to be heated.
type ProcessTime struct {
	FromZeroMin     float64 // B, from the corrected zero, cooling counted
	AfterComeUpMin  float64 // to be held once the retort is at temperature
	HeatingOnlyMin  float64 // the same with no lethality of cooling counted
	CountMin        float64 // of the last two the one to rely on
	ComeUpCreditMin float64 // taken off for the come-up
	EndC            float64 // cold spot at the end of heating
	HeatingMinutes  float64 // of the target, reached before cooling
	CoolingMinutes  float64 // of the target, counted for cooling
	CoolingAssumed  bool    // by Ball's formula, cooling was not measured: CountMin is HeatingOnlyMin
	Extended        bool    // longer than the test: carried on along its line
}

// longestMin is where a process is called impossible: a week.
const longestMin = 7 * 24 * 60

func (p Process) check(target Target) error {
	switch {
	case !(target.Minutes > 0 && target.Minutes <= longestMin):
		return fmt.Errorf("heatpen: a target of %g min; give more than 0 and no more than a week", target.Minutes)
	case !(p.RetortC > coldestC && p.RetortC < hottestC && p.InitialC > coldestC && p.CoolingC > coldestC):
		return fmt.Errorf("heatpen: retort %g °C, initial %g °C, cooling %g °C; give temperatures of -10 to 200 °C", p.RetortC, p.InitialC, p.CoolingC)
	case !(p.InitialC < p.RetortC && p.CoolingC < p.RetortC):
		return fmt.Errorf("heatpen: a retort at %g °C heats nothing that starts at %g °C and cools to %g °C; give a hotter retort", p.RetortC, p.InitialC, p.CoolingC)
	case !(p.ComeUpMin >= 0):
		return fmt.Errorf("heatpen: a come-up of %g min; give 0 where it is not known", p.ComeUpMin)
	case !(target.Basis.LethalRate(p.RetortC) > 0) || !(smallerZ(target.Basis) >= leastZC):
		return fmt.Errorf("heatpen: nothing counts toward the target at %g °C; give a retort temperature and z within its basis", p.RetortC)
	}
	return nil
}

// leastZC is the smallest z that a reference may have.
const leastZC = 1

func smallerZ(b thermal.Bound) float64 { return min(b.Below.ZC, b.Above.ZC) }

// credit is what the come-up earns: of the shorter of the test's and the plant's.
func (p Process) credit(c Curve) float64 { return ComeUpShare * min(c.ComeUpMin, p.ComeUpMin) }

// atRetort is the target in minutes at the retort temperature.
func (p Process) atRetort(t Target) float64 { return t.Minutes / t.Basis.LethalRate(p.RetortC) }

// count fills in what follows from the times from the corrected zero.
func (p Process) count(out *ProcessTime, c Curve, heatingOnlyFromZero float64) {
	out.ComeUpCreditMin = p.credit(c)
	out.AfterComeUpMin = max(0, out.FromZeroMin-out.ComeUpCreditMin)
	out.HeatingOnlyMin = max(0, heatingOnlyFromZero-out.ComeUpCreditMin)
	out.CountMin = out.AfterComeUpMin
	if out.CoolingAssumed {
		out.CountMin = out.HeatingOnlyMin
	}
}

// reach is the least time from 0 at which a rising function comes to want, by
// bisection; NaN where it does not within a week.
func reach(want float64, f func(min float64) float64) float64 {
	high := 1.0
	for !(f(high) >= want) {
		if high *= 2; high > longestMin {
			return math.NaN()
		}
	}
	low := 0.0
	if f(low) >= want {
		return 0
	}
	for range bisections {
		if mid := (low + high) / 2; f(mid) >= want {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

func (p Process) tooLong(name string) error {
	return fmt.Errorf("heatpen: %s: at %g °C the target is not reached within a week; give a hotter retort", name, p.RetortC)
}
