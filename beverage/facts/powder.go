package facts

import (
	"math"

	"posset/acid"
	"posset/beverage"
	"posset/beverage/protein"
)

// gramsPerKgWater is how much of a line stands in a kilogram of water when it
// makes up pct percent of a solution in water.
func gramsPerKgWater(l Line, pct float64) float64 {
	dry := 100.0
	if d := l.dryPercent(); d.Known() {
		dry = d.Mid
	}
	water := 100 - pct*dry/100
	return 1000 * pct / math.Max(water, 1)
}

// ownStrength is the strength of the solution in which a line's own pH was
// read: as it is for liquids, a tenth for powders where nothing is said.
func ownStrength(l Line) float64 {
	switch {
	case l.OwnPHAtPercent.Known():
		return l.OwnPHAtPercent.Mid
	case l.dryPercent().Mid < 75:
		return 100
	}
	return 10
}

// powder takes a protein ingredient as its protein and minerals, and gives it the
// strong acid or base that its own pH shows it to carry. A protein that has no
// model is known by its own pH and acidity alone.
func (p *part) powder() string {
	l := p.line
	comp, ok := protein.Of(l.ProteinID)
	switch {
	case !ok && l.Acidity.Known():
		p.model = "unmodelled"
		return p.juice()
	case !ok:
		return "no model of its protein, and its acidity is not known"
	case l.HydrolysisPercent.Known():
		comp = protein.WithHydrolysis(comp, l.HydrolysisPercent)
	}
	p.build = func(s state) (contribution, error) { return powderAt(p.line, comp, s) }
	lot := marginOf("lot ph")
	p.doubtful(ownPH, apart(l.OwnPH, lot, 0, 14), lot)
	p.doubtful(acidUsed, beverage.Point(l.Phosphorus.Mid, l.Phosphorus.Basis), 0)
	if l.PreAcidified && l.Phosphorus.Known() {
		p.doubtful(acidUsed, l.Phosphorus, 0)
	}
	x := shareOf(bufferRow(comp))
	p.doubtful(buffering, beverage.Around(1, x, beverage.Library), 0)
	return p.settleMid()
}

// bufferRow names the margin of what a protein takes up.
func bufferRow(comp *protein.Composition) string {
	if comp.Family().HoldsCasein() {
		return "micelles"
	}
	return "protein"
}

func powderAt(l Line, comp *protein.Composition, s state) (contribution, error) {
	c := contribution{macro: comp, grams: l.Entry.Protein.Mid / 100, buffers: s[buffering]}
	c.totals = append(mineralsOf(l, comp, s[acidUsed]), citrateOf(l)...)
	grams := gramsPerKgWater(l, ownStrength(l))
	return c, c.balance(grams, s[ownPH])
}

// caseinPhosphorus is the mass of phosphorus bound in casein's phosphoserines,
// a gram of casein: 0.85 %, a textbook value, recalled. Those groups are part of
// the protein's charge and must not count again as phosphate.
const caseinPhosphorus = 0.0085

// mineralsOf are the ions and the inorganic phosphate of a line per gram,
// dissolved and held by casein micelles together; phosphorus is in percent.
func mineralsOf(l Line, comp *protein.Composition, phosphorus float64) []acid.Total {
	var t []acid.Total
	add := func(component string, pct beverage.Interval, molar float64) {
		if pct.Known() && pct.Mid > 0 {
			t = append(t, acid.Total{Component: component, Molality: pct.Mid / 100 / molar})
		}
	}
	add("sodium", l.Sodium, 22.990)
	add("potassium", l.Potassium, 39.098)
	add("magnesium", l.Magnesium, 24.305)
	add("chloride", l.Chloride, 35.453)
	add("calcium", l.Calcium, 40.078)
	p := l.Phosphorus
	if p.Known() {
		p.Mid = max(0, phosphorus-caseinPhosphorus*comp.CaseinFraction()*l.Entry.Protein.Mid)
	}
	add("phosphoric", p, 30.974)
	return t
}
