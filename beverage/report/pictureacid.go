package report

import (
	"posset/beverage"
	"posset/beverage/report/chart"
)

// The styles of curves and lines that mean the same in every picture.
const (
	plainStyle = 0 // the thing itself
	doubtStyle = 1 // its unfavourable end, or the ends of what is known
)

// acidLine is the pH that classes are told apart by in every market: 21 CFR 114.3(b)
// and its like.
const acidLine = 4.6

// titrationPicture is the curve with the drink's own pH and the line between
// acid and low-acid.
func titrationPicture(r *beverage.AcidResult) Picture {
	curve := chart.Curve{Name: "the drink as base is added; below zero, as acid is", Style: plainStyle}
	for _, p := range r.Curve {
		curve.Points = append(curve.Points, chart.Point{X: p.BaseMMolPL, Y: p.PH})
	}
	panel := chart.Panel{Y: chart.Axis{Title: "pH"}, Height: 280, Curves: []chart.Curve{curve}, Levels: []chart.Line{{Label: "pH 4.6", Name: "the line between acid and low-acid", At: acidLine}}}
	about := "pH over the base that a litre of the degassed drink takes up, worked out from the recipe."
	if r.PH != nil {
		panel.Marks = []chart.Mark{{Letter: "P", Name: "the drink as it is predicted, pH " + decimal(*r.PH, 2), X: 0, Y: *r.PH}}
	}
	if r.PHMeasured != nil {
		panel.Levels = append(panel.Levels, chart.Line{Label: "measured " + decimal(*r.PHMeasured, 2), Name: "the pH that was measured, which wins over the prediction", At: *r.PHMeasured})
	}
	if end := r.TitrationEndPH; end > 0 {
		panel.Levels = append(panel.Levels, chart.Line{Label: "pH " + decimal(end, 1), Name: "where titratable acidity ends", At: end})
	}
	return Picture{Data: curveTable(r.Curve), Told: true, Chart: chart.Chart{Title: "Titration curve", About: about,
		X: chart.Axis{Title: "base added, mmol/L"}, Panels: []chart.Panel{panel}}}
}
