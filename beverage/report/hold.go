package report

import "posset/beverage"

// Hold is what a holding tube does.
func Hold(r *beverage.HoldResult, u Units) Doc {
	d := Doc{Title: "Holding tube", Headline: holdHeadline(r), Tool: r.Tool, Cautions: r.Cautions}
	d.add("Tube and drink", tubeFigures(r, u))
	d.add("Flow", flowFigures(r))
	d.add("Stay", stayFigures(r))
	d.add("Lethality at the outlet", holdLethality(r, u), lengthFigures(r))
	d.add("Pressure", Figures{u.figure("Flash pressure", gauge, &r.FlashGaugeKPa), u.figure("Flash pressure, absolute", absolute, &r.FlashAbsoluteKPa)})
	d.add("Mind", noteItems(r.Notes))
	l := newLedger(beverage.Input{}, "")
	for _, part := range []struct {
		name string
		fs   Figures
	}{{"tube", tubeFigures(r, u)}, {"flow", flowFigures(r)}, {"stay", stayFigures(r)}, {"lethality", holdLethality(r, u)}, {"length", lengthFigures(r)}} {
		l.figures(part.name, part.fs)
	}
	l.figures("pressure", Figures{u.figure("Flash pressure", gauge, &r.FlashGaugeKPa)})
	for _, n := range r.Notes {
		l.put(entry{part: "note", text: n})
	}
	d.Sheet = l.t
	return d
}

func holdHeadline(r *beverage.HoldResult) string {
	if r.Outcome == nil && r.LengthNeededM != nil {
		return r.Target + ": needs " + neededLength(r) + " of the tube; " + NotARelease
	}
	if r.Outcome == nil {
		return "residence time of a holding tube; " + NotARelease
	}
	return r.Target + ": " + judged(*r.Outcome) + "; " + NotARelease
}

var (
	metres   = same("m", 2)
	bores    = same("mm", 1)
	perHour  = same("L/h", 0)
	speeds   = same("m/s", 3)
	stays    = same("s", 2)
	kgPerM3  = same("kg/m³", 0)
	mPaS     = same("mPa·s", 2)
	unitless = same("", 3)
	litres   = same("L", 2)
	whole    = same("", 0)
)

func tubeFigures(r *beverage.HoldResult, u Units) Figures {
	return Figures{
		u.figure("Bore", bores, &r.BoreMM), u.figure("Length", metres, r.LengthM), u.figure("Flow as metered", perHour, &r.FlowLPerH),
		u.figure("Temperature at the outlet", temperature, &r.TempC), u.figure("Tolerance taken off", difference, &r.ToleranceC),
		u.figure("Temperature at the meter", temperature, r.MeteredC), u.figure("Drink before the steam", temperature, r.SteamFromC),
		noted(u.figure("Density", kgPerM3, &r.DensityKgPerM3), r.DensityBasis), noted(u.figure("Viscosity", mPaS, r.ViscosityMPaS), r.ViscosityBasis),
		u.figure("Flow index", plain, &r.FlowIndex),
	}
}

func noted(f Figure, note string) Figure {
	f.Note = note
	return f
}

func flowFigures(r *beverage.HoldResult) Figures {
	return Figures{
		Metric.figure("Flow in the hot tube", perHour, &r.HotFlowLPerH), Metric.figure("Condensate in it", perHour, &r.CondensateLPerH),
		Metric.figure("Expansion from the meter", unitless, &r.Expansion), Metric.figure("Mean velocity", speeds, &r.VelocityMPerS),
		Metric.figure("Reynolds number", whole, r.Reynolds), {Name: "Regime", Words: r.Regime},
	}
}

// stayFigures rounds the time of the fastest particle down.
func stayFigures(r *beverage.HoldResult) Figures {
	fastest := Figure{Name: "Fastest particle", Words: "not known", Note: r.ShareBasis}
	if r.FastestS != nil {
		fastest.Words = fixed(down(*r.FastestS, stays.metric.decimals), stays.metric.decimals) + " s"
	}
	return Figures{
		Metric.figure("Volume of the tube", litres, r.VolumeL), Metric.figure("Mean residence time", stays, r.MeanS),
		fastest, Metric.figure("Fastest over mean", unitless, &r.Share),
	}
}

func holdLethality(r *beverage.HoldResult, u Units) Figures {
	fs := Figures{u.figure("Reference temperature", temperature, &r.TrefC), u.figure("z", difference, &r.ZC)}
	if r.Basis != "" {
		fs = append(fs, Figure{Name: "Basis", Words: r.Basis})
	}
	if r.Target != "" && r.TargetMinutes == nil { // an unbroken stay, which the stay of the fastest particle is held against
		return append(fs, Figure{Name: "Target", Words: r.Target})
	}
	return append(fs, Metric.figure("At its word", minutes, r.LethalityMinutes), Figure{Name: "Credited", Words: credited(r.CreditedMinutes) + " min"}, Metric.figure("Target", minutes, r.TargetMinutes))
}

// lengthFigures rounds the length needed up.
func lengthFigures(r *beverage.HoldResult) Figures {
	switch {
	case r.LengthProblem != "":
		return Figures{{Name: "Length needed", Words: r.LengthProblem}}
	case r.LengthNeededM == nil:
		return nil
	}
	return Figures{{Name: "Length needed", Words: neededLength(r)}}
}

func neededLength(r *beverage.HoldResult) string {
	return fixed(up(*r.LengthNeededM, metres.metric.decimals), metres.metric.decimals) + " m"
}
