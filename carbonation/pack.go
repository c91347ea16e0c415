package carbonation

import (
	"fmt"
	"math"
)

// Gases a headspace can be closed with. Unknown counts as air at ambient pressure
// in At, as nitrogen, which dissolves least, in Worst, and as none in Lowest.
const (
	GasUnknown  = ""
	GasAir      = "air"
	GasNitrogen = "nitrogen"
	GasCO2      = "CO2"
	GasVacuum   = "vacuum"
)

// Pack is a closed pack. The gas in it is kept while its temperature moves.
type Pack struct {
	BrimfulML, FillML, FillTempC float64  // inside volume to the closure at 20 °C; drink at FillTempC when the pack is closed
	Material                     Material // zero: rigid
	HeadspaceGas                 string   // one of the constants above
	NitrogenG                    float64  // liquid nitrogen still in the pack when it is closed, not what leaves the nozzle
	Volumes                      float64  // dissolved CO2, what a shaken, equilibrated sample of the closed pack reads at 20 °C; 0 still
	Liquid                       Liquid
	AltitudeM                    float64 // where the pack is, above sea level
	Deaerated                    bool    // the drink surely holds no dissolved air when filled; false: saturated if still, and in Worst if carbonated
}

// State is a pack at one temperature.
type State struct {
	TempC        float64
	Gauge        GaugeKPa    // against the ambient pressure at the pack's place; +Inf where LiquidFull
	Absolute     AbsoluteKPa // +Inf where LiquidFull
	HeadspaceML  float64     // 0 where LiquidFull
	LiquidFull   bool        // the drink fills the pack: its pressure is no gas pressure and none is claimed
	FillFraction float64     // drink over inside volume
	Extrapolated bool        // beyond what is published: CO2 above 80 °C or 12 bar, density of sugar above 100 °C, of alcohol above 40 °C
}

// At returns the nominal state of the pack at tempC, 0 to 150 °C. Gas trapped at
// filling is taken at sea-level pressure or that of the place, whichever is
// higher, and gauge pressure against the lower of the two: a pack may be sealed
// below and carried up. The give of the wall and the published solubility are in
// the middle of what is known; Worst takes the unfavourable ends.
//
// It fails for a pack that cannot be (fill above brimful, no headspace at filling,
// filled at or above boiling, not a number) and with ErrAboveGasLimit above 40 bar.
func (p Pack) At(tempC float64) (State, error) {
	c, err := p.closeNominal()
	if err != nil {
		return State{}, err
	}
	return c.atC(tempC)
}

// Curve returns the states at each of temps, as At does; the gas of the pack is
// counted once. It fails where At fails at one of them.
func (p Pack) Curve(temps []float64) ([]State, error) {
	c, err := p.closeNominal()
	if err != nil {
		return nil, err
	}
	states := make([]State, 0, len(temps))
	for _, tC := range temps {
		s, err := c.atC(tC)
		if err != nil {
			return nil, err
		}
		states = append(states, s)
	}
	return states, nil
}

func (p Pack) closeNominal() (closed, error) {
	place, err := AmbientKPa(p.AltitudeM)
	if err != nil {
		return closed{}, err
	}
	f, err := p.filled()
	if err != nil {
		return closed{}, err
	}
	return f.closeNominal(place)
}

const (
	maxBrimfulML = 1e6
	maxNitrogenG = 1e4
)

// check says what cannot be of the pack.
func (p *Pack) check() error {
	if err := p.checkFill(p.FillML); err != nil {
		return err
	}
	if !(p.NitrogenG >= 0 && p.NitrogenG <= maxNitrogenG) {
		return fmt.Errorf("carbonation: nitrogen %g g is outside 0 to 10000 g", p.NitrogenG)
	}
	switch p.HeadspaceGas {
	case GasUnknown, GasAir, GasNitrogen, GasCO2, GasVacuum:
	default:
		return fmt.Errorf("carbonation: headspace gas %q is none of air, nitrogen, CO2, vacuum", p.HeadspaceGas)
	}
	if err := p.Material.check(); err != nil {
		return err
	}
	return checkVolumes(p.Volumes)
}

func (p *Pack) checkFill(fillML float64) error {
	if !(p.BrimfulML > 0 && p.BrimfulML <= maxBrimfulML) {
		return fmt.Errorf("carbonation: brimful volume %g mL is outside 0 to 1000000 mL", p.BrimfulML)
	}
	if !(fillML > 0) || math.IsInf(fillML, 0) {
		return fmt.Errorf("carbonation: fill volume %g mL is not above 0", fillML)
	}
	if fillML >= p.BrimfulML {
		return fmt.Errorf("carbonation: fill %g mL %w in a brimful volume of %g mL", fillML, ErrNoHeadspace, p.BrimfulML)
	}
	return nil
}

// growth is the inside volume at tC over that at 20 °C, without pressure.
func (p *Pack) growth(tC float64) float64 { return 1 + p.Material.ExpansionPerK*(tC-referenceC) }

// filled is a checked pack with its drink at the temperatures where gas is counted.
type filled struct {
	Pack
	mix        mixture
	fill, at20 isotherm
}

func (p Pack) filled() (*filled, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	m, err := p.Liquid.mixAt(p.FillTempC)
	if err != nil {
		return nil, err
	}
	return &filled{Pack: p, mix: m, fill: m.isotherm(p.FillTempC), at20: m.isotherm(referenceC)}, nil
}

// closeNominal closes the pack where the ambient pressure is place.
func (p *filled) closeNominal(place AbsoluteKPa) (closed, error) {
	return p.close(assumption{
		givePerBar: p.Material.GivePerBar.Nominal,
		sealing:    max(place, StandardAtmosphere), standing: min(place, StandardAtmosphere),
	}, p.FillML)
}
