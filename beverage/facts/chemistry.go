package facts

import (
	"fmt"
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
	totals  []acid.Total // Molality holds mol per gram
	given   []acid.Total // of them what was given so that known figures come out
	macro   *protein.Composition
	grams   float64 // of macro per gram
	buffers float64 // what macro takes up, against what its model says: 1 unless trials tell otherwise
}

// Chemistry is the drink as the acid model sees it.
type Chemistry struct {
	parts       []part
	WaterKgPerL float64
	Missing     []string // what keeps the pH from being predicted
	water       supply
	leftover    ion  // what trials ask for beside the recipe
	slowUntold  bool // a base that dissolves slowly is there, how much is not known
	beside      int  // how many of the last parts no trial holds: a dose
	settled     func() atRest
	doubts      []doubt // what the prediction's interval is made of
}

func chemistryOf(r *Recipe) *Chemistry {
	c := &Chemistry{water: supplyOf(r)}
	c.unsettle()
	c.parts = make([]part, 0, len(r.Lines))
	for _, l := range r.Lines {
		if !l.GPerL.Known() {
			c.Missing = append(c.Missing, fmt.Sprintf("%s: %s", l.Line.Name, l.Why))
			c.slowUntold = c.slowUntold || l.SlowBase
			continue
		}
		p, why := partOf(l)
		if why != "" {
			c.Missing = append(c.Missing, fmt.Sprintf("%s: %s", l.Line.Name, why))
			continue
		}
		c.parts = append(c.parts, p)
	}
	if r.DensityGPerML.Known() && r.SolidsGPerL.Known() {
		c.WaterKgPerL = r.DensityGPerML.Mid - r.SolidsGPerL.Mid/1000
	}
	if c.WaterKgPerL < leastWaterKgPerL && len(c.Missing) == 0 {
		c.Missing = append(c.Missing, "the amounts leave less than 200 g of water in a litre")
	}
	return c
}

// leastWaterKgPerL is what a drink must hold for the model to speak of it.
const leastWaterKgPerL = 0.2

// unsettle forgets what was worked out of the middle.
func (c *Chemistry) unsettle() { c.settled = sync.OnceValue(c.settle) }

// partOf returns what a gram of the line brings, over what is known of it, or why
// that is unknown.
func partOf(l Line) (part, string) {
	p := part{line: l}
	switch {
	case !l.Figured():
		return p, "not in the library and not described"
	case isGas(l), l.Name == waterName:
		return p, ""
	case len(l.Shares) > 0:
		return p, p.shares()
	case l.ProteinID != "" && l.Entry.Protein.Known() && l.OwnPH.Known():
		return p, p.powder()
	case l.OwnPH.Known() && l.Acidity.Known():
		p.model = "juice"
		return p, p.juice()
	case inert(l):
		return p, ""
	}
	return p, "its own pH and acidity, or its acids and salts, are not known"
}

// isGas tells CO2 as an ingredient: the prediction is of the degassed drink.
func isGas(l Line) bool { return l.Name == "carbon dioxide" }

const waterName = "water"

// inert tells whether a line of this kind leaves the charge balance alone at
// the amounts drinks hold.
func inert(l Line) bool {
	switch l.Kind {
	case beverage.KindSugar, beverage.KindPolyol, beverage.KindSweetener, beverage.KindFibre, beverage.KindFlavour,
		beverage.KindColour, beverage.KindFat, beverage.KindEmulsifier, beverage.KindAid, beverage.KindActive,
		beverage.KindGum, beverage.KindStabilizer, beverage.KindVitamin:
		return true
	}
	return false
}

// shares takes a pure chemical from its formula; an unstated strength runs over
// its whole range.
func (p *part) shares() string {
	pct := p.line.StrengthPercent
	if !pct.Known() {
		pct = beverage.Point(100, beverage.Library)
	}
	p.build = func(s state) (contribution, error) {
		var c contribution
		for _, x := range p.line.Shares {
			c.totals = append(c.totals, acid.Total{Component: x.Component, Molality: x.MolPerG * s[strength] / 100})
		}
		return c, nil
	}
	if pct.High-pct.Low < sameStrengthPercent {
		pct = beverage.Point(pct.Mid, pct.Basis)
	}
	p.doubtful(strength, pct, 0)
	return p.settleMid()
}

// sameStrengthPercent is a range of strength too narrow to tell apart.
const sameStrengthPercent = 0.5

// balance adds the sodium or chloride that makes grams of the contribution in a
// kilogram of water have the pH.
func (c *contribution) balance(grams, pH float64) error {
	t, err := balanceAt(mixture{parts: []scaled{{c, grams}}}.at(pH), pH)
	if err != nil {
		return err
	}
	c.give(acid.Total{Component: t.Component, Molality: t.Molality / grams})
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

// ion is strong base, or acid where it is negative, mol/L.
type ion struct{ molPerL float64 }

// perKg is the ion as a component, mol per kg of water.
func (x ion) perKg(waterKgPerL float64) (component string, molality float64) {
	if x.molPerL < 0 {
		return "chloride", -x.molPerL / waterKgPerL
	}
	return "sodium", x.molPerL / waterKgPerL
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
	m := mixture{parts: parts}
	if c.leftover.molPerL != 0 {
		m = m.with(c.leftover.perKg(c.WaterKgPerL))
	}
	return m
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
