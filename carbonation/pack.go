package carbonation

import (
	"fmt"
	"math"
)

// Gases a headspace can be closed with. Unknown is taken as air.
const (
	GasUnknown  = ""
	GasAir      = "air"
	GasNitrogen = "nitrogen"
	GasCO2      = "CO2"
	GasVacuum   = "vacuum"
)

// Pack is a closed pack. The gas in it is kept while its temperature moves.
type Pack struct {
	BrimfulML, FillML, FillTempC float64  // inside volume at 20 °C; drink at FillTempC when the pack is closed
	Material                     Material // zero: rigid
	HeadspaceGas                 string   // one of the constants above
	NitrogenG                    float64  // liquid nitrogen still in the pack when it is closed, not what leaves the nozzle
	Volumes                      float64  // dissolved CO2, what a shaken, equilibrated sample of the closed pack reads at 20 °C; 0 still
	Liquid                       Liquid
	AltitudeM                    float64
	Deaerated                    bool // the drink holds no dissolved air when filled; false counts it as saturated
}

// State is a pack at one temperature.
type State struct {
	TempC        float64
	Gauge        GaugeKPa    // against the ambient pressure at the pack's place; NaN where LiquidFull
	Absolute     AbsoluteKPa // NaN where LiquidFull
	HeadspaceML  float64     // 0 where LiquidFull
	LiquidFull   bool        // the drink fills the pack: its pressure is no gas pressure and none is claimed
	FillFraction float64     // drink over inside volume
	Extrapolated bool        // CO2 beyond the published 80 °C or 12 bar
}

// At returns the state of the pack at tempC, 0 to 150 °C. It fails for a pack
// that cannot be (fill above brimful, no headspace at filling, filled at or above
// boiling, not a number) and for a pressure beyond what is known of the gas.
func (p Pack) At(tempC float64) (State, error) {
	states, err := p.Curve([]float64{tempC})
	if err != nil {
		return State{}, err
	}
	return states[0], nil
}

// Curve returns the states at each of temps; the gas of the pack is counted once.
func (p Pack) Curve(temps []float64) ([]State, error) {
	c, err := p.closeNominal()
	if err != nil {
		return nil, err
	}
	states := make([]State, 0, len(temps))
	for _, tC := range temps {
		s, err := c.at(tC)
		if err != nil {
			return nil, err
		}
		states = append(states, s)
	}
	return states, nil
}

const (
	maxBrimfulML = 1e6
	maxNitrogenG = 1e4
)

func (p Pack) check() error {
	if !(p.BrimfulML > 0 && p.BrimfulML <= maxBrimfulML) {
		return fmt.Errorf("carbonation: brimful volume %g mL is outside 0 to 1000000 mL", p.BrimfulML)
	}
	if !(p.FillML > 0) || math.IsInf(p.FillML, 0) {
		return fmt.Errorf("carbonation: fill volume %g mL is not above 0", p.FillML)
	}
	if p.FillML >= p.BrimfulML {
		return fmt.Errorf("carbonation: fill %g mL leaves no headspace in a brimful volume of %g mL", p.FillML, p.BrimfulML)
	}
	if !(p.NitrogenG >= 0 && p.NitrogenG <= maxNitrogenG) {
		return fmt.Errorf("carbonation: %g g of nitrogen are outside 0 to 10000 g", p.NitrogenG)
	}
	switch p.HeadspaceGas {
	case GasUnknown, GasAir, GasNitrogen, GasCO2, GasVacuum:
	default:
		return fmt.Errorf("carbonation: headspace gas %q is none of air, nitrogen, CO2, vacuum", p.HeadspaceGas)
	}
	if err := checkVolumes(p.Volumes); err != nil {
		return err
	}
	return p.Liquid.checkAt(p.FillTempC)
}
