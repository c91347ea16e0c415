package carbonation

import (
	"fmt"
)

const (
	lowestC, highestC = 0, 150
	publishedHighC    = 80
	publishedHighKPa  = 1200
	maxKPa            = 4000 // beyond, a second virial coefficient no longer describes CO2
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

// Pressure returns the total pressure above the liquid at tC when it holds the
// given volumes of dissolved CO2 in equilibrium: CO2 as a real gas and the vapour
// of the liquid, no air. Range 0 to 150 °C, 0 to 20 volumes; published and
// cross-checked to 80 °C and 12 bar. It fails outside, and where the pressure
// would be beyond what the gas equation holds for (40 bar).
func (l Liquid) Pressure(volumes, tempC float64) (AbsoluteKPa, error) {
	if err := l.checkAt(tempC); err != nil {
		return 0, err
	}
	if err := checkVolumes(volumes); err != nil {
		return 0, err
	}
	fugacity := volumes / litresPerMol / (l.solvent(tempC) * henryCO2(tempC))
	vapour := l.vapourKPa(tempC)
	gas := realGasAt(tempC)
	excess := func(p float64) float64 {
		part := p - vapour
		return part*gas.fugacityFactor(p, part/p) - fugacity
	}
	p, ok := root(vapour, maxKPa, excess)
	if !ok {
		return 0, fmt.Errorf("carbonation: %g volumes at %g °C is above %d kPa, beyond what is known of the gas", volumes, tempC, maxKPa)
	}
	return AbsoluteKPa(p), nil
}

// Volumes returns the volumes of CO2 that the liquid holds in equilibrium at tC
// under the total pressure p, no air: the inverse of Pressure. It fails for a
// pressure at or below the liquid's vapour pressure (it would boil) or above
// 40 bar.
func (l Liquid) Volumes(p AbsoluteKPa, tempC float64) (float64, error) {
	if err := l.checkAt(tempC); err != nil {
		return 0, err
	}
	vapour := l.vapourKPa(tempC)
	if !(float64(p) >= vapour) {
		return 0, fmt.Errorf("carbonation: %.4g kPa absolute is below the vapour pressure of the drink at %g °C, %.4g kPa: it would boil", float64(p), tempC, vapour)
	}
	if float64(p) > maxKPa {
		return 0, fmt.Errorf("carbonation: %g kPa absolute is above %d kPa, beyond what is known of the gas", float64(p), maxKPa)
	}
	part := float64(p) - vapour
	fugacity := part * realGasAt(tempC).fugacityFactor(float64(p), part/float64(p))
	return fugacity * l.solvent(tempC) * henryCO2(tempC) * litresPerMol, nil
}

func (l Liquid) checkAt(tC float64) error {
	if err := checkTemperature(tC); err != nil {
		return err
	}
	return l.check()
}
