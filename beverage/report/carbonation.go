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
	d.add("CO2", equilibriumFigures(r, u), gasPicture(r, u), Para(r.Convention))
	pack := packPicture(r.Pressure, r.RatingKPa, u)
	pack.Data, pack.Told = pressureTable(r.Pressure, u), true
	d.add("Closed pack", ratingFigures(r, u), pack)
	d.addFindings(r.Findings)
	d.Sheet = gasSheet(r, in, u)
	return d
}

func equilibriumFigures(r *beverage.GasResult, u Units) Figures {
	fs := Figures{
		u.figure("Volumes of CO2", volumes, r.Volumes),
		u.figure("CO2 by mass", same("g/L", 2), r.GramsPerLitre),
	}
	if r.TempC == nil && len(r.Pressure) > 0 { // the closed pack is told temperature by temperature
		return fs
	}
	return append(fs,
		u.figure("Temperature", temperature, r.TempC),
		u.figure("Gauge pressure", gauge, r.GaugeKPa),
		u.figure("Absolute pressure", absolute, r.AbsoluteKPa))
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
	l.put(entry{part: "convention", text: r.Convention})
	return l.t
}
