package facts

import (
	"math"

	"posset/acid"
)

// cause is what a doubt is about.
type cause int

const (
	ofFigure    cause = iota // a figure of one ingredient
	ofAmount                 // the amount of one ingredient
	ofWater                  // what the water brings
	ofAir                    // CO2 that leaves an open drink or enters it
	ofConstants              // the constants and the activity form
	ofModel                  // what the model misses with every figure right
)

// doubt is one thing that may be otherwise, and what it does to the pH.
type doubt struct {
	cause     cause
	part      int // of the recipe, for figures, amounts and what the model misses of one
	figure    figure
	low, high float64 // change of pH at either end of it
}

// signed is the change of pH from the middle of the thing to its upper end, both
// sides taken together.
func (d doubt) signed() float64 { return (d.high - d.low) / 2 }

// spread adds independent doubts as squares, to either side.
func spread(list []doubt) (up, down float64) {
	for _, d := range list {
		for _, x := range [2]float64{d.low, d.high} {
			up += square(math.Max(x, 0))
			down += square(math.Min(x, 0))
		}
	}
	return math.Sqrt(up), math.Sqrt(down)
}

func square(x float64) float64 { return x * x }

// mover works out how far changes move the pH of a mixture.
type mover struct {
	mid   float64
	slope float64 // charge lost for a unit of pH, mol/kg
}

// base is the strong base that brings the mixture to a pH, mol/kg of water.
func (m mixture) base(pH float64) (float64, error) { return acid.Titrate(m.at(pH), roomC, pH) }

// charge is what the mixture would have at a pH, mol/kg of water: none at its own.
func (m mixture) charge(pH float64) (float64, error) { return acid.NetCharge(m.at(pH), roomC, pH) }

// moverAt stands at the pH that a mixture comes to.
func moverAt(m mixture, pH float64) mover {
	const step = 0.05
	up, err1 := m.charge(math.Min(pH+step, 14))
	down, err2 := m.charge(math.Max(pH-step, 0))
	if err1 != nil || err2 != nil {
		return mover{mid: pH}
	}
	return mover{mid: pH, slope: (down - up) / (2 * step)}
}

// to returns by how much the pH of a changed mixture lies off: a few steps by the
// slope where it is near, the whole balance where it is not. It is zero where the
// mixture cannot be solved.
func (v mover) to(m mixture) float64 {
	const near, close, most = 0.7, 1e-3, 6 // a step so short leaves 1e-5 at most
	x0, slope := v.mid, v.slope
	q0, err := m.charge(v.mid)
	for range most {
		x1 := x0 + q0/slope
		if err != nil || !(math.Abs(x1-v.mid) < near) {
			break
		}
		if math.Abs(x1-x0) < close {
			return x1 - v.mid
		}
		q1, err1 := m.charge(x1)
		x0, q0, slope, err = x1, q1, (q0-q1)/(x1-x0), err1
	}
	pH, err := m.pHNear(v.mid)
	if err != nil {
		return 0
	}
	return pH - v.mid
}

// doubtsAt lists what the prediction's interval is made of, the drink standing at
// a pH.
func (c *Chemistry) doubtsAt(pH float64) []doubt {
	m, _ := c.middle()
	v := moverAt(m, pH)
	var list []doubt
	for i := range c.parts {
		list = append(list, c.amount(v, i)...)
		list = append(list, c.ranges(v, i)...)
		list = append(list, c.shape(v, i)...)
	}
	list = append(list, c.ofSupply(v, m), c.constants(pH))
	if bringsCarbonate(m) || pH > airTellsPH {
		by := v.to(m.inAir())
		list = append(list, doubt{cause: ofAir, low: math.Min(0, by), high: math.Max(0, by)})
	}
	e := marginOf("salts")
	return append(list, doubt{cause: ofModel, part: wholeDrink, low: -e, high: e})
}

// wholeDrink stands where a doubt is about no part alone.
const wholeDrink = -1

// amount is what the tolerance of one line does.
func (c *Chemistry) amount(v mover, i int) []doubt {
	p := &c.parts[i]
	tol := (p.line.GPerL.High - p.line.GPerL.Mid) / p.line.GPerL.Mid
	if !(tol > 0) || len(p.mid.totals) == 0 {
		return nil
	}
	more := v.to(c.mixture(i, nil, 1+tol))
	return []doubt{{cause: ofAmount, part: i, low: -more, high: more}}
}

// ranges is what the figures of one line do at their ends.
func (c *Chemistry) ranges(v mover, i int) []doubt {
	var list []doubt
	p := &c.parts[i]
	for f := range figureCount {
		ends := p.ends(f)
		if len(ends) == 0 {
			continue
		}
		d := doubt{part: i, figure: f}
		for _, e := range ends {
			if by := v.to(c.mixture(i, &e.c, 1)); e.upper {
				d.high = by
			} else {
				d.low = by
			}
		}
		list = append(list, d)
	}
	return list
}

// ofSupply is what the water may bring: bicarbonate on one side, hardness that is
// bound to chloride or sulfate on the other.
func (c *Chemistry) ofSupply(v mover, m mixture) doubt {
	d := doubt{cause: ofWater}
	if a := c.water.alkalinity; a > 0 {
		d.high = math.Max(0, v.to(m.with("sodium", a).with("carbonic", a)))
	}
	if h := c.water.hardness; h > 0 {
		d.low = math.Min(0, v.to(m.with("calcium", h).with("chloride", 2*h)))
	}
	return d
}

// constants is what the constants and the activity form may miss.
func (c *Chemistry) constants(pH float64) doubt {
	s := c.settled().solution
	low, high, err := acid.Bounds(s, roomC)
	if err != nil {
		return doubt{cause: ofConstants, low: -unmodelledShift, high: unmodelledShift}
	}
	return doubt{cause: ofConstants, low: low - pH, high: high - pH}
}

// shape is what the model may miss of an ingredient that it knows by few figures,
// as if its own pH were off: alone it is that far off, in a drink by its share.
func (c *Chemistry) shape(v mover, i int) []doubt {
	p := &c.parts[i]
	if p.model == "" {
		return nil
	}
	d := doubt{cause: ofModel, part: i}
	e := marginOf(p.model)
	if low, err := p.with(ownPH, math.Max(0, p.mids[ownPH]-e)); err == nil {
		d.low = v.to(c.mixture(i, &low, 1))
	}
	if high, err := p.with(ownPH, math.Min(14, p.mids[ownPH]+e)); err == nil {
		d.high = v.to(c.mixture(i, &high, 1))
	}
	return []doubt{d}
}

// modelMisses is what the model may miss of the whole drink, half of a 95 %
// interval.
func modelMisses(list []doubt) float64 {
	sum := 0.0
	for _, d := range list {
		if d.cause == ofModel {
			sum += square(d.signed())
		}
	}
	return math.Sqrt(sum)
}

// airTellsPH is the pH above which CO2 of the air counts: below, the little that
// dissolves is hardly ionized.
const airTellsPH = 6

// airCO2 is the dissolved CO2 of a solution in the open, mol/kg: 0.033 mol/(kg
// atm), Henry's constant at 25 °C, times 4.2e-4 atm.
const airCO2 = 1.4e-5

// inAir is the mixture with its carbonic acid in balance with the air.
func (m mixture) inAir() mixture {
	m.open = true
	return m
}

// bringsCarbonate tells a mixture that gives CO2 off in the open.
func bringsCarbonate(m mixture) bool {
	for _, p := range m.parts {
		if p.molality("carbonic") > 0 {
			return true
		}
	}
	return false
}
