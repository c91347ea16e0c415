package facts

import (
	"math"

	"posset/beverage"
	"posset/beverage/ingredient"
	"posset/carbonation"
)

// PH is what is known of the finished, degassed drink's pH.
type PH struct {
	Decides   beverage.Interval // measured where it can count, else predicted, else unknown
	Measured  beverage.Interval // with its tolerance and every doubt about it
	Predicted beverage.Interval
	Chemistry *Chemistry
	Bench     *Bench // nil: no trials are given

	GasShift   float64           // what undegassed CO2 may have hidden, added to the upper end
	Slow       *Slow             // what slowly dissolving bases do to the prediction
	SlowShift  float64           // what they may still add to the pH that decides, or to the prediction's own day of filling
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
)

func phOf(d *beverage.Drink, r *Recipe, lib *ingredient.Library) PH {
	p := PH{Chemistry: r.chemistry}
	p.Predicted = p.Chemistry.predict()
	if len(d.Bench) > 0 {
		p.Bench, p.Predicted = p.Chemistry.learn(d, lib, p.Predicted)
	}
	p.Slow = p.Chemistry.slow()
	p.Predicted = p.Slow.spread(p.Predicted)
	p.SlowShift = p.slowShift(d)
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

// slowShift is what slow bases may still add to a reading, or else to the drink on
// the day of filling.
func (p *PH) slowShift(d *beverage.Drink) float64 {
	switch {
	case d.Measured.PH.Known:
		return p.Chemistry.slowShift(d.Measured.PH.V)
	case p.Slow != nil:
		return math.Max(0, p.Slow.End-p.Slow.Now)
	}
	return 0
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
	i.High = asWritten(math.Min(i.High+p.SlowShift, 14))
	i.Low = asWritten(math.Max(i.Low, 0))
	if m.PHMethod.Or("meter") == "paper" && i.High > paperCountsBelowPH {
		p.PaperOnly, p.Paper = true, i
		return beverage.Interval{}
	}
	return i
}

// asWritten takes off what adding a tolerance to a reading leaves of binary
// fractions: 4.7 less 0.1 is 4.6, and not above it.
func asWritten(pH float64) float64 {
	const perPH = 1e9
	return math.Round(pH*perPH) / perPH
}

// predict solves the charge balance of the recipe. Doubts that are independent
// add as squares.
func (c *Chemistry) predict() beverage.Interval {
	if _, ok := c.middle(); !ok {
		return beverage.Interval{}
	}
	s := c.settled()
	if s.err != nil {
		c.Missing = append(c.Missing, s.err.Error())
		return beverage.Interval{}
	}
	c.doubts = c.doubtsAt(s.pH)
	up, down := spread(c.doubts)
	return interval(s.pH, up, down)
}

// interval keeps its ends within what a pH is stated as, save where its middle is not.
func interval(pH, up, down float64) beverage.Interval {
	return beverage.Interval{Low: math.Min(pH, math.Max(0, pH-down)), Mid: pH, High: math.Max(pH, math.Min(14, pH+up)), Basis: beverage.Predicted}
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
func (c *Chemistry) carbonatedPH(d *beverage.Drink) (float64, bool) { return c.carbonatedAt(d, roomC) }

// carbonatedAt is the same at a temperature, in a pack that keeps its gas.
func (c *Chemistry) carbonatedAt(d *beverage.Drink, tC float64) (float64, bool) {
	m, ok := c.middle()
	v, known := volumesOf(d)
	if !ok || !known {
		return 0, false
	}
	pH, err := m.with("carbonic", carbonation.GramsPerLitre(v)/molarMassCO2/c.WaterKgPerL).pHAt(tC)
	return pH, err == nil
}

// AtProcess is the pH at a process temperature, degassed and with the gas the
// drink holds; nil where it is unknown or the constants do not hold.
func (f *Facts) AtProcess(tC float64) (still, carbonated *float64) {
	c := f.PH.Chemistry
	m, ok := c.middle()
	if !ok {
		return nil, nil
	}
	if pH, err := m.pHAt(tC); err == nil {
		still = &pH
	}
	if pH, ok := c.carbonatedAt(f.Drink, tC); ok {
		carbonated = &pH
	}
	return still, carbonated
}

// mostVolumes is what strongly carbonated drinks hold, for one whose level is not
// given. Common practice, no source.
const mostVolumes = 5

const molarMassCO2 = 44.01

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
