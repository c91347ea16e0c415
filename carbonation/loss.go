package carbonation

import (
	"fmt"
	"math"
)

// The loss figures of a Material are for 500 mL and 22 °C. Loss goes with wall over
// content, so with the cube root of volume; it doubles over 10 C° (1.5 to 2.2;
// activation energy 25 to 35 kJ/mol plus the rise of pressure; memory, medium).
const (
	lossVolumeML    = 500
	lossTempC       = 22
	lossFactorPer10 = 2.0
	lossLowestC     = 0
	lossHighestC    = 45
)

// LossPerMonth returns the per cent of its CO2 that a pack of brimfulML loses a
// month at tempC, 0 to 45 °C, with the ends of what is published; zero where the
// wall is tight. It fails outside, and for a volume that is not one.
func (m Material) LossPerMonth(brimfulML, tempC float64) (Spread, error) {
	if !(tempC >= lossLowestC && tempC <= lossHighestC) {
		return Spread{}, fmt.Errorf("carbonation: loss through the wall is known for 0 to 45 °C, not for %g °C", tempC)
	}
	if !(brimfulML > 0 && brimfulML <= maxBrimfulML) {
		return Spread{}, fmt.Errorf("carbonation: brimful volume %g mL is outside 0 to 1000000 mL", brimfulML)
	}
	factor := math.Pow(lossFactorPer10, (tempC-lossTempC)/10) / math.Cbrt(brimfulML/lossVolumeML)
	l := m.LossPercentPerMonth
	return Spread{cap100(l.Low * factor), cap100(l.Nominal * factor), cap100(l.High * factor)}, nil
}

func cap100(percent float64) float64 { return min(100, percent) }

// VolumesLeft returns the volumes left after a number of months at a loss of
// percent a month of what is there, as loss through a wall goes with pressure. It
// fails for a loss outside 0 to 100 %, and for negative or non-finite input.
func VolumesLeft(volumes, lossPercentPerMonth, months float64) (float64, error) {
	if err := checkVolumes(volumes); err != nil {
		return 0, err
	}
	if !(lossPercentPerMonth >= 0 && lossPercentPerMonth <= 100) {
		return 0, fmt.Errorf("carbonation: a loss of %g %% a month is outside 0 to 100 %%", lossPercentPerMonth)
	}
	if !(months >= 0) || math.IsInf(months, 0) {
		return 0, fmt.Errorf("carbonation: %g months are not a time from 0 on", months)
	}
	return volumes * math.Pow(1-lossPercentPerMonth/100, months), nil
}
