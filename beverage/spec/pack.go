package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

// gas declares the table that makes a drink a carbonated one.
func gas(key, means string) field[beverage.Drink] {
	return field[beverage.Drink]{
		KeyDoc: KeyDoc{Key: key, Form: FormTable, Type: "a table", Means: means},
		inner:  func() []KeyDoc { return carbonation.docs("") },
		read: func(r *reader, n *node, d *beverage.Drink) {
			d.Carbonation = &beverage.Gassing{Place: r.place(n)}
			carbonation.into(r, n, d.Carbonation)
		},
	}
}

var carbonation = table[beverage.Gassing]{fields: []field[beverage.Gassing]{
	number("volumes", 0, mostVolumes, "Volumes of CO2; or temperature and pressure at equilibrium. Both and in conflict, the unfavourable one counts.", "1.6",
		func(g *beverage.Gassing) *beverage.Given[float64] { return &g.Volumes }),
	measure("temperature", quantity.Temperature, sampleRange, "Temperature at which the pressure was read.", "4 C",
		func(g *beverage.Gassing) *beverage.Given[float64] { return &g.TempC }),
	pressure("pressure", "Pressure at equilibrium, gauge or absolute.", "0.2 barg",
		func(g *beverage.Gassing) *beverage.Given[beverage.Pressure] { return &g.Pressure }),
	measure("loss_per_month", quantity.Fraction, anyPercent, "What a plastic pack loses a month; otherwise from published permeability.", "2 %",
		func(g *beverage.Gassing) *beverage.Given[float64] { return &g.LossPerMonthPercent }),
}}

var pack = table[beverage.Package]{check: fillFits, fields: []field[beverage.Package]{
	word("type", beverage.PackTypes, "What the pack is.", func(p *beverage.Package) *beverage.Given[beverage.PackType] { return &p.Type }),
	measure("fill", quantity.Volume, packRange, "Volume filled, at the fill temperature.", "330 mL",
		func(p *beverage.Package) *beverage.Given[float64] { return &p.FillML }),
	measure("fill_tolerance", quantity.Volume, slackRange, "How far the fill may be off.", "3 mL",
		func(p *beverage.Package) *beverage.Given[float64] { return &p.FillToleranceML }).otherwise("1 % of fill"),
	measure("brimful", quantity.Volume, packRange, "Inside volume to the closure.", "352 mL",
		func(p *beverage.Package) *beverage.Given[float64] { return &p.BrimfulML }),
	pressure("pressure_rating", "Pressure the pack is rated for, gauge or absolute.", "6.2 barg",
		func(p *beverage.Package) *beverage.Given[beverage.Pressure] { return &p.Rating }),
	word("headspace_gas", []beverage.Gas{beverage.Air, beverage.Nitrogen, beverage.CO2, beverage.Vacuum}, "What fills the headspace at closing.",
		func(p *beverage.Package) *beverage.Given[beverage.Gas] { return &p.HeadspaceGas }),
	measure("liquid_nitrogen", quantity.Mass, nitrogenRange, "Liquid nitrogen left in the pack when it is closed.", "0 g",
		func(p *beverage.Package) *beverage.Given[float64] { return &p.NitrogenG }).otherwise("0 g"),
	measure("altitude", quantity.Length, altitudeRange, "Height above sea level of the filler.", "0 m",
		func(p *beverage.Package) *beverage.Given[float64] { return &p.AltitudeM }).otherwise("0 m"),
}}

// fillFits refuses a fill that the pack has no room for.
func fillFits(r *reader, n *node, p *beverage.Package) {
	if p.FillML.Known && p.BrimfulML.Known && p.FillML.V > p.BrimfulML.V {
		r.wrong(n.child("fill"), "is more than the brimful volume "+quantity.Quote(n.child("brimful").text), "write a fill below it")
	}
}

// pressure declares a key that holds a pressure, gauge or absolute.
func pressure[T any](key, means, example string, at func(*T) *beverage.Given[beverage.Pressure]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormQuantity, Type: "a pressure, gauge or absolute", Means: means, Example: `"` + example + `"`},
		read: func(r *reader, n *node, it *T) {
			q, ok := r.quantityOf(n, example, quantity.Pressure)
			switch {
			case !ok:
			case q.Value > mostKPa:
				r.wrong(n, "is out of range", "write 100 barg at most")
			case key == "pressure_rating" && q.Value <= 0:
				r.wrong(n, "is no rating", "write a pressure above zero, such as "+quantity.Quote(example))
			default:
				*at(it) = given(r, n, beverage.Pressure{KPa: q.Value, Gauge: !q.Absolute})
			}
		},
	}
}
