package facts

import (
	"slices"

	"posset/beverage"
	"posset/beverage/ingredient"
	"posset/beverage/protein"
	"posset/thermal/logfile"
)

// Protein is what protein the drink holds and what its process does to it.
type Protein struct {
	Parts      []ProteinPart
	GPerL      beverage.Interval // unknown where an ingredient's protein is
	Unknown    []string          // ingredients whose protein nobody knows
	Main       *ProteinPart      // the heaviest part
	Denatured  beverage.Interval // mass fraction of the heat-labile whey protein
	DenatureNo string            // why Denatured is unknown
	Calcium    beverage.Interval // mg/L, all ingredients; unknown where one's is
	Caffeine   beverage.Interval // mg/L, at least this much
	Polyphenol beverage.Interval // g/L, at least this much
}

// ProteinPart is one ingredient's protein.
type ProteinPart struct {
	Line        Line
	GPerL       beverage.Interval
	Composition *protein.Composition // nil: no model of it
	Denatured   beverage.Interval
}

// minorProteinG is what a line may bring without being told as a protein of its
// own: half a gram in a litre changes nothing that is judged.
const minorProteinG = 0.5

func proteinOf(f *Facts) Protein {
	var p Protein
	p.GPerL = beverage.Point(0, beverage.Predicted)
	for _, l := range f.Recipe.Lines {
		p.add(l)
	}
	if len(f.Recipe.Lines) == 0 {
		p.GPerL = beverage.Interval{}
	}
	p.Calcium = calciumOf(f.Recipe.Lines)
	p.Caffeine = known(f.Recipe.Lines, func(l Line) beverage.Interval { return l.milligrams(l.Entry.Caffeine, false) })
	p.Polyphenol = known(f.Recipe.Lines, func(l Line) beverage.Interval { return l.Share(l.Entry.Polyphenols) })
	return p.heated(f)
}

func (p *Protein) add(l Line) {
	if !l.mayHoldProtein() {
		return
	}
	g := l.Share(l.Entry.Protein)
	if !g.Known() {
		p.Unknown = append(p.Unknown, l.Line.Name)
		p.GPerL = beverage.Interval{}
		return
	}
	if p.GPerL.Known() {
		p.GPerL = p.GPerL.Plus(g)
	}
	if g.High < minorProteinG {
		return
	}
	part := ProteinPart{Line: l, GPerL: g}
	if c, ok := protein.Of(l.ProteinID); ok {
		if l.HydrolysisPercent.Known() {
			c = protein.WithHydrolysis(c, l.HydrolysisPercent)
		}
		part.Composition = c
	}
	p.Parts = append(p.Parts, part)
}

// mayHoldProtein is true for what a protein figure is to be asked of. Pure
// chemicals, sugars and the like hold none; an unknown ingredient may.
func (l Line) mayHoldProtein() bool {
	switch {
	case !l.Figured():
		return true
	case l.Entry.Protein.Known():
		return l.Entry.Protein.High > 0
	case len(l.Shares) > 0:
		return false
	}
	return l.Kind == beverage.KindProtein || l.MilkProduct
}

// carriesMinerals is true for what a calcium figure is to be asked of.
func (l Line) carriesMinerals() bool {
	return !l.Figured() || l.Kind == beverage.KindProtein || l.Kind == beverage.KindMineral || l.MilkProduct
}

// milligrams is a percentage of the line as mg in a litre; where the figure is
// not known it is nothing, unless it must be asked.
func (l Line) milligrams(percent beverage.Interval, must bool) beverage.Interval {
	if !percent.Known() {
		if must {
			return beverage.Interval{}
		}
		return beverage.Point(0, beverage.Library)
	}
	return l.Share(percent).Scale(1000)
}

// PerServing turns a figure per litre into one per serving; unknown without a
// serving.
func (f *Facts) PerServing(perLitre beverage.Interval) beverage.Interval {
	if !perLitre.Known() || !f.Drink.ServingML.Known {
		return beverage.Interval{}
	}
	return perLitre.Scale(f.Drink.ServingML.V / 1000)
}

// AtLeast tells whether the drink may hold protein of g grams a litre or more;
// an unknown amount may.
func (p Protein) AtLeast(g float64) bool { return !p.GPerL.Known() || p.GPerL.High >= g }

// Of adds the grams a litre of one family.
func (p Protein) Of(family protein.Family) beverage.Interval {
	sum := beverage.Point(0, beverage.Predicted)
	for _, x := range p.Parts {
		if x.Composition != nil && x.Composition.Family() == family {
			sum = sum.Plus(x.GPerL)
		}
	}
	return sum
}

// denature works out how much of the heat-labile whey protein the process
// changes, along the record where there is one, else along the stated hold.
func (p *Protein) denature(f *Facts) {
	if unmade := p.Unmade(); len(unmade) > 0 && !p.HeatLabile() {
		p.DenatureNo = "the protein of " + unmade[0] + " is not known"
		return
	}
	p.Denatured, p.DenatureNo = p.ofLabile(func(part *ProteinPart) (beverage.Interval, string) {
		var why string
		part.Denatured, why = f.denatured(part)
		return part.Denatured, why
	})
}

// ofLabile is the mean of a share of the heat-labile whey protein over the parts,
// by mass, or why it is unknown.
func (p *Protein) ofLabile(share func(*ProteinPart) (beverage.Interval, string)) (mean beverage.Interval, why string) {
	sum, mass := beverage.Point(0, beverage.Predicted), 0.0
	for i := range p.Parts {
		part := &p.Parts[i]
		if part.Composition == nil {
			continue
		}
		labile := part.Composition.HeatLabileFraction() * part.GPerL.Mid
		if labile <= 0 {
			continue
		}
		mass += labile
		d, not := share(part)
		if not != "" {
			why = not
		}
		sum = sum.Plus(d.Scale(labile))
	}
	switch {
	case mass == 0:
		return mean, noLabile
	case !sum.Known():
		return mean, why
	}
	return sum.Scale(1 / mass), ""
}

const noLabile = "no heat-labile whey protein"

// Unmade names what protein nobody can say the make-up of: ingredients whose
// protein is not known, or is from nobody knows what.
func (p Protein) Unmade() []string {
	names := slices.Clone(p.Unknown)
	for _, x := range p.Parts {
		if x.Line.ProteinID == ingredient.ProteinUnknown {
			names = append(names, x.Line.Line.Name)
		}
	}
	return names
}

// HeatLabile tells whether whey protein that heat unfolds is known to be in it.
func (p Protein) HeatLabile() bool {
	return slices.ContainsFunc(p.Parts, func(x ProteinPart) bool {
		return x.Composition != nil && x.Composition.HeatLabileFraction() > 0
	})
}

// DenaturedBy is the share of the heat-labile whey protein that a temperature
// history would unfold in this drink, 0 to 1, or why nobody can tell.
func (f *Facts) DenaturedBy(history []protein.TempPoint) (share beverage.Interval, why string) {
	if unmade := f.Protein.Unmade(); len(unmade) > 0 {
		return share, "the protein of " + unmade[0] + " is not known"
	}
	return f.Protein.ofLabile(func(part *ProteinPart) (beverage.Interval, string) {
		d, valid := protein.NewDenaturer(part.Composition, f.heatConditions(part))
		for _, h := range history {
			d.Add(h.TimeS, h.TempC)
		}
		return d.Fraction(), valid.Why
	})
}

func (f *Facts) denatured(part *ProteinPart) (beverage.Interval, string) {
	cond := f.heatConditions(part)
	if best, why, ok := f.denaturedByRecord(part, cond); ok {
		return best, why
	}
	d, valid := protein.NewDenaturer(part.Composition, cond)
	if !valid.OK() {
		return beverage.Interval{}, valid.Why
	}
	if !f.Process.Heats() && f.Process.Route != "" {
		return beverage.Point(0, beverage.Predicted), ""
	}
	history := f.statedHeat()
	if len(history) == 0 {
		return beverage.Interval{}, "neither a record nor a hold temperature and time is given"
	}
	for _, h := range history {
		d.Add(h.TimeS, h.TempC)
	}
	return d.Fraction(), ""
}

func (f *Facts) heatConditions(part *ProteinPart) protein.Conditions {
	c := protein.Conditions{PH: f.PH.Decides, ProteinGPerL: part.GPerL.Mid}
	if f.Recipe.SugarGPerL.Known() {
		c.SugarGPerL = f.Recipe.SugarGPerL.Mid
	}
	if f.Ions.CalciumMM.Known() {
		c.CalciumMM = f.Ions.CalciumMM.High
	}
	return c
}

// statedHeat is the temperature history that the spec describes: the zones, or
// the hold as a rectangle, and for hot fill what follows in the pack; nothing
// where the hold is not given, since what follows alone would understate the heat.
func (f *Facts) statedHeat() []protein.TempPoint {
	var list []protein.TempPoint
	now := 0.0
	stay := func(tempC, timeS float64) {
		list = append(list, protein.TempPoint{TimeS: now, TempC: tempC}, protein.TempPoint{TimeS: now + timeS, TempC: tempC})
		now += timeS
	}
	for _, z := range f.Drink.Process.Zones {
		stay(z.TempC, z.TimeS)
	}
	if len(list) == 0 && f.Process.DrinkHeat.TempC.Known && f.Process.DrinkHeat.TimeS.Known {
		stay(f.Process.DrinkHeat.TempC.V, f.Process.DrinkHeat.TimeS.V)
	}
	if len(list) > 0 && f.Drink.Process.PackHoldS.Known && f.Process.Route == beverage.HotFill {
		stay(f.Drink.Process.PackHoldC.Or(f.Drink.Process.FillTempC.Or(f.Process.DrinkHeat.TempC.V)), f.Drink.Process.PackHoldS.V)
	}
	return list
}

// denaturedByRecord takes the product probe that was heated most, at the upper
// end of the sensor's tolerance.
func (f *Facts) denaturedByRecord(part *ProteinPart, cond protein.Conditions) (beverage.Interval, string, bool) {
	var worst beverage.Interval
	for _, run := range f.Records.Logs {
		for i := range run.heat {
			if run.Log.Probes[i].Role != logfile.Product || len(run.heat[i].points) < 2 {
				continue
			}
			d, valid := protein.NewDenaturer(part.Composition, cond)
			if !valid.OK() {
				return beverage.Interval{}, valid.Why, true
			}
			for _, h := range run.heat[i].points {
				d.Add(h.TimeS, h.TempC+sensorToleranceC)
			}
			if x := d.Fraction(); !worst.Known() || x.High > worst.High {
				worst = x
			}
		}
	}
	return worst, "", worst.Known()
}
