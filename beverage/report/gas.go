package report

import (
	"posset/beverage"
)

// addGas appends what the gas does to the closed pack. A still pack has only
// the second state.
func (d *Doc) addGas(g *beverage.CarbonationState, p *beverage.PackState, u Units) {
	gas := gasFigures(g, u)
	if g != nil && p == nil {
		gas = append(gas, Figure{Name: "Against the rating", Words: g.Outcome.String()})
	}
	d.add("Gas", gas)
	if pressure := packPressure(g, p); len(pressure) > 0 || p != nil {
		d.add("Closed pack", packFigures(p, u), pressureTable(decisive(pressure), u), packPicture(pressure, ratingOf(p), u))
	}
}

func gasFigures(g *beverage.CarbonationState, u Units) Figures {
	if g == nil {
		return nil
	}
	fs := Figures{u.figure("CO2", volumes, g.Volumes), u.figure("CO2 by mass", perLitre, g.GramsPerLitre)}
	if g.VolumesEnd != nil {
		fs = append(fs, u.figure("CO2 left at the end of shelf life", volumes, g.VolumesEnd))
	}
	return fs
}

func packFigures(p *beverage.PackState, u Units) Figures {
	if p == nil {
		return nil
	}
	return Figures{u.figure("Pressure rating", gauge, p.RatingGaugeKPa), {Name: "Against the rating", Words: p.Outcome.String()}}
}

func ratingOf(p *beverage.PackState) *float64 {
	if p == nil {
		return nil
	}
	return p.RatingGaugeKPa
}

func packPressure(g *beverage.CarbonationState, p *beverage.PackState) []beverage.PressureAt {
	if p != nil && len(p.Pressure) > 0 {
		return p.Pressure
	}
	if g != nil {
		return g.Pressure
	}
	return nil
}

// decisive leaves out the rows that only draw the curve, where there are others.
func decisive(ps []beverage.PressureAt) []beverage.PressureAt {
	var out []beverage.PressureAt
	for _, p := range ps {
		if p.At != "table" {
			out = append(out, p)
		}
	}
	if len(out) == 0 {
		return ps
	}
	return out
}

func pressureTable(ps []beverage.PressureAt, u Units) Table {
	t := Table{Columns: numbers(columns("at", u.heading("temperature", temperature), u.heading("nominal", gauge),
		u.heading("high end, decides", gauge), "nominal headspace"), 1, 4)}
	for _, p := range ps {
		t.Rows = append(t.Rows, []string{p.At, u.cell(temperature, &p.TempC), u.cell(gauge, p.GaugeKPa), u.cell(gauge, p.GaugeKPaHigh), headspace(p)})
	}
	return t
}

func headspace(p beverage.PressureAt) string {
	switch {
	case p.LiquidFull:
		return "gone: liquid-full"
	case p.Headspace == nil:
		return "not known"
	}
	return decimal(*p.Headspace, percent.metric.decimals) + " " + percent.metric.unit
}

func (l *ledger) gas(g *beverage.CarbonationState, p *beverage.PackState, u Units) {
	l.figures("gas", gasFigures(g, u))
	l.figures("pack", packFigures(p, u))
	l.pressure(packPressure(g, p), u)
}

// pressure writes the nominal pressure as the value and the end that decides
// as its high.
func (l *ledger) pressure(ps []beverage.PressureAt, u Units) {
	for _, p := range ps {
		f := u.between("gauge pressure at "+p.At+", "+u.text(temperature, p.TempC), gauge, p.GaugeKPa, nil, p.GaugeKPaHigh)
		f.Note = "headspace " + headspace(p)
		l.figures("pressure", Figures{f})
	}
}
