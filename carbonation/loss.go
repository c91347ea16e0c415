package carbonation

import (
	"fmt"
	"math"
)

const (
	// barrerCM3 is one barrer in cm3 (at 0 °C and 1 atm, ideal) x mm / (m2 s kPa):
	// by definition 1e-10 cm3 cm / (cm2 s cmHg).
	barrerCM3       = 1e-10 * 10 * 1e4 / 1.333224
	idealCM3PerMol  = 22414.0
	secondsPerMonth = 365.25 / 12 * 86400

	// Permeation of PET: activation energy 25 to 35 kJ/mol (memory, medium).
	permeationEnergy = 30000.0 // J/mol
	permeabilityC    = 23
	lossLowestC      = 0
	lossHighestC     = 45

	// bottleShape is the wall of a bottle over volume^(2/3): a cylinder three
	// diameters long has 6.2.
	bottleShape = 6.2
	// usualFill is how full a bottle is that nothing else is said of.
	usualFill = 0.96
)

// LossPerMonth returns the per cent of its CO2 that a pack of brimfulML loses a
// month at tempC, 0 to 45 °C, by what is published of the permeability of its
// wall: gas goes through in proportion to its pressure, which a given amount makes
// higher in the warmth. Nominal is for a wall of WallMM all over; what a closure
// lets by and what the wall takes up in the first days (1 to 4 %, trade practice,
// memory) is not in it. Zero where the wall is tight. It fails outside the range,
// and for a volume that is not one.
func (m Material) LossPerMonth(brimfulML, tempC float64) (Spread, error) {
	if !(tempC >= lossLowestC && tempC <= lossHighestC) {
		return Spread{}, fmt.Errorf("carbonation: loss through the wall is known for 0 to 45 °C, not for %g °C", tempC)
	}
	if !(brimfulML > 0 && brimfulML <= maxBrimfulML) {
		return Spread{}, fmt.Errorf("carbonation: brimful volume %g mL is outside 0 to 1000000 mL", brimfulML)
	}
	if err := m.check(); err != nil {
		return Spread{}, err
	}
	if m.Barrer.High == 0 || m.WallMM == 0 {
		return Spread{}, nil
	}
	perBarrer := m.lossPerSecondAndBarrer(brimfulML, tempC)
	percent := func(barrer float64) float64 { return 100 * -math.Expm1(-perBarrer*barrer*secondsPerMonth) }
	return Spread{percent(m.Barrer.Low), percent(m.Barrer.Nominal), percent(m.Barrer.High)}, nil
}

// lossPerSecondAndBarrer is the share of its CO2 that leaves in a second for each
// barrer of permeability.
func (m Material) lossPerSecondAndBarrer(brimfulML, tempC float64) float64 {
	litres := brimfulML / 1000
	rt := gasConstant * (tempC + kelvin)
	molPerKPa := litres * (usualFill*WaterDensityKgPerL(tempC)*henryCO2(tempC) + (1-usualFill)/rt)
	areaM2 := bottleShape * math.Pow(litres/1000, 2.0/3)
	warmth := math.Exp(permeationEnergy / gasConstant * (1/(permeabilityC+kelvin) - 1/(tempC+kelvin)))
	return barrerCM3 * warmth * areaM2 / m.WallMM / idealCM3PerMol / molPerKPa
}

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
