package carbonation

import (
	"fmt"
	"math"
)

// GaugeKPa is a pressure in kPa above the ambient pressure around it.
type GaugeKPa float64

// AbsoluteKPa is a pressure in kPa above vacuum.
type AbsoluteKPa float64

// StandardAtmosphere is the ambient pressure at sea level.
const StandardAtmosphere AbsoluteKPa = 101.325

// kPaPerBar and kPaPerAtm are exact by definition.
const (
	kPaPerBar = 100.0
	kPaPerAtm = float64(StandardAtmosphere)
)

// Gauge returns p relative to ambient.
func (p AbsoluteKPa) Gauge(ambient AbsoluteKPa) GaugeKPa { return GaugeKPa(p - ambient) }

// Absolute returns g above vacuum, ambient being the pressure around it. It
// fails for a non-finite value and for a result below vacuum.
func (g GaugeKPa) Absolute(ambient AbsoluteKPa) (AbsoluteKPa, error) {
	p := float64(g) + float64(ambient)
	if !(p >= 0) || math.IsInf(p, 0) {
		return 0, fmt.Errorf("carbonation: gauge pressure %g kPa at an ambient of %g kPa is below vacuum or not a number", float64(g), float64(ambient))
	}
	return AbsoluteKPa(p), nil
}

// The troposphere of the standard atmosphere, ISO 2533:1975 (from memory, high
// confidence): p = p0 (1 - L h / T0)^(g M / (R L)).
const (
	lapseKPerM       = 0.0065
	seaLevelK        = 288.15
	barometricPower  = 5.25588
	lowestAltitudeM  = -500
	highestAltitudeM = 11000
)

// AmbientKPa returns the ambient pressure at an altitude in metres above sea
// level by the standard atmosphere; weather moves it by some 3 kPa. It fails
// outside -500 to 11,000 m.
func AmbientKPa(altitudeM float64) (AbsoluteKPa, error) {
	if !(altitudeM >= lowestAltitudeM && altitudeM <= highestAltitudeM) {
		return 0, fmt.Errorf("carbonation: altitude %g m is outside -500 to 11000 m", altitudeM)
	}
	return StandardAtmosphere * AbsoluteKPa(math.Pow(1-lapseKPerM*altitudeM/seaLevelK, barometricPower)), nil
}
