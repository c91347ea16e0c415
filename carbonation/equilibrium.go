package carbonation

import (
	"errors"
	"fmt"
)

// ErrAboveGasLimit is wrapped by the error of every pressure above 40 bar
// absolute, where the gas equation no longer holds. No figure is claimed there;
// whoever holds a pressure against a rating counts it as above any.
var ErrAboveGasLimit = errors.New("above 4000 kPa, beyond what is known of the gas")

const (
	lowestC, highestC = 0, 150
	publishedHighC    = 80
	publishedHighKPa  = 1200
	maxKPa            = 4000
	maxVolumes        = 20
)

func checkTemperature(tC float64) error {
	if !(tC >= lowestC && tC <= highestC) {
		return fmt.Errorf("carbonation: temperature %g °C is outside 0 to 150 °C", tC)
	}
	return nil
}

func checkVolumes(volumes float64) error {
	if !(volumes >= 0 && volumes <= maxVolumes) {
		return fmt.Errorf("carbonation: %g volumes of CO2 are outside 0 to %d", volumes, maxVolumes)
	}
	return nil
}

func (l Liquid) mixAt(tC float64) (mixture, error) {
	if err := checkTemperature(tC); err != nil {
		return mixture{}, err
	}
	return l.mix()
}

// Pressure returns the total pressure above the liquid at tempC when a litre of
// it (at 20 °C) holds the given volumes of dissolved CO2 in equilibrium: CO2 as a
// real gas and the vapour of the liquid, no air. Range 0 to 150 °C, 0 to 20
// volumes; published and cross-checked to 80 °C and 12 bar. It fails outside, and
// with ErrAboveGasLimit above 40 bar.
//
// Source: Weiss 1974 for solubility, virial coefficients and the effect of
// pressure on the liquid; see Solubility above 40 °C and Liquid for solutes.
//
// A counter-pressure filler must hold at least this pressure to keep the gas in.
func (l Liquid) Pressure(volumes, tempC float64) (AbsoluteKPa, error) {
	return l.pressure(volumes, tempC, false)
}

// HighestPressure is Pressure at the unfavourable end: the lowest published
// solubility of CO2 in water, and the doubt about the solutes that Liquid tells of.
func (l Liquid) HighestPressure(volumes, tempC float64) (AbsoluteKPa, error) {
	return l.pressure(volumes, tempC, true)
}

func (l Liquid) pressure(volumes, tempC float64, low bool) (AbsoluteKPa, error) {
	m, err := l.mixAt(tempC)
	if err != nil {
		return 0, err
	}
	if err := checkVolumes(volumes); err != nil {
		return 0, err
	}
	mol := volumes / litresPerMol
	fugacity := mol / (m.solvent(tempC, low) * (1 - mol*molarVolumeDissolved) * henry(tempC, low))
	vapour, gas := m.vapourKPa(tempC), realGasAt(tempC)
	p, ok := root(vapour, maxKPa, func(p float64) float64 {
		part := p - vapour
		return part*gas.fugacityFactor(p, part/p) - fugacity
	})
	if !ok {
		return 0, fmt.Errorf("carbonation: %g volumes at %g °C: pressure %w", volumes, tempC, ErrAboveGasLimit)
	}
	return AbsoluteKPa(p), nil
}

// Volumes returns the volumes of CO2 that the liquid holds in equilibrium at tempC
// under the total pressure p, no air: the inverse of Pressure. It fails for a
// pressure below the liquid's vapour pressure (it would boil) and with
// ErrAboveGasLimit above 40 bar.
func (l Liquid) Volumes(p AbsoluteKPa, tempC float64) (float64, error) {
	m, err := l.mixAt(tempC)
	if err != nil {
		return 0, err
	}
	vapour := m.vapourKPa(tempC)
	if err := checkAbsolute(p, vapour, tempC); err != nil {
		return 0, err
	}
	part := float64(p) - vapour
	fugacity := part * realGasAt(tempC).fugacityFactor(float64(p), part/float64(p))
	perSolvent := fugacity * m.solvent(tempC, false) * henryCO2(tempC)
	return perSolvent / (1 + perSolvent*molarVolumeDissolved) * litresPerMol, nil
}

func checkAbsolute(p AbsoluteKPa, vapourKPa, tC float64) error {
	if !(float64(p) >= vapourKPa) {
		return fmt.Errorf("carbonation: %.4g kPa absolute at %g °C is below the vapour pressure of the drink, %.4g kPa: it would boil", float64(p), tC, vapourKPa)
	}
	if float64(p) > maxKPa {
		return fmt.Errorf("carbonation: %.4g kPa absolute: pressure %w", float64(p), ErrAboveGasLimit)
	}
	return nil
}
