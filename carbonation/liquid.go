package carbonation

import (
	"fmt"
	"math"
)

// Liquid is what the drink holds besides water and gas, per litre at 20 °C. The
// zero value is water.
type Liquid struct {
	SugarGPerL      float64            // sucrose, or any sugar taken as sucrose
	AlcoholFraction float64            // ethanol by volume, 0.05 is 5 %
	OtherGPerL      float64            // protein, acids, fibre and other solids that take the place of water
	IonsMolPerL     map[string]float64 // "Na+", "Cl-" ...: salting out; see Ions
}

const (
	maxSugarGPerL      = 900
	maxAlcoholFraction = 0.25 // beyond, solubility turns up again: no figure here
	maxOtherGPerL      = 400
)

// check fails for an amount that is not one, or beyond the figures known here.
func (l Liquid) check() error {
	if !(l.SugarGPerL >= 0 && l.SugarGPerL <= maxSugarGPerL) {
		return fmt.Errorf("carbonation: sugar %g g/L is outside 0 to %d g/L", l.SugarGPerL, maxSugarGPerL)
	}
	if !(l.AlcoholFraction >= 0 && l.AlcoholFraction <= maxAlcoholFraction) {
		return fmt.Errorf("carbonation: alcohol fraction %g by volume is outside 0 to %g", l.AlcoholFraction, maxAlcoholFraction)
	}
	if !(l.OtherGPerL >= 0 && l.OtherGPerL <= maxOtherGPerL) {
		return fmt.Errorf("carbonation: other solids %g g/L are outside 0 to %d g/L", l.OtherGPerL, maxOtherGPerL)
	}
	if l.waterKgPerL() <= 0 {
		return fmt.Errorf("carbonation: %g g/L sugar, %g g/L other solids and %g alcohol by volume leave no water", l.SugarGPerL, l.OtherGPerL, l.AlcoholFraction)
	}
	return checkIons(l.IonsMolPerL)
}

// Apparent specific volumes at 20 °C in L/kg. Sucrose: fitted to the CRC
// Handbook's density table of 5 to 60 Brix (from memory), within 0.0005.
const (
	sugarVolume      = 0.6140
	sugarVolumeSlope = 1.8e-5 // more for each g/L
	otherVolume      = 0.73   // proteins 0.70 to 0.75: textbook, from memory
)

func (l Liquid) sugarLitres() float64 {
	return l.SugarGPerL / 1000 * (sugarVolume + sugarVolumeSlope*l.SugarGPerL)
}

// waterKgPerL is the water of a litre of drink at 20 °C: what takes up the gas.
func (l Liquid) waterKgPerL() float64 {
	litres := 1 - l.sugarLitres() - l.OtherGPerL/1000*otherVolume - l.AlcoholFraction*(1-ethanolContraction(l.AlcoholFraction))
	return litres * waterDensity(referenceC)
}

const referenceC = 20

// solvent is the water of a litre of drink in kg, lowered by what salts out and by
// alcohol: the mass that a solubility in water multiplies.
func (l Liquid) solvent(tC float64) float64 {
	return l.waterKgPerL() * l.ethanolEffect() * math.Pow(10, -saltingOut(l.IonsMolPerL, tC))
}

// vapourKPa is the vapour pressure of the liquid: that of pure water (sugar
// lowers it by under 1 %, not counted) and of the ethanol.
func (l Liquid) vapourKPa(tC float64) float64 {
	return waterVapourKPa(tC) * (1 + l.ethanolVapourRatio())
}
