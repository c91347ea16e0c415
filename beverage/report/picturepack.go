package report

import (
	"strings"

	"posset/beverage"
	"posset/beverage/report/chart"
)

// beyondRating is how far above the rating the picture of a pack reaches, as a
// multiple of it: what lies higher need only be seen to lie higher.
const beyondRating = 1.6

// packPicture is the pressure in the closed pack over temperature, nominal and
// at the end that decides, against the rating.
func packPicture(ps []beverage.PressureAt, rating *float64, u Units) Picture {
	if len(ps) < 2 {
		return Picture{}
	}
	t, g := temperature.in(u), gauge.in(u)
	panel := chart.Panel{Y: chart.Axis{Title: "gauge pressure, " + g.unit}, Height: 280, Curves: packCurves(ps, t, g), Marks: packMarks(ps, t, g), Spans: fullSpans(ps, t)}
	about := "Gauge pressure in the closed pack over its temperature. The high end is at the unfavourable end of the fill tolerance and of what is published; it decides. Worked out at the temperatures of the table, drawn straight between them."
	if rating != nil {
		at := *g.of(rating)
		panel.Levels = []chart.Line{{Label: "rating " + decimal(at, g.decimals) + " " + g.unit, Name: "the pack's rating", At: at}}
		panel.Y.Low, panel.Y.High = packReach(panel, at)
	} else {
		about += " No rating is given."
	}
	return Picture{Data: pressureTable(ps, u), Chart: chart.Chart{Title: "Pressure in the closed pack over temperature", About: about,
		X: chart.Axis{Title: "temperature of the pack, " + t.unit}, Panels: []chart.Panel{panel}}}
}

// packReach keeps one state far above the rating from pressing all others flat.
func packReach(p chart.Panel, rating float64) (low, high float64) {
	high = rating
	for _, k := range p.Curves {
		for _, q := range k.Points {
			if isFinite(q.Y) {
				low, high = min(low, q.Y), max(high, q.Y)
			}
		}
	}
	if high > beyondRating*rating && rating > 0 {
		return low, beyondRating * rating
	}
	return 0, 0
}

func packCurves(ps []beverage.PressureAt, t, g shown) []chart.Curve {
	nominal := chart.Curve{Name: "nominal", Style: plainStyle}
	high := chart.Curve{Name: "high end, decides", Style: doubtStyle}
	point := func(p beverage.PressureAt, v *float64) chart.Point {
		if v == nil {
			return chart.Gap
		}
		return chart.Point{X: *t.of(&p.TempC), Y: *g.of(v)}
	}
	for _, p := range ps {
		nominal.Points, high.Points = append(nominal.Points, point(p, p.GaugeKPa)), append(high.Points, point(p, p.GaugeKPaHigh))
	}
	return []chart.Curve{nominal, high}
}

// packMarks letters the states that are judged.
func packMarks(ps []beverage.PressureAt, t, g shown) []chart.Mark {
	var marks []chart.Mark
	for _, p := range ps {
		v := p.GaugeKPaHigh
		if v == nil {
			v = p.GaugeKPa
		}
		if p.At == "table" || v == nil {
			continue
		}
		m := chart.Mark{Letter: strings.ToUpper(p.At[:min(1, len(p.At))]), X: *t.of(&p.TempC), Y: *g.of(v),
			Name: p.At + ", " + decimal(*t.of(&p.TempC), t.decimals) + " " + t.unit}
		if last := len(marks) - 1; last >= 0 && marks[last].X == m.X && marks[last].Y == m.Y {
			marks[last].Letter, marks[last].Name = marks[last].Letter+m.Letter, both(marks[last].Name, m.Name)
			continue
		}
		marks = append(marks, m)
	}
	return marks
}

// both names two states that stand at one place: "fill and process, 4.0 °C".
func both(first, second string) string {
	name, place, _ := strings.Cut(second, ", ")
	return strings.TrimSuffix(first, ", "+place) + " and " + name + ", " + place
}

// fullSpans hatches the temperatures at which no headspace is left.
func fullSpans(ps []beverage.PressureAt, t shown) []chart.Span {
	var spans []chart.Span
	for i, p := range ps {
		if !p.LiquidFull || i > 0 && ps[i-1].LiquidFull {
			continue
		}
		end := i
		for end+1 < len(ps) && ps[end+1].LiquidFull {
			end++
		}
		spans = append(spans, chart.Span{Name: "liquid-full: the headspace may be gone, the pressure is no gas pressure", From: *t.of(&p.TempC), To: *t.of(&ps[end].TempC)})
	}
	return spans
}
