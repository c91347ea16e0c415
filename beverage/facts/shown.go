package facts

import (
	"math"
	"strings"

	"posset/beverage"
	"posset/beverage/law"
	"posset/thermal"
	"posset/thermal/logfile"
)

// Slowest returns the run and the product probe that decide: of the runs with
// the worst outcome the probe with the least credit. The probe is nil where a
// run has no product probe, or where there is no run.
func (r Records) Slowest() (Run, *beverage.ProbeResult) {
	var run Run
	var probe *beverage.ProbeResult
	for i := range r.Logs {
		x := &r.Logs[i]
		if x.Cold < 0 || x.Medium {
			return *x, nil
		}
		if p := &x.Result.Probes[x.Cold]; probe == nil || credit(p) < credit(probe) {
			run, probe = *x, p
		}
	}
	return run, probe
}

func credit(p *beverage.ProbeResult) float64 {
	if p.CreditedMinutes == nil {
		return math.Inf(-1)
	}
	return *p.CreditedMinutes
}

// CreditedStay is the longest unbroken stay that can be credited to a probe.
func (r Records) CreditedStay(run Run, p *beverage.ProbeResult) *float64 {
	for i := range run.Result.Probes {
		if &run.Result.Probes[i] == p && len(run.Log.Probes[i].Stays) > 0 {
			return run.Log.Probes[i].Stays[0].CreditedS
		}
	}
	return nil
}

// StatedTarget is the target of the spec, records or not.
func (r Records) StatedTarget(d *beverage.Drink) *Target {
	if r.Target != nil || !d.Process.Target.Known {
		return r.Target
	}
	t := TargetOf(d.Process.Target.V)
	return &t
}

// BotulinumF0 is what a target is worth on F0, in minutes, where that can be
// said: on F0 itself, on another basis by its own temperature, and for log
// reductions of Clostridium botulinum or of spores no less resistant.
func (t Target) BotulinumF0() (float64, bool) {
	if t.Problem != "" {
		return 0, false
	}
	switch t.Stated.Kind {
	case beverage.TargetMinutes:
		if t.Basis.Ref == thermal.F0 {
			return t.Minutes, true
		}
		return t.Minutes * math.Min(1, thermal.F0.LethalRate(t.Stated.TrefC)), true
	case beverage.TargetStay:
		return t.Stated.StayS / 60 * thermal.F0.LethalRate(t.Stated.TrefC), true
	}
	return t.Minutes * thermal.F0.LethalRate(t.Basis.Ref.TrefC), true
}

// BotulinumF0Met is true where records meet a target that is worth the F0 that
// custom asks against Clostridium botulinum.
func (f *Facts) BotulinumF0Met() bool {
	r := f.Records
	if r.Target == nil || len(r.Logs) == 0 || r.Outcome != beverage.Meets {
		return false
	}
	f0, ok := r.Target.BotulinumF0()
	return ok && f0 >= law.BotulinumF0()
}

// juicePathogens are the organisms a juice target may name.
var juicePathogens = []string{"Escherichia coli O157:H7", "Salmonella enterica", "Listeria monocytogenes", "Cryptosporidium parvum"}

// FiveLogShown is true where records meet a target of five log or more of a
// pathogen that is pertinent to juice.
func (f *Facts) FiveLogShown() bool {
	r := f.Records
	if r.Target == nil || r.Target.Organism == nil || r.Outcome != beverage.Meets || r.Target.Stated.Logs < law.JuiceReductions() {
		return false
	}
	for _, name := range juicePathogens {
		if strings.EqualFold(name, r.Target.Organism.Name) {
			return true
		}
	}
	return false
}

// HottestC is the hottest reading of any column of a run.
func (r Run) HottestC() (float64, bool) {
	hot, ok := math.Inf(-1), false
	for _, p := range r.Log.Probes {
		if p.Samples > 0 && p.Role != logfile.Other {
			hot, ok = math.Max(hot, p.MaxC), true
		}
	}
	return hot, ok
}
