package holdtube

import "math"

// AbsoluteKPa is a pressure above vacuum.
type AbsoluteKPa float64

// GaugeKPa is a pressure above that of the air around.
type GaugeKPa float64

// Gauge is what a gauge shows where the air has the ambient pressure.
func (p AbsoluteKPa) Gauge(ambient AbsoluteKPa) GaugeKPa { return GaugeKPa(p - ambient) }

// The standard atmosphere: ISO 2533 (recalled, high).
const (
	seaLevelKPa   = 101.325
	lapsePerM     = 2.25577e-5
	lapseExponent = 5.25588
)

// AmbientAt is the pressure of the standard atmosphere at an altitude in m.
// Weather takes up to 5 % off it.
func AmbientAt(altitudeM float64) AbsoluteKPa {
	return AbsoluteKPa(seaLevelKPa * math.Pow(max(0, 1-lapsePerM*altitudeM), lapseExponent))
}
