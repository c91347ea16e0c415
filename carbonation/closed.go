package carbonation

import (
	"errors"
	"fmt"
	"math"
)

// closed is a pack with its gas counted: amounts in mol, volumes in L, masses in kg.
type closed struct {
	pack       *filled
	as         assumption
	litresAt20 float64 // of drink
	co2        float64 // mol, in drink and headspace
	n2, o2     float64
}

// assumption is what counts where figures are doubtful or not given.
type assumption struct {
	low        bool    // solubility at the unfavourable end
	givePerBar float64 // of the pack
	sealing    AbsoluteKPa
	standing   AbsoluteKPa // ambient where the pack is
	mostAir    bool        // a carbonated drink too is saturated with air when filled
	leastGas   bool        // nothing trapped but what is sure
}

// Composition of dry air by volume; argon is counted with nitrogen.
const (
	airN2 = 0.7905
	airO2 = 0.2095
)

const molarMassN2 = 28.0134 // g/mol: CODATA

// ErrNoHeadspace is wrapped by the error of a pack that has no headspace at filling: by
// the fill tolerance alone it is liquid-full, not impossible, and whoever judges a pack
// counts it as liquid-full in any case.
var ErrNoHeadspace = errors.New("leaves no headspace")

// close counts the gas of the pack: what was trapped and dissolved at filling, and
// the CO2 that p.Volumes at 20 °C mean; fillML may be off the nominal fill.
func (p *filled) close(a assumption, fillML float64) (closed, error) {
	if err := p.checkFill(fillML); err != nil {
		return closed{}, err
	}
	tC := p.FillTempC
	dry := float64(a.sealing) - p.fill.vapour
	if a.leastGas {
		dry = max(0, dry) // up the hill the drink may boil at the filler: nothing but vapour is shut in
	} else if dry <= 0 {
		return closed{}, fmt.Errorf("carbonation: the drink boils at the filler: %g °C at an ambient of %.4g kPa", tC, float64(a.sealing))
	}
	c := closed{pack: p, as: a, litresAt20: fillML / 1000 / p.fill.expansion}
	headspace := p.BrimfulML/1000*p.growth(tC) - fillML/1000
	if headspace <= 0 {
		return closed{}, fmt.Errorf("carbonation: fill %g mL %w in a brimful volume of %g mL at %g °C", fillML, ErrNoHeadspace, p.BrimfulML, tC)
	}
	c.trap(dry, headspace)
	c.n2 += p.NitrogenG / molarMassN2
	if p.Volumes > 0 {
		return c, c.countCO2()
	}
	return c, nil
}

// trap adds what the headspace was closed with and the air dissolved in the drink.
// Carbonating drives air out, so a carbonated drink counts as saturated with it only
// where the most is asked for. A reading of a carbonated pack closed with CO2 counts
// all gas in it as CO2, so no air is added to that.
func (c *closed) trap(dryKPa, headspaceL float64) {
	p := c.pack
	trapped := dryKPa * headspaceL / (gasConstant * (p.FillTempC + kelvin))
	switch p.HeadspaceGas {
	case GasUnknown:
		switch {
		case c.as.leastGas:
		case c.as.mostAir:
			c.n2 = trapped // dissolves least
		default:
			c.n2, c.o2 = airN2*trapped, airO2*trapped
		}
	case GasAir:
		c.n2, c.o2 = airN2*trapped, airO2*trapped
	case GasNitrogen:
		c.n2 = trapped
	case GasCO2:
		if p.Volumes > 0 {
			return
		}
		c.co2 = trapped
	}
	if !p.Deaerated && !c.as.leastGas && (p.Volumes == 0 || c.as.mostAir) {
		c.dissolveAir(dryKPa)
	}
	if c.as.leastGas {
		c.o2 = 0 // a drink uses up its oxygen in time
	}
}

// dissolveAir counts the drink as saturated with air when filled.
func (c *closed) dissolveAir(dryKPa float64) {
	fill := &c.pack.fill
	perKPa := c.solvent(fill) * dryKPa
	c.n2 += perKPa * airN2 * fill.n2PerKgKPa
	c.o2 += perKPa * airO2 * fill.o2PerKgKPa
}

// solvent is the water that takes up gas, in kg, less the place that the
// dissolved CO2 of the filled drink itself takes.
func (c *closed) solvent(i *isotherm) float64 {
	own := 1 - c.pack.Volumes/litresPerMol*molarVolumeDissolved
	return c.litresAt20 * own * i.uptake(&c.as).solvent
}

// countCO2 finds the CO2 of the whole pack from what is dissolved at 20 °C.
func (c *closed) countCO2() error {
	c.co2 = c.pack.Volumes / litresPerMol * c.litresAt20
	b := c.balanceAt(&c.pack.at20)
	if b.room(0) <= 0 {
		return nil
	}
	fugacity := c.co2 / b.co2PerKPa
	p, ok := root(b.vapour, maxKPa, func(p float64) float64 { return b.co2Fugacity(p) - fugacity })
	if !ok {
		return fmt.Errorf("carbonation: %g volumes in this pack at 20 °C: pressure %w", c.pack.Volumes, ErrAboveGasLimit)
	}
	c.co2 += b.co2InHeadspace(p)
	return nil
}

// atC is the state at tC.
func (c *closed) atC(tC float64) (State, error) {
	if err := checkTemperature(tC); err != nil {
		return State{}, err
	}
	i := c.pack.mix.isotherm(tC)
	return c.at(&i)
}

// at solves the balance of gas at a temperature.
func (c *closed) at(i *isotherm) (State, error) {
	tC, b := i.tC, c.balanceAt(i)
	if b.room(0) <= 0 {
		return liquidFull(tC), nil
	}
	p, ok := root(b.vapour, maxKPa, func(p float64) float64 { return b.pressure(p) - p })
	if !ok {
		return State{}, fmt.Errorf("carbonation: the pack at %g °C: pressure %w", tC, ErrAboveGasLimit)
	}
	room := b.room(p)
	return State{
		TempC: tC, Absolute: AbsoluteKPa(p), Gauge: AbsoluteKPa(p).Gauge(c.as.standing),
		HeadspaceML: 1000 * room, FillFraction: b.liquidL / (b.liquidL + room),
		Extrapolated: c.beyondPublished(tC, p),
	}, nil
}

func (c *closed) beyondPublished(tC, pKPa float64) bool {
	gas := c.co2 > 0 && (tC > publishedHighC || pKPa > publishedHighKPa)
	return gas || tC > solutionHighestC && c.pack.mix.sugarShare > 0 || tC > ethanolHighestC && c.pack.mix.ethanolShare > 0
}

// liquidFull is the state of a pack whose drink needs all of the inside volume,
// give of the wall not counted.
func liquidFull(tC float64) State {
	return State{TempC: tC, LiquidFull: true, FillFraction: 1, Gauge: GaugeKPa(math.Inf(1)), Absolute: AbsoluteKPa(math.Inf(1))}
}
