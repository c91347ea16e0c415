package report

import "posset/beverage"

// Carbonation is CO2 in a liquid or in a closed pack.
func Carbonation(r *beverage.GasResult, u Units) Doc {
	d := Doc{Title: "Pressure and volumes", Headline: "CO2 at equilibrium with a liquid; " + NotARelease, Tool: r.Tool, Cautions: r.Cautions}
	in := beverage.Input{}
	if r.Input != nil {
		in = *r.Input
		d = newDoc(r.Drink, headline(r.Findings), r.Tool, in, r.Cautions)
	}
	d.add("CO2", equilibriumFigures(r, u), Para(r.Convention), Para(r.Solutes))
	d.add("Over temperature", gasTable(r, u), gasPicture(r, u))
	pack := packPicture(r.Pressure, r.RatingKPa, u)
	pack.Data, pack.Told = pressureTable(r.Pressure, u), true
	d.add("Closed pack", ratingFigures(r, u), pack)
	d.addFindings(r.Findings)
	d.Sheet = gasSheet(r, in, u)
	return d
}

func equilibriumFigures(r *beverage.GasResult, u Units) Figures {
	if r.Still {
		return Figures{{Name: "Volumes of CO2", Words: "none; the drink is still"}}
	}
	fs := Figures{
		u.figure("Volumes of CO2", volumes, r.Volumes),
		u.figure("CO2 by mass", same("g/L", 2), r.GramsPerLitre),
	}
	if r.Input != nil { // the closed pack is told temperature by temperature
		return append(fs, packGasFigures(r, u)...)
	}
	fs = append(fs, u.figure("Temperature", temperature, r.TempC), u.figure("Gauge pressure", gauge, r.GaugeKPa))
	if r.GaugeKPaHigh != nil {
		fs = append(fs, u.figure("Gauge pressure, high end", gauge, r.GaugeKPaHigh))
	}
	fs = append(fs, u.figure("Absolute pressure", absolute, r.AbsoluteKPa))
	if r.AirKPa != nil {
		air := u.figure("Of it air, taken off", absolute, r.AirKPa)
		air.Note = "the volumes are worked out without it"
		fs = append(fs, air)
	}
	return fs
}

func packGasFigures(r *beverage.GasResult, u Units) Figures {
	var fs Figures
	if r.CounterKPa != nil {
		f := u.figure("Counter-pressure at the filler", gauge, r.CounterKPa)
		f.Note = "at least, at the fill temperature"
		fs = append(fs, f)
	}
	if r.VolumesEnd != nil && r.VolumesEndMid != nil {
		f := u.figure("Left at the end of shelf life", volumes, r.VolumesEndMid)
		if least := u.text(volumes, *r.VolumesEnd); least != u.text(volumes, *r.VolumesEndMid) {
			f.Note = "at least " + least
		}
		fs = append(fs, f)
	}
	return fs
}

// gasTable is the gas of a liquid over temperature.
func gasTable(r *beverage.GasResult, u Units) Table {
	if len(r.Table) == 0 {
		return Table{}
	}
	t := Table{Columns: numbers(columns(u.heading("temperature", temperature), u.heading("gauge pressure", gauge),
		u.heading("high end", gauge), u.heading("absolute", absolute), atPressure(r, u)), 0, 5)}
	for _, g := range r.Table {
		t.Rows = append(t.Rows, []string{u.cell(temperature, &g.TempC), u.cell(gauge, g.GaugeKPa), u.cell(gauge, g.GaugeKPaHigh),
			u.cell(absolute, g.AbsoluteKPa), u.cell(volumes, g.VolumesAtPressure)})
	}
	return t
}

func ratingFigures(r *beverage.GasResult, u Units) Figures {
	if r.Input == nil {
		return nil
	}
	fs := Figures{u.figure("Pressure rating", gauge, r.RatingKPa)}
	if r.Outcome != nil {
		fs = append(fs, Figure{Name: "Against the rating", Words: r.Outcome.String()})
	}
	return fs
}

func gasSheet(r *beverage.GasResult, in beverage.Input, u Units) Table {
	l := newLedger(in, r.Drink)
	l.figures("CO2", equilibriumFigures(r, u))
	l.figures("pack", ratingFigures(r, u))
	l.pressure(r.Pressure, u)
	l.findings(r.Findings)
	l.gasTable(r, u)
	l.put(entry{part: "convention", text: r.Convention})
	l.put(entry{part: "solutes", text: r.Solutes})
	return l.t
}

func (l *ledger) gasTable(r *beverage.GasResult, u Units) {
	for _, g := range r.Table {
		at := u.text(temperature, g.TempC)
		l.figures("over temperature", Figures{
			u.between("gauge pressure at "+at, gauge, g.GaugeKPa, nil, g.GaugeKPaHigh),
			u.figure("absolute pressure at "+at, absolute, g.AbsoluteKPa),
			u.figure(atPressure(r, u)+", "+at, volumes, g.VolumesAtPressure),
		})
	}
}

// atPressure names what is held at other temperatures under the pressure asked about.
func atPressure(r *beverage.GasResult, u Units) string {
	if r.GaugeKPa == nil {
		return "volumes at one pressure"
	}
	name := "volumes at " + u.text(gauge, *r.GaugeKPa)
	if r.AirKPa != nil {
		name += ", air taken off"
	}
	return name
}
