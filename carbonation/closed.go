package carbonation

import (
	"fmt"
	"math"
)

// closed is a pack with its gas counted: amounts in mol, volumes in L, masses in kg.
type closed struct {
	pack        Pack
	henry       func(tC float64) float64 // of CO2
	givePerBar  float64
	ambient     AbsoluteKPa // where the pack is
	litresAt20  float64     // of drink
	co2, n2, o2 float64     // mol, in drink and headspace
}

// Composition of dry air by volume; argon is counted with nitrogen.
const (
	airN2 = 0.7905
	airO2 = 0.2095
)

const molarMassN2 = 28.0134 // g/mol: CODATA

// assumption is what a pack is closed with where figures are doubtful.
type assumption struct {
	henry             func(tC float64) float64
	givePerBar        float64
	sealing, standing AbsoluteKPa
}

func (p Pack) closeNominal() (closed, error) {
	place, err := AmbientKPa(p.AltitudeM)
	if err != nil {
		return closed{}, err
	}
	return p.close(assumption{
		henry: henryCO2, givePerBar: p.Material.GivePerBar.Nominal,
		sealing: max(place, StandardAtmosphere), standing: min(place, StandardAtmosphere),
	})
}

// close counts the gas of the pack: what was trapped and dissolved at filling, and
// the CO2 that a reading of p.Volumes at 20 °C means.
func (p Pack) close(a assumption) (closed, error) {
	if err := p.check(); err != nil {
		return closed{}, err
	}
	dry := float64(a.sealing) - p.Liquid.vapourKPa(p.FillTempC)
	if dry <= 0 {
		return closed{}, fmt.Errorf("carbonation: the drink boils at the filler: %g °C at an ambient of %.4g kPa", p.FillTempC, float64(a.sealing))
	}
	c := closed{pack: p, henry: a.henry, givePerBar: a.givePerBar, ambient: a.standing}
	c.litresAt20 = p.FillML / 1000 / p.Liquid.expansion(p.FillTempC)
	headspace := p.BrimfulML/1000*c.growth(p.FillTempC) - p.FillML/1000
	if headspace <= 0 {
		return closed{}, fmt.Errorf("carbonation: fill %g mL leaves no headspace in a brimful volume of %g mL at %g °C", p.FillML, p.BrimfulML, p.FillTempC)
	}
	c.trapAir(dry, headspace)
	c.n2 += p.NitrogenG / molarMassN2
	return c, c.countCO2()
}

// trapAir adds what the headspace was closed with and the air dissolved in the
// drink. A reading of a pack closed with CO2 counts all gas in it as CO2, so no
// air is added to that.
func (c *closed) trapAir(dryKPa, headspaceL float64) {
	tC := c.pack.FillTempC
	trapped := dryKPa * headspaceL / (gasConstant * (tC + kelvin))
	switch c.pack.HeadspaceGas {
	case GasUnknown, GasAir:
		c.n2, c.o2 = airN2*trapped, airO2*trapped
	case GasNitrogen:
		c.n2 = trapped
	case GasCO2:
		return
	}
	if c.pack.Deaerated {
		return
	}
	solvent := c.litresAt20 * c.pack.Liquid.waterKgPerL()
	c.n2 += solvent * iapwsTermsN2.molPerKgKPa(tC) * airN2 * dryKPa
	c.o2 += solvent * iapwsTermsO2.molPerKgKPa(tC) * airO2 * dryKPa
}

// growth is the inside volume at tC over that at 20 °C, without pressure.
func (c *closed) growth(tC float64) float64 {
	return 1 + c.pack.Material.ExpansionPerK*(tC-referenceC)
}

// countCO2 finds the CO2 of the whole pack from what is dissolved at 20 °C.
func (c *closed) countCO2() error {
	if c.pack.Volumes == 0 {
		return nil
	}
	dissolved := c.pack.Volumes / litresPerMol * c.litresAt20
	b := c.balanceAt(referenceC)
	if b.room(0) <= 0 {
		c.co2 = dissolved
		return nil
	}
	fugacity := dissolved / b.co2PerKPa
	excess := func(p float64) float64 {
		other := b.vapour + b.airKPa(p)
		part := p - other
		return part*b.gas.fugacityFactor(p, max(0, part/p)) - fugacity
	}
	p, ok := root(b.vapour, maxKPa, excess)
	if !ok {
		return fmt.Errorf("carbonation: %g volumes at %d °C in this pack is above %d kPa, beyond what is known of the gas", c.pack.Volumes, referenceC, maxKPa)
	}
	part := p - b.vapour - b.airKPa(p)
	c.co2 = dissolved + part*b.room(p)/(b.gas.compressibility(p, part/p)*b.gas.rt)
	return nil
}

// at solves the balance of gas at tC.
func (c *closed) at(tC float64) (State, error) {
	if err := checkTemperature(tC); err != nil {
		return State{}, err
	}
	b := c.balanceAt(tC)
	s := State{TempC: tC, FillFraction: b.liquidL / b.insideL, Extrapolated: tC > publishedHighC && c.co2 > 0}
	if b.room(0) <= 0 {
		s.LiquidFull, s.FillFraction = true, 1
		s.Gauge, s.Absolute = GaugeKPa(math.NaN()), AbsoluteKPa(math.NaN())
		return s, nil
	}
	p, ok := root(b.vapour, maxKPa, func(p float64) float64 { return b.pressure(p) - p })
	if !ok {
		return State{}, fmt.Errorf("carbonation: the pack is above %d kPa at %g °C, beyond what is known of the gas", maxKPa, tC)
	}
	s.Absolute, s.Gauge = AbsoluteKPa(p), AbsoluteKPa(p).Gauge(c.ambient)
	s.HeadspaceML = 1000 * b.room(p)
	s.FillFraction = b.liquidL / (b.liquidL + b.room(p))
	s.Extrapolated = s.Extrapolated || (c.co2 > 0 && p > publishedHighKPa)
	return s, nil
}
