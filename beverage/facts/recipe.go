package facts

import (
	"math"

	"posset/beverage"
	"posset/beverage/ingredient"
)

// Line is one ingredient with what it weighs in a litre of drink. What the library
// holds of it is shared by all copies of the line, and only to be read.
type Line struct {
	*ingredient.Resolved
	GPerL beverage.Interval // unknown where the amount cannot be turned into a mass
	Why   string            // why GPerL is unknown
}

// Share is the mass of a part of the line in a litre of drink, from a
// percentage by mass as sold. It is unknown where either figure is.
func (l Line) Share(percent beverage.Interval) beverage.Interval {
	if !l.GPerL.Known() || !percent.Known() {
		return beverage.Interval{}
	}
	return beverage.Interval{
		Low:   l.GPerL.Low * percent.Low / 100,
		Mid:   l.GPerL.Mid * percent.Mid / 100,
		High:  l.GPerL.High * percent.High / 100,
		Basis: percent.Basis,
	}
}

// Figured tells whether the line is known well enough to be counted: found in
// the library or in an own file, or described by the spec itself.
func (l Line) Figured() bool { return l.Found || l.Described }

// Recipe is the drink as grams in a litre.
type Recipe struct {
	Lines         []Line
	DensityGPerML beverage.Interval
	SolidsGPerL   beverage.Interval // dissolved and suspended, without water; unknown where an amount is
	SugarGPerL    beverage.Interval // sugars and lactose
	Unknown       []Line            // neither found nor described

	chemistry *Chemistry
	activity  *beverage.Interval // water activity, once it was asked for
}

// densityPerBrix is the rise of density with one percent of dissolved sugar
// near 20 °C: 0.00386 g/mL a degree Brix, from the sucrose table's 1.0381 at
// 10 °Brix against 0.9982 (ICUMSA tables, recalled).
const (
	waterGPerML    = 0.9982
	densityPerBrix = 0.00398
	ethanolPerPct  = -0.00125 // g/mL a percent by volume, at low strength
)

func recipeOf(d *beverage.Drink, lib *ingredient.Library) Recipe {
	var r Recipe
	resolved := lib.Resolve(d.Ingredients, d.Own)
	rough := roughDensity(d)
	r.Lines = make([]Line, 0, len(resolved))
	for i := range resolved {
		l := Line{Resolved: &resolved[i]}
		l.GPerL, l.Why = gramsPerLitre(d, l.Resolved, rough)
		r.Lines = append(r.Lines, l)
		if !l.Figured() {
			r.Unknown = append(r.Unknown, l)
		}
	}
	r.SolidsGPerL = total(r.Lines, func(l Line) beverage.Interval { return l.solids() })
	r.SugarGPerL = known(r.Lines, func(l Line) beverage.Interval { return l.Share(l.sugars()) })
	r.DensityGPerML = density(d, r.SolidsGPerL)
	r.chemistry = chemistryOf(&r)
	return r
}

// roughDensity is what percentages of the finished drink are first turned into
// grams with: 1 % of error in it is 1 % of the amount, inside the tolerances.
func roughDensity(d *beverage.Drink) float64 {
	if d.Measured.DensityGPerML.Known {
		return d.Measured.DensityGPerML.V
	}
	return waterGPerML + densityPerBrix*math.Min(d.Measured.Brix.Or(4), 70)
}

func gramsPerLitre(d *beverage.Drink, x *ingredient.Resolved, density float64) (beverage.Interval, string) {
	a := x.Line.Amount
	if !a.Known {
		return beverage.Interval{}, "no amount is given"
	}
	g := a.V.Value
	switch a.V.Per {
	case beverage.GramsPerLitre:
	case beverage.MassPercent:
		g *= 10 * density
	case beverage.GramsPerServing:
		if !d.ServingML.Known {
			return beverage.Interval{}, "an amount per serving needs drink.serving"
		}
		g *= 1000 / d.ServingML.V
	case beverage.MillimolePerLitre:
		if x.MolarMassG <= 0 {
			return beverage.Interval{}, "an amount in mmol/L needs a substance with a known molar mass"
		}
		g *= x.MolarMassG / 1000
	case beverage.MillilitrePerLitre:
		if !x.DensityGPerML.Known() {
			return beverage.Interval{}, "an amount by volume needs the ingredient's density"
		}
		g *= x.DensityGPerML.Mid
	}
	return beverage.Around(g, g*x.Line.TolerancePercent/100, beverage.Stated), ""
}

// sugars is the sugar percentage of a line: its own figure, else its Brix for
// juices, where almost all dissolved solids are sugars.
func (l Line) sugars() beverage.Interval {
	switch {
	case l.Sugars.Known() && l.Lactose.Known() && l.Sugars.Mid < l.Lactose.Mid:
		return l.Lactose
	case l.Sugars.Known():
		return l.Sugars
	case l.Kind == beverage.KindSugar:
		return beverage.Point(100, beverage.Library)
	case l.Kind == beverage.KindJuice && l.Brix.Known():
		return l.Brix
	}
	return l.Lactose
}

// solids is the dry mass the line brings to a litre of drink.
func (l Line) solids() beverage.Interval {
	return l.Share(l.dryPercent())
}

func (l Line) dryPercent() beverage.Interval {
	switch {
	case l.Name == "water" || l.Kind == beverage.KindAid:
		return beverage.Point(0, beverage.Library)
	case l.Moisture.Known():
		return beverage.Interval{Low: 100 - l.Moisture.High, Mid: 100 - l.Moisture.Mid, High: 100 - l.Moisture.Low, Basis: l.Moisture.Basis}
	case l.Brix.Known():
		return l.Brix
	case l.StrengthPercent.Known():
		return l.StrengthPercent
	}
	return beverage.Point(100, beverage.Library)
}

func density(d *beverage.Drink, solids beverage.Interval) beverage.Interval {
	if d.Measured.DensityGPerML.Known {
		return beverage.Point(d.Measured.DensityGPerML.V, beverage.Measured)
	}
	alcohol := ethanolPerPct * d.AlcoholPercent.Or(0)
	if d.Measured.Brix.Known {
		return beverage.Around(waterGPerML+densityPerBrix*d.Measured.Brix.V+alcohol, 0.003, beverage.Predicted)
	}
	if !solids.Known() {
		return beverage.Interval{}
	}
	at := func(s float64) float64 { return waterGPerML + 0.000375*math.Min(s, 700) + alcohol }
	return beverage.Interval{Low: at(solids.Low) - 0.003, Mid: at(solids.Mid), High: at(solids.High) + 0.003, Basis: beverage.Predicted}
}

// total adds a figure over all lines; it is unknown where any line's is.
func total(lines []Line, of func(Line) beverage.Interval) beverage.Interval {
	sum := beverage.Point(0, beverage.Predicted)
	for _, l := range lines {
		sum = sum.Plus(of(l))
	}
	return sum
}

// known adds a figure over the lines that have it: at least this much.
func known(lines []Line, of func(Line) beverage.Interval) beverage.Interval {
	sum := beverage.Point(0, beverage.Predicted)
	for _, l := range lines {
		if v := of(l); v.Known() {
			sum = sum.Plus(v)
		}
	}
	return sum
}
