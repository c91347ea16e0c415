package facts

import (
	"math"
	"slices"

	"posset/acid"
)

// mixture is what stands in a kilogram of water: parts, and what is added beside
// them.
type mixture struct {
	parts []scaled
	extra []acid.Total
	open  bool // its carbonic acid is in balance with the air
}

// with returns the mixture with molality of one component more in it.
func (m mixture) with(component string, molality float64) mixture {
	m.extra = append(m.extra[:len(m.extra):len(m.extra)], acid.Total{Component: component, Molality: molality})
	return m
}

// at is what of the mixture is dissolved at a pH: the calcium and the phosphate
// that casein micelles hold at it are left out, and their charge stays with the
// micelles.
func (m mixture) at(pH float64) acid.Solution {
	s := acid.Solution{Totals: make([]acid.Total, 0, m.mostTotals())}
	for _, p := range m.parts {
		p.into(&s, pH)
	}
	for _, t := range m.extra {
		s.Totals = addTotal(s.Totals, t.Component, t.Molality)
	}
	if m.open {
		s.Totals = slices.DeleteFunc(s.Totals, func(t acid.Total) bool { return t.Component == "carbonic" })
		s.FreeCO2 = airCO2
	}
	return s
}

// mostTotals is how many components the mixture can name.
func (m mixture) mostTotals() int {
	n := len(m.extra)
	for _, p := range m.parts {
		n += len(p.c.totals)
	}
	return n
}

func (p scaled) into(s *acid.Solution, pH float64) {
	for _, t := range p.c.totals {
		s.Totals = addTotal(s.Totals, t.Component, t.Molality*p.grams)
	}
	protein := p.c.grams * p.grams
	if p.c.macro == nil || protein <= 0 {
		return
	}
	s.Poly = append(s.Poly, acid.Macro{Poly: p.c.poly(), GramsPerKgWater: protein})
	colloid, ok := p.c.macro.Colloid(pH)
	if !ok {
		return
	}
	calcium := math.Min(p.c.buffers*colloid.CalciumMmolPerG.Mid*protein/1000, p.molality("calcium"))
	phosphate := math.Min(p.c.buffers*colloid.PhosphateMmolPerG.Mid*protein/1000, p.molality("phosphoric"))
	s.Totals = addTotal(s.Totals, "calcium", -calcium)
	s.Totals = addTotal(s.Totals, "phosphoric", -phosphate)
	held := heldCharge(1000 * (ofCalcium*calcium - ofPhosphate*phosphate))
	s.Poly = append(s.Poly, acid.Macro{Poly: held, GramsPerKgWater: 1})
}

// Charges of what a micelle holds, as protein.Colloid.Charge counts them; worked
// out here from the amounts, since a powder poor in calcium holds less.
const (
	ofCalcium   = 2
	ofPhosphate = 3
)

// molality is the whole of a component that the part brings, mol/kg of water.
func (p scaled) molality(component string) float64 {
	sum := 0.0
	for _, t := range p.c.totals {
		if t.Component == component {
			sum += t.Molality * p.grams
		}
	}
	return sum
}

// poly is the protein as the solver asks it.
func (c *contribution) poly() acid.Polyelectrolyte {
	if c.buffers == 1 {
		return c.macro
	}
	return scaledCharge{c.macro, c.buffers}
}

// scaledCharge is a protein that takes up so many times what its model says.
type scaledCharge struct {
	of    acid.Polyelectrolyte
	times float64
}

// ChargePerGram returns the scaled charge.
func (s scaledCharge) ChargePerGram(pH, ionicStrength, tempC float64) float64 {
	return s.times * s.of.ChargePerGram(pH, ionicStrength, tempC)
}

// heldCharge is a charge that does not move with pH, mmol.
type heldCharge float64

// ChargePerGram returns the charge, whatever the conditions.
func (h heldCharge) ChargePerGram(_, _, _ float64) float64 { return float64(h) }

// holdsMicelles tells whether anything in the mixture dissolves with the pH.
func (m mixture) holdsMicelles() bool {
	for _, p := range m.parts {
		if _, ok := p.c.macro.Colloid(naturalPH); ok {
			return true
		}
	}
	return false
}

// naturalPH is that of milk, where a search without a better guess begins.
const naturalPH = 6.7

// pH is the pH that the mixture comes to.
func (m mixture) pH() (float64, error) { return m.pHNear(naturalPH) }

// pHNear is the same, with a guess that shortens the search.
func (m mixture) pHNear(guess float64) (float64, error) {
	_, pH, err := m.settle(guess)
	return pH, err
}

// pHAt is the pH, at tC, of what is dissolved at room temperature.
func (m mixture) pHAt(tC float64) (float64, error) {
	s, _, err := m.settle(naturalPH)
	if err != nil {
		return 0, err
	}
	return acid.PH(s, tC)
}

// settle finds the pH at which the micelles hold just what they hold at that pH,
// and what is then dissolved. The more is assumed to be held, the less is there
// to take up acid, so the pH that follows falls with the pH assumed: there is one
// answer, and it lies between any guess and what follows from it.
func (m mixture) settle(guess float64) (acid.Solution, float64, error) {
	s := m.at(guess)
	pH, err := acid.PH(s, roomC)
	if err != nil || !m.holdsMicelles() || math.Abs(pH-guess) < settledWithin {
		return s, pH, err
	}
	other := m.at(pH)
	then, err := acid.PH(other, roomC)
	if err != nil || math.Abs(then-pH) < settledWithin {
		return other, then, err
	}
	return m.between(point{guess, pH - guess}, point{pH, then - pH})
}

// settledWithin is how near the pH that follows must come to the one assumed.
const settledWithin = 1e-3

// point is an assumed pH and by how much the pH that follows lies above it.
type point struct{ pH, over float64 }

// between narrows the two ends by straight lines, halving the weight of an end
// that stays (the Illinois rule), until a thousandth is left.
func (m mixture) between(a, b point) (acid.Solution, float64, error) {
	const most = 40
	for range most {
		x := (a.pH*b.over - b.pH*a.over) / (b.over - a.over)
		s := m.at(x)
		pH, err := acid.PH(s, roomC)
		over := pH - x
		switch {
		case err != nil || math.Abs(over) < settledWithin:
			return s, pH, err
		case (over > 0) == (a.over > 0):
			a, b.over = point{x, over}, b.over/2
		default:
			b, a.over = point{x, over}, a.over/2
		}
	}
	s := m.at(a.pH)
	pH, err := acid.PH(s, roomC)
	return s, pH, err
}

// Milk has 1750 mg/L of citrate (Fox & McSweeney 1998, Dairy Chemistry and
// Biochemistry, Table 5.6) beside 48 g/L of lactose (the same book, recalled).
// Nearly all of it goes with the lactose when milk is split.
const (
	citrateOfMilkMM    = 1750 / 189.1
	lactoseOfMilkGPerL = 48.0
)

// citrateOf is the citrate that comes with the milk sugar of a line, per gram;
// split lactose is known by the sugars of a milk product.
func citrateOf(l Line) []acid.Total {
	lactose := l.Lactose.Mid
	if l.Kind != "protein" {
		lactose = math.Max(lactose, l.Sugars.Mid)
	}
	if !l.MilkProduct || len(l.Shares) > 0 || !(lactose > 0) {
		return nil
	}
	return []acid.Total{{Component: "citric", Molality: lactose / 100 * citrateOfMilkMM / lactoseOfMilkGPerL / 1000}}
}
