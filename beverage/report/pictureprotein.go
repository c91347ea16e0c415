package report

import (
	"posset/beverage"
	"posset/beverage/report/chart"
)

// chargePicture is the net charge over pH, with the isoelectric band and the
// place of the drink.
func chargePicture(points []beverage.ChargePoint, p *beverage.ProteinState, told bool) Picture {
	along := func(name string, style int, of func(q beverage.ChargePoint) float64) chart.Curve {
		c := chart.Curve{Name: name, Style: style}
		for _, q := range points {
			c.Points = append(c.Points, chart.Point{X: q.PH, Y: of(q)})
		}
		return c
	}
	curves := []chart.Curve{
		along("net charge of a molecule of the main protein", plainStyle, func(q beverage.ChargePoint) float64 { return q.NetCharge }),
		along("the same without salt", doubtStyle, func(q beverage.ChargePoint) float64 { return q.NoSalt }),
		along("the same at 90 °C", hotStyle, func(q beverage.ChargePoint) float64 { return q.Hot }),
	}
	panel := chart.Panel{Y: chart.Axis{Title: "net charge of a molecule"}, Height: 280, Curves: curves,
		Levels: []chart.Line{{Name: "no net charge: least repulsion, least soluble", At: 0}}}
	panel.Spans, panel.Uprights = proteinPlaces(p)
	return Picture{Data: chargeTable(points), Told: told, Chart: chart.Chart{Title: "Net charge of the main protein over pH",
		About: "Net charge of a molecule of the main protein over pH, at the drink's ionic strength and 25 °C, and with one of the two changed.",
		X:     chart.Axis{Title: "pH"}, Panels: []chart.Panel{panel}}}
}

// hotStyle is the drink as it is while it is heated.
const hotStyle = 2

// addProteinPictures appends what an assessment draws of the protein.
func (d *Doc) addProteinPictures(p *beverage.ProteinState, u Units) {
	if p == nil || p.Picture == nil {
		return
	}
	d.add("Net charge of a molecule over pH", chargePicture(p.Picture.Charge, p, false))
	d.addHeatPictures(p, u)
}

const (
	bandHatch  = 0
	drinkHatch = 1
)

// proteinPlaces are the isoelectric band and the drink, as far as they are known.
func proteinPlaces(p *beverage.ProteinState) (spans []chart.Span, uprights []chart.Line) {
	pic := p.Picture
	if pic == nil {
		pic = &beverage.ProteinPicture{}
	}
	if band := pic.Isoelectric; band.Known() {
		spans = append(spans, chart.Span{Name: "isoelectric band as published, pH " + decimal(band.Low, 1) + " to " + decimal(band.High, 1), Hatch: bandHatch, From: band.Low, To: band.High})
	} else if p.IsoelectricPH != nil {
		uprights = append(uprights, chart.Line{Label: "isoelectric", Name: "isoelectric pH", At: *p.IsoelectricPH})
	}
	if pH := pic.PH; pH.Known() {
		spans = append(spans, chart.Span{Name: "pH of the drink, " + decimal(down(pH.Low, 2), 2) + " to " + decimal(up(pH.High, 2), 2), Hatch: drinkHatch, From: pH.Low, To: pH.High})
		uprights = append(uprights, chart.Line{Label: "drink " + decimal(pH.Mid, 2), At: pH.Mid})
	}
	return spans, uprights
}
