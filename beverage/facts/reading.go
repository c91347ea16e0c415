package facts

import (
	"time"

	"posset/beverage"
	"posset/thermal"
	"posset/thermal/logfile"
)

// BoundOf is what a basis lets a record be credited with: the bound of an
// organism, else the reference, with nothing below the range it holds in.
func BoundOf(b logfile.Basis) thermal.Bound {
	if b.Bound != nil {
		return *b.Bound
	}
	bound := b.Ref.Bound()
	if b.MinC != 0 {
		bound.MinC = b.MinC
	}
	return bound
}

// ToleranceC is what was taken off every reading of the run.
func (r *Run) ToleranceC() float64 { return r.toleranceC() }

const day = 24 * time.Hour

// DaysSinceCalibration is how long before the first reading the thermometers were
// tested, in days, negative where they were tested after it; false where the
// record or the spec has no date.
func (r *Run) DaysSinceCalibration() (days float64, ok bool) {
	tested, err := time.Parse(time.DateOnly, r.Record.Calibrated.V)
	if err != nil {
		return 0, false
	}
	for _, p := range r.Log.Probes {
		if len(p.Start) < len(time.DateOnly) {
			continue
		}
		if at, err := time.Parse(time.DateOnly, p.Start[:len(time.DateOnly)]); err == nil {
			return float64(at.Sub(tested) / day), true
		}
	}
	return 0, false
}

// UnderstoodOf is what a record was taken for.
func UnderstoodOf(u logfile.Understood) *beverage.Understood {
	out := &beverage.Understood{
		Format: u.Format, Sheet: u.Sheet, Encoding: u.Encoding, Separator: u.Separator, DecimalMark: u.DecimalMark,
		HeadingRow: u.HeadingRow, FirstRow: u.FirstRow, Rows: u.Rows, TimeForm: u.TimeForm, DateOrder: u.DateOrder, DateBasis: u.DateBasis,
		IntervalS: u.IntervalS, Unit: u.Unit, UnitBasis: u.UnitBasis, ResolutionC: u.ResolutionC, NewestFirst: u.NewestFirst,
		SkippedRows: u.SkippedRows, FirstSkipped: u.FirstSkipped, LeftOut: []beverage.LeftOut{},
	}
	for _, x := range u.LeftOut {
		out.LeftOut = append(out.LeftOut, beverage.LeftOut{Name: x.Name, Reason: x.Reason})
	}
	return out
}

// tellCourse tells when a probe peaked and held, and what of its credit came
// from heating, hold and cooling.
func tellCourse(r *beverage.ProbeResult, p *logfile.Probe) {
	if p.Samples > 0 {
		r.PeakS = ptr(p.PeakS)
	}
	if h := p.Hold; h != nil {
		r.Hold = &beverage.ProbeHold{StartS: h.StartS, EndS: h.EndS, LengthS: h.EndS - h.StartS, PeakC: h.PeakC}
		// After a dip the way up from it is no come-up, and after a batch before it
		// nothing tells the two apart.
		if h.StartS-h.ComeUpS <= p.StartS {
			r.Hold.ComeUpS = ptr(h.ComeUpS)
		}
	}
	for _, s := range p.Stays {
		r.Above = append(r.Above, beverage.TimeAbove{AtC: s.AtC, TotalS: s.TotalS, LongestS: s.WordS, LongestCreditedS: s.CreditedS})
	}
	if len(p.Results) == 0 {
		return
	}
	c := p.Results[0]
	r.CreditedHeatingMins, r.CreditedHoldMinutes = c.CreditedHeatingMin, c.CreditedHoldMin
	if c.CreditedMin != nil && c.CreditedBeforeCoolingMin != nil {
		r.CreditedCoolingMins = ptr(*c.CreditedMin - *c.CreditedBeforeCoolingMin)
	}
}

// tellRecord names the product probe that decides, and tells how far the
// product probes lie apart.
func tellRecord(r *beverage.LogResult, log *logfile.Log) {
	cold, mediumOnly := log.ColdestProduct(0)
	if cold < 0 || mediumOnly {
		return
	}
	r.Coldest = log.Probes[cold].Name
	n, s := 0, beverage.Spread{}
	for _, p := range log.Probes {
		if p.Role != logfile.Product || len(p.Results) == 0 || p.Results[0].CreditedMin == nil {
			continue
		}
		v := *p.Results[0].CreditedMin
		if n == 0 || v < s.ColdestMinutes {
			s.Coldest, s.ColdestMinutes = p.Name, v
		}
		if n == 0 || v > s.WarmestMinutes {
			s.Warmest, s.WarmestMinutes = p.Name, v
		}
		n++
	}
	if n > 1 {
		s.Minutes = s.WarmestMinutes - s.ColdestMinutes
		r.Spread = &s
	}
}

// counted puts minutes on a basis into what the basis is for: units of a named
// index, or decimal reductions of an organism by its most resistant figure.
func counted(b *beverage.BasisResult) {
	per := 0.0
	if i, ok := thermal.FindIndex(b.Basis); ok && i.Of(1) != 1 {
		b.Units, per = i.Name, i.Of(1)
	} else if o, ok := thermal.FindOrganism(b.Basis); ok {
		b.Units, per = "log", 1/o.DHigh
	}
	if per == 0 {
		return
	}
	b.Value, b.CreditedValue = times(b.LethalityMinutes, per), times(b.CreditedMinutes, per)
}

func times(v *float64, by float64) *float64 {
	if v == nil {
		return nil
	}
	return ptr(*v * by)
}
