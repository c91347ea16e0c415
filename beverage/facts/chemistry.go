package facts

import (
	"fmt"
	"math"
	"sync"

	"posset/acid"
	"posset/beverage"
	"posset/beverage/protein"
)

// roomC is the temperature at which a pH is stated: 25 °C, as 21 CFR 114.90
// asks for measurements near it.
const roomC = 25

// contribution is what one gram of an ingredient, as sold, brings to the charge
// balance: moles of components, and grams of protein.
type contribution struct {
	totals []acid.Total // Molality holds mol per gram
	macro  *protein.Composition
	grams  float64 // of macro per gram
}

// Chemistry is the drink as the acid model sees it.
type Chemistry struct {
	parts       []part
	WaterKgPerL float64
	Missing     []string // what keeps the pH from being predicted
	ionic       float64  // ionic strength of the prediction, 0 where there is none
	settled     func() atRest
}

// part is one line of the recipe: its contribution, and the same with its own
// figures at either end of what is known of them.
type part struct {
	line     Line
	mid      contribution
	variants []contribution
}

func chemistryOf(r *Recipe) *Chemistry {
	c := &Chemistry{}
	c.settled = sync.OnceValue(c.settle)
	for _, l := range r.Lines {
		if !l.GPerL.Known() {
			c.Missing = append(c.Missing, fmt.Sprintf("%s: %s", l.Line.Name, l.Why))
			continue
		}
		mid, variants, why := contributionsOf(l)
		if why != "" {
			c.Missing = append(c.Missing, fmt.Sprintf("%s: %s", l.Line.Name, why))
			continue
		}
		c.parts = append(c.parts, part{line: l, mid: mid, variants: variants})
	}
	if r.DensityGPerML.Known() && r.SolidsGPerL.Known() {
		c.WaterKgPerL = r.DensityGPerML.Mid - r.SolidsGPerL.Mid/1000
	}
	if c.WaterKgPerL < 0.2 && len(c.Missing) == 0 {
		c.Missing = append(c.Missing, "the amounts leave less than 200 g of water in a litre")
	}
	return c
}

// contributionsOf returns what a gram of the line brings, with its variants, or
// why that is unknown.
func contributionsOf(l Line) (mid contribution, variants []contribution, why string) {
	switch {
	case !l.Figured():
		return mid, nil, "not in the library and not described"
	case len(l.Shares) > 0:
		return sharesOf(l)
	case l.modelled() && l.Entry.Protein.Known() && l.OwnPH.Known():
		return powderOf(l)
	case l.OwnPH.Known() && l.Acidity.Known():
		return juiceOf(l)
	case inert(l):
		return contribution{}, nil, ""
	}
	return mid, nil, "its own pH and acidity, or its acids and salts, are not known"
}

// modelled tells whether there is a model of the line's protein.
func (l Line) modelled() bool {
	_, ok := protein.Of(l.ProteinID)
	return ok
}

// inert tells whether a line of this kind leaves the charge balance alone at
// the amounts drinks hold.
func inert(l Line) bool {
	switch l.Kind {
	case beverage.KindSugar, beverage.KindPolyol, beverage.KindSweetener, beverage.KindFibre, beverage.KindFlavour,
		beverage.KindColour, beverage.KindFat, beverage.KindEmulsifier, beverage.KindAid, beverage.KindActive,
		beverage.KindGum, beverage.KindStabilizer, beverage.KindVitamin:
		return true
	}
	return l.Name == "water"
}

// sharesOf takes a pure chemical from its formula; an unstated strength runs
// over its whole range.
func sharesOf(l Line) (contribution, []contribution, string) {
	strength := l.StrengthPercent
	if !strength.Known() {
		strength = beverage.Point(100, beverage.Library)
	}
	at := func(pct float64) contribution {
		var c contribution
		for _, s := range l.Shares {
			c.totals = append(c.totals, acid.Total{Component: s.Component, Molality: s.MolPerG * pct / 100})
		}
		return c
	}
	if strength.High-strength.Low < 0.5 {
		return at(strength.Mid), nil, ""
	}
	return at(strength.Mid), []contribution{at(strength.Low), at(strength.High)}, ""
}

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

// powderOf takes a protein ingredient as its protein and minerals, and gives it
// the strong acid or base that its own pH shows it to carry.
func powderOf(l Line) (contribution, []contribution, string) {
	comp, ok := protein.Of(l.ProteinID)
	if !ok {
		return contribution{}, nil, "no model of its protein"
	}
	if l.HydrolysisPercent.Known() {
		comp = protein.WithHydrolysis(comp, l.HydrolysisPercent)
	}
	mid, err := powderAt(l, comp, l.OwnPH.Mid)
	if err != nil {
		return mid, nil, err.Error()
	}
	var variants []contribution
	for _, ph := range []float64{l.OwnPH.Low, l.OwnPH.High} {
		if v, err := powderAt(l, comp, ph); err == nil && ph != l.OwnPH.Mid {
			variants = append(variants, v)
		}
	}
	return mid, variants, ""
}

func powderAt(l Line, comp *protein.Composition, ownPH float64) (contribution, error) {
	c := contribution{macro: comp, grams: l.Entry.Protein.Mid / 100, totals: append(mineralsOf(l, comp), citrateOf(l)...)}
	grams := gramsPerKgWater(l, ownStrength(l))
	return c, c.balance(grams, ownPH)
}

// caseinPhosphorus is the mass of phosphorus bound in casein's phosphoserines,
// a gram of casein: 0.85 %, a textbook value, recalled. Those groups are part of
// the protein's charge and must not count again as phosphate.
const caseinPhosphorus = 0.0085

// mineralsOf are the ions and the inorganic phosphate of a line per gram,
// dissolved and held by casein micelles together.
func mineralsOf(l Line, comp *protein.Composition) []acid.Total {
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
		p.Mid = max(0, p.Mid-caseinPhosphorus*comp.CaseinFraction()*l.Entry.Protein.Mid)
	}
	add("phosphoric", p, 30.974)
	return t
}

// balance adds the sodium or chloride that makes grams of the contribution in a
// kilogram of water have the pH.
func (c *contribution) balance(grams, pH float64) error {
	t, err := balanceAt(mixture{parts: []scaled{{c, grams}}}.at(pH), pH)
	if err != nil {
		return err
	}
	c.totals = append(c.totals, acid.Total{Component: t.Component, Molality: t.Molality / grams})
	return nil
}

// balanceAt is the sodium or the chloride that gives a solution the pH.
func balanceAt(s acid.Solution, pH float64) (acid.Total, error) {
	m, err := acid.BalanceCharge(s, roomC, pH, "sodium")
	if m < 0 {
		return acid.Total{Component: "chloride", Molality: -m}, err
	}
	return acid.Total{Component: "sodium", Molality: m}, err
}

// scaled is a contribution and the grams of it in a kilogram of water.
type scaled struct {
	c     *contribution
	grams float64
}

func addTotal(totals []acid.Total, component string, m float64) []acid.Total {
	for i := range totals {
		if totals[i].Component == component {
			totals[i].Molality += m
			return totals
		}
	}
	return append(totals, acid.Total{Component: component, Molality: m})
}

// mixture is the drink with every part at its middle, except that part i, when
// not negative, is replaced by another at factor times its amount.
func (c *Chemistry) mixture(i int, replace *contribution, factor float64) mixture {
	parts := make([]scaled, 0, len(c.parts))
	for j := range c.parts {
		p := &c.parts[j]
		s := scaled{&p.mid, p.line.GPerL.Mid / c.WaterKgPerL}
		if j == i {
			s.grams *= factor
			if replace != nil {
				s.c = replace
			}
		}
		parts = append(parts, s)
	}
	return mixture{parts: parts}
}

// without is the drink at the middle of every figure without some of its parts.
func (c *Chemistry) without(such func(part) bool) []scaled {
	parts := make([]scaled, 0, len(c.parts))
	for i := range c.parts {
		if p := &c.parts[i]; !such(*p) {
			parts = append(parts, scaled{&p.mid, p.line.GPerL.Mid / c.WaterKgPerL})
		}
	}
	return parts
}

// atRest is the middle at the pH it comes to; err says why it cannot be told.
type atRest struct {
	solution acid.Solution
	pH       float64
	err      error
}

// settle works out atRest, which is asked for many times.
func (c *Chemistry) settle() (s atRest) {
	m, ok := c.middle()
	if !ok {
		return atRest{err: &MissingError{Missing: c.Missing}}
	}
	s.solution, s.pH, s.err = m.settle(naturalPH)
	return s
}

// middle is the drink at the middle of every figure, or false where what its
// ingredients bring is not known.
func (c *Chemistry) middle() (mixture, bool) {
	if len(c.Missing) > 0 || len(c.parts) == 0 {
		return mixture{}, false
	}
	return c.mixture(-1, nil, 1), true
}

// Solution is what of the middle is dissolved at the pH that it comes to; false
// where that is not known.
func (c *Chemistry) Solution() (acid.Solution, bool) {
	s := c.settled()
	return s.solution, s.err == nil
}
