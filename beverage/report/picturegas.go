package report

import (
	"posset/beverage"
	"posset/beverage/report/chart"
)

// gasPicture is the pressure of so many volumes over temperature, with the place
// that was asked for.
func gasPicture(r *beverage.GasResult, u Units) Picture {
	g := r.Chart
	if g == nil {
		return Picture{}
	}
	t, p := temperature.in(u), gauge.in(u)
	data := Table{Columns: columns("volumes of CO2")}
	panel := chart.Panel{Height: 300, Y: chart.Axis{Title: "gauge pressure, " + p.unit}}
	for _, c := range g.TempsC {
		data.Columns = append(data.Columns, Column{Title: decimal(*t.of(&c), 0) + " " + t.unit})
	}
	numbers(data.Columns, 0, len(data.Columns))
	for i, v := range g.Volumes {
		k := chart.Curve{Name: decimal(v, 1) + " volumes", Style: i}
		row := []string{decimal(v, 1)}
		for j, c := range g.TempsC {
			kPa := g.GaugeKPa[i][j]
			k.Points = append(k.Points, chart.Point{X: *t.of(&c), Y: *p.of(&kPa)})
			row = append(row, u.cell(gauge, &kPa))
		}
		panel.Curves, data.Rows = append(panel.Curves, k), append(data.Rows, row)
	}
	if r.TempC != nil && r.GaugeKPa != nil && r.Volumes != nil {
		panel.Marks = []chart.Mark{{Letter: "A", Name: "asked for: " + decimal(*r.Volumes, 2) + " volumes, " + u.text(temperature, *r.TempC) + ", " + u.text(gauge, *r.GaugeKPa),
			X: *t.of(r.TempC), Y: *p.of(r.GaugeKPa)}}
	}
	return Picture{Data: data, Chart: chart.Chart{Title: "Volumes of CO2 by temperature and gauge pressure",
		About: "Gauge pressure in equilibrium with the liquid that was asked about, without a headspace, over temperature; each line is for one content of CO2. Worked out here; not a chart of beer.",
		X:     chart.Axis{Title: "temperature, " + t.unit}, Panels: []chart.Panel{panel}}}
}
