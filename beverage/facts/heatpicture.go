package facts

import (
	"math"
	"slices"

	"posset/beverage"
	"posset/beverage/protein"
	"posset/thermal"
	"posset/thermal/logfile"
)

// kineticsSource is what the constants behind the picture rest on; they stand in
// the protein package's own data.
const kineticsSource = "unfolding by rate constants of Dannenberg & Kessler 1988, J. Food Sci. 53:258-263, measured in skim milk (figures from memory, their ranges seen)"

// The holds that are compared: as far as the constants were measured.
const (
	equalFromC, equalToC, equalStepC = 70.0, 150.0, 2.5
	shortestHoldS, longestHoldS      = 0.2, 6 * 3600.0
)

// pathPoints is how many moments of a process are drawn.
const pathPoints = 120

// moment is the drink at one time: as hot, and as cold, as it may have been.
type moment struct{ timeS, highC, lowC float64 }

// HeatPicture holds lethality against the whey protein that the same heat
// unfolds, where the constants hold, else it says why they do not.
func (f *Facts) HeatPicture() beverage.HeatPicture {
	h := beverage.HeatPicture{Source: kineticsSource}
	ref := f.heatBasis()
	h.TrefC, h.ZC = ref.TrefC, ref.ZC
	d, why := f.unfolding()
	if why != "" {
		return beverage.HeatPicture{Why: why}
	}
	path, of := f.hottestPath()
	h.Of, h.Path = of, d.along(path, ref)
	switch t := f.Records.Target; {
	case t != nil && t.Problem == "" && !t.IsStay():
		h.EqualMin, h.EqualTo = t.Minutes, "the target that was stated"
	case len(h.Path) > 0:
		h.EqualMin, h.EqualTo = h.Path[len(h.Path)-1].LethalityMin, "what the process gives"
	}
	h.Equal = f.equalHolds(h.EqualMin, ref)
	if len(h.Path) == 0 && len(h.Equal) == 0 {
		return beverage.HeatPicture{Why: "neither a record, nor a hold temperature and time, nor a target in minutes is given"}
	}
	h.Notes = d.notes()
	return h
}

// heatBasis is the target's own, else F0 for a sterilizing route and PU for all
// others.
func (f *Facts) heatBasis() thermal.Reference {
	switch t := f.Records.Target; {
	case t != nil && t.Problem == "" && !t.IsStay():
		return t.Basis.Ref
	case f.Process.Route.Sterilizes():
		return thermal.F0
	}
	return thermal.PU
}

// unfolding follows all heat-labile protein of the drink at once.
type unfolding struct {
	parts []*protein.Denaturer
	share []float64 // of the heat-labile mass
}

func (f *Facts) unfolding() (u unfolding, why string) {
	if unmade := f.Protein.Unmade(); len(unmade) > 0 {
		return u, "the protein of " + unmade[0] + " is not known"
	}
	mass := 0.0
	for i := range f.Protein.Parts {
		part := &f.Protein.Parts[i]
		if part.Composition == nil || part.Composition.HeatLabileFraction() <= 0 {
			continue
		}
		d, valid := protein.NewDenaturer(part.Composition, f.heatConditions(part))
		if !valid.OK() {
			return u, valid.Why
		}
		m := part.Composition.HeatLabileFraction() * part.GPerL.Mid
		u.parts, u.share, mass = append(u.parts, d), append(u.share, m), mass+m
	}
	if !(mass > 0) {
		return u, noLabile
	}
	for i := range u.share {
		u.share[i] /= mass
	}
	return u, ""
}

// along walks a history and keeps some of its moments, the last among them.
func (u unfolding) along(path []moment, ref thermal.Reference) []beverage.HeatPoint {
	var out []beverage.HeatPoint
	every := max(1, (len(path)+pathPoints-1)/pathPoints)
	lethality := 0.0
	for i, m := range path {
		share := beverage.Point(0, beverage.Predicted)
		for k, d := range u.parts {
			d.Add(m.timeS, m.highC)
			if i > 0 {
				share = share.Plus(d.Fraction().Scale(u.share[k]))
			}
		}
		if i > 0 {
			lethality += ref.Piece(m.timeS-path[i-1].timeS, path[i-1].lowC, m.lowC) / secondsPerMinute
		}
		if i%every == 0 || i+1 == len(path) {
			out = append(out, beverage.HeatPoint{TimeS: m.timeS, TempC: m.highC, LethalityMin: lethality, Denatured: share})
		}
	}
	return out
}

func (u unfolding) notes() []string {
	var notes []string
	for _, d := range u.parts {
		for _, n := range d.Validity().Notes {
			if !slices.Contains(notes, n) {
				notes = append(notes, n)
			}
		}
	}
	return notes
}

// hottestPath is the history of the product probe that was heated most, else
// what the spec states.
func (f *Facts) hottestPath() (path []moment, of string) {
	hottest := math.Inf(-1)
	for _, run := range f.Records.Logs {
		for i := range run.heat {
			h := &run.heat[i]
			if run.Log.Probes[i].Role != logfile.Product || len(h.points) < 2 {
				continue
			}
			if d, _ := f.DenaturedBy(raised(h.points)); d.Known() && d.High > hottest {
				hottest, path, of = d.High, h.moments(), run.Record.File+", "+run.Log.Probes[i].Name+"; lethality by the cold end of the sensor's tolerance, unfolding by its hot end"
			}
		}
	}
	if len(path) > 0 {
		return path, of
	}
	of = "as the spec states it"
	if f.Process.DrinkHeat.Medium {
		of += ", of the heating medium: an estimate, never credited"
	}
	for _, p := range f.statedHeat() {
		path = append(path, between(path, moment{p.TimeS, p.TempC, p.TempC})...)
	}
	return path, of
}

// between puts moments into a stated hold, so that what happens in it is seen.
func between(path []moment, next moment) []moment {
	const steps = 20
	if len(path) == 0 {
		return []moment{next}
	}
	last := path[len(path)-1]
	var out []moment
	for i := 1; i <= steps && next.timeS > last.timeS; i++ {
		s := float64(i) / steps
		out = append(out, moment{last.timeS + s*(next.timeS-last.timeS), last.highC + s*(next.highC-last.highC), last.lowC + s*(next.lowC-last.lowC)})
	}
	if len(out) == 0 {
		return []moment{next}
	}
	return out
}

func (h *heatHistory) moments() []moment {
	out := make([]moment, len(h.points))
	for i, p := range h.points {
		out[i] = moment{p.TimeS, p.TempC + sensorToleranceC, h.lows[i] - sensorToleranceC}
	}
	return out
}

// equalHolds are holds worth the same lethality, at the temperatures where they
// take a time that a plant can hold.
func (f *Facts) equalHolds(minutes float64, ref thermal.Reference) []beverage.EqualHold {
	var out []beverage.EqualHold
	if !(minutes > 0) {
		return nil
	}
	for t := equalFromC; t <= equalToC; t += equalStepC {
		holdS := minutes * secondsPerMinute / ref.LethalRate(t)
		if holdS < shortestHoldS || holdS > longestHoldS {
			continue
		}
		share, _ := f.DenaturedBy([]protein.TempPoint{{TimeS: 0, TempC: t}, {TimeS: holdS, TempC: t}})
		out = append(out, beverage.EqualHold{TempC: t, HoldS: holdS, Denatured: share})
	}
	return out
}
