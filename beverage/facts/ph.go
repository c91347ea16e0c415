package facts

import (
	"math"

	"posset/beverage"
	"posset/carbonation"
)

// PH is what is known of the finished, degassed drink's pH.
type PH struct {
	Decides   beverage.Interval // measured where it can count, else predicted, else unknown
	Measured  beverage.Interval // with its tolerance and every doubt about it
	Predicted beverage.Interval
	Chemistry *Chemistry

	GasShift   float64           // what undegassed CO2 may have hidden, added to the upper end
	SlowShift  float64           // what slowly dissolving bases may still add
	PaperOnly  bool              // a reading that does not count above 4.0
	Paper      beverage.Interval // that reading, either end of which still counts against the drink
	WarmOrCold bool              // read outside 20 to 30 °C
}

// The measured interval's parts, with where they come from.
const (
	defaultPHTolerance  = 0.1  // meter and lot to lot where nothing is said
	paperCountsBelowPH  = 4.0  // 21 CFR 114.90(b): colour paper only at pH 4.0 and below
	readingLowC         = 20.0 // 21 CFR 114.90(a)(3)(ii): sample and buffers at 20 to 30 °C
	readingHighC        = 30.0
	offTemperatureDoubt = 0.1 // a drink's pH moves by about this much over 20 C°: common practice, no source
	unmodelledShift     = 1.0 // where the model fails: our own bound
)

// The model's own error beside the recipe's: what is left when every figure is
// right. They are ours, set so that published drinks fall inside.
const (
	saltSystemError = 0.10
	juiceError      = 0.20
	proteinError    = 0.35
	micelleError    = 0.35 // milk's published titrations lie within 0.2 (micelle_test.go); recipes with casein powders are not published
	strongIonsError = 0.15 // above ionic strength strongIons
	strongIons      = 0.3  // mol/kg
	waterAlkalinity = 2e-3 // mol/L a treated water may bring: common practice, no source
)

func phOf(d *beverage.Drink, r *Recipe) PH {
	p := PH{Chemistry: r.chemistry}
	p.Predicted = p.Chemistry.predict()
	p.SlowShift = p.Chemistry.slowShift()
	p.Measured = p.measured(d)
	p.Decides = p.Measured
	if !p.Measured.Known() {
		p.Decides = p.Predicted
		if p.PaperOnly && p.Decides.Known() {
			p.Decides.Low, p.Decides.High = math.Min(p.Decides.Low, p.Paper.Low), math.Max(p.Decides.High, p.Paper.High)
		}
	}
	return p
}

// measured is the reading with its tolerance, raised by what CO2 still in the
// sample, a temperature nobody gave and bases still dissolving may hide.
func (p *PH) measured(d *beverage.Drink) beverage.Interval {
	m := d.Measured
	if !m.PH.Known {
		return beverage.Interval{}
	}
	tol := m.PHTolerance.Or(defaultPHTolerance)
	p.WarmOrCold = m.PHTempC.Known && (m.PHTempC.V < readingLowC || m.PHTempC.V > readingHighC)
	if p.WarmOrCold {
		tol += offTemperatureDoubt
	}
	i := beverage.Around(m.PH.V, tol, beverage.Measured)
	if !m.PHTempC.Known {
		i.High += offTemperatureDoubt
	}
	if d.Carbonation != nil && !m.PHDegassed.Or(false) {
		p.GasShift = p.Chemistry.gasShift(d, m.PH.V)
		i.High += p.GasShift
	}
	i.High = math.Min(i.High+p.SlowShift, 14)
	i.Low = math.Max(i.Low, 0)
	if m.PHMethod.Or("meter") == "paper" && i.High > paperCountsBelowPH {
		p.PaperOnly, p.Paper = true, i
		return beverage.Interval{}
	}
	return i
}

// predict solves the charge balance of the recipe and of every figure at its
// ends; independent doubts add as squares, the model's own error beside them.
func (c *Chemistry) predict() beverage.Interval {
	m, ok := c.middle()
	if !ok {
		return beverage.Interval{}
	}
	mid, err := c.settled().pH, c.settled().err
	if err != nil {
		c.Missing = append(c.Missing, err.Error())
		return beverage.Interval{}
	}
	if eq, ok := c.at(mid, false); ok {
		c.ionic = eq.IonicStrength
	}
	var up, down float64
	add := func(pH float64) {
		if pH > mid {
			up += (pH - mid) * (pH - mid)
		} else {
			down += (pH - mid) * (pH - mid)
		}
	}
	for i, p := range c.parts {
		if tol := (p.line.GPerL.High - p.line.GPerL.Mid) / p.line.GPerL.Mid; tol > 0 && len(p.mid.totals) > 0 {
			if pH, err := c.mixture(i, nil, 1+tol).pHNear(mid); err == nil {
				add(pH)
				add(2*mid - pH)
			}
		}
		for k := range p.variants {
			if pH, err := c.mixture(i, &p.variants[k], 1).pHNear(mid); err == nil {
				add(pH)
			}
		}
	}
	if pH, err := m.with("sodium", waterAlkalinity/c.WaterKgPerL).pHNear(mid); err == nil {
		add(pH)
	}
	e := c.modelError()
	return beverage.Interval{
		Low: math.Max(0, mid-math.Sqrt(down+e*e)), Mid: mid, High: math.Min(14, mid+math.Sqrt(up+e*e)), Basis: beverage.Predicted,
	}
}

func (c *Chemistry) modelError() float64 {
	e := saltSystemError
	for _, p := range c.parts {
		switch {
		case p.mid.macro != nil && p.mid.macro.Family().HoldsCasein():
			e = math.Max(e, micelleError)
		case p.mid.macro != nil:
			e = math.Max(e, proteinError)
		case p.line.Acidity.Known():
			e = math.Max(e, juiceError)
		}
	}
	if c.ionic > strongIons {
		e = math.Max(e, strongIonsError)
	}
	return e
}

// gasShift is how far degassing may raise a pH that was read with the CO2 still
// in the drink: the drink is brought to that reading with its gas, and the gas
// is taken away. Where the recipe does not tell, nothing else buffers it.
func (c *Chemistry) gasShift(d *beverage.Drink, reading float64) float64 {
	m, ok := c.middle()
	water := c.WaterKgPerL
	if !ok {
		m, water = mixture{}, 1
	}
	v, known := volumesOf(d)
	if !known {
		v = mostVolumes
	}
	gas := carbonation.GramsPerLitre(v) / molarMassCO2 / water
	ion, err := balanceAt(m.with("carbonic", gas).at(reading), reading)
	if err != nil {
		return unmodelledShift
	}
	still, err := m.with(ion.Component, ion.Molality).pH()
	if err != nil {
		return unmodelledShift
	}
	return math.Max(0, still-reading)
}

// carbonatedPH is the predicted pH with the stated volumes of CO2 dissolved.
func (c *Chemistry) carbonatedPH(d *beverage.Drink) (float64, bool) {
	m, ok := c.middle()
	v, known := volumesOf(d)
	if !ok || !known {
		return 0, false
	}
	pH, err := m.with("carbonic", carbonation.GramsPerLitre(v)/molarMassCO2/c.WaterKgPerL).pH()
	return pH, err == nil
}

// mostVolumes is what strongly carbonated drinks hold, for one whose level is not
// given. Common practice, no source.
const mostVolumes = 5

const molarMassCO2 = 44.01

// slowShift is how far the bases that dissolve slowly raise the pH from none of
// them dissolved to all of them.
func (c *Chemistry) slowShift() float64 {
	if _, ok := c.middle(); !ok {
		return 0
	}
	parts := c.without(func(p part) bool { return p.line.SlowBase })
	if len(parts) == len(c.parts) {
		return 0
	}
	all, err1 := c.settled().pH, c.settled().err
	none, err2 := mixture{parts: parts}.pH()
	if err1 != nil || err2 != nil {
		return unmodelledShift
	}
	return math.Max(0, all-none)
}

// Middles are the pH that decides at its middle, and beside it a paper reading
// that does not count: what is granted for a middle is granted for each. None
// where the pH is unknown.
func (p PH) Middles() []float64 {
	switch {
	case !p.Decides.Known():
		return nil
	case p.PaperOnly:
		return []float64{p.Decides.Mid, p.Paper.Mid}
	}
	return []float64{p.Decides.Mid}
}
