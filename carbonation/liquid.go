package carbonation

import (
	"fmt"
	"math"
)

// Liquid is what the drink holds besides water and gas, per litre at 20 °C. The
// zero value is water.
//
// Sugar takes the place of water, and gas dissolves in what water is left: 0.936
// of water's solubility at 10 Brix. Alcohol lowers it by 0.45 % for each per cent
// by volume. For protein, acids and other solids no constant is published that
// would serve; they too only take the place of water (measured, protein and amino
// acids bind a little more CO2 than that). The unfavourable end lies 3 % lower
// for 100 g/L of solids and up, and follows the wine formula for alcohol. Ions
// salt out by published parameters. At neutral pH the drink holds bicarbonate
// beside the dissolved CO2 that is meant here.
type Liquid struct {
	SugarGPerL      float64            // sucrose, or any sugar taken as sucrose; 0 to 900
	AlcoholFraction float64            // ethanol by volume, 0.05 is 5 %; 0 to 0.25
	OtherGPerL      float64            // protein, acids, fibre and other dissolved or swollen solids; 0 to 400
	IonsMolPerL     map[string]float64 // "Na+", "Cl-" ...; 0 to 5 mol/L; see Ions
}

const (
	maxSugarGPerL      = 900
	maxAlcoholFraction = 0.25 // beyond, solubility turns up again: no figure here
	maxOtherGPerL      = 400
	minWaterKgPerL     = 0.05
)

// mixture is a checked Liquid with what does not depend on temperature worked out.
type mixture struct {
	Liquid
	sugarShare, ethanolShare float64 // by mass, each beside water alone
	waterKgPerL              float64 // what takes up the gas, at 20 °C
	perWater, perWaterLow    float64 // solubility in that water over that in pure water, nominal and unfavourable
	ethanolPerWater          float64 // vapour pressure of the ethanol over that of the water
	ions                     ionSums
}

// mix fails for an amount that is not one, or beyond the figures known here.
func (l Liquid) mix() (mixture, error) {
	if !(l.SugarGPerL >= 0 && l.SugarGPerL <= maxSugarGPerL) {
		return mixture{}, fmt.Errorf("carbonation: sugar %g g/L is outside 0 to %d g/L", l.SugarGPerL, maxSugarGPerL)
	}
	if !(l.AlcoholFraction >= 0 && l.AlcoholFraction <= maxAlcoholFraction) {
		return mixture{}, fmt.Errorf("carbonation: alcohol fraction %g by volume is outside 0 to %g", l.AlcoholFraction, maxAlcoholFraction)
	}
	if !(l.OtherGPerL >= 0 && l.OtherGPerL <= maxOtherGPerL) {
		return mixture{}, fmt.Errorf("carbonation: other solids %g g/L are outside 0 to %d g/L", l.OtherGPerL, maxOtherGPerL)
	}
	ions, err := sumIons(l.IonsMolPerL)
	if err != nil {
		return mixture{}, err
	}
	m := mixture{Liquid: l, ions: ions, sugarShare: sugarMassShare(l.SugarGPerL), ethanolShare: ethanolMassShare(l.AlcoholFraction)}
	m.setWater()
	if m.waterKgPerL < minWaterKgPerL {
		return mixture{}, fmt.Errorf("carbonation: sugar %g g/L, other solids %g g/L and alcohol fraction %g leave no water", l.SugarGPerL, l.OtherGPerL, l.AlcoholFraction)
	}
	return m, nil
}

// otherVolume is the apparent specific volume of solids other than sugar, L/kg:
// proteins 0.70 to 0.75, textbook, from memory. Acids and salts take less, so it
// errs toward less water and more pressure.
const otherVolume = 0.73

const referenceC = 20

// doubtOfSolids is how far the solubility in a drink of 100 g/L of solids and up
// may lie below that of the water in it: 3 %, in proportion below that. Syrups
// and beers are published 0 to 4 % further down (computed from trade charts).
const (
	doubtOfSolids    = 0.03
	doubtSolidsGPerL = 100
)

func (m *mixture) setWater() {
	pure := WaterDensityKgPerL(referenceC)
	besideEthanol := EthanolDensityKgPerL(m.ethanolShare, referenceC) - m.AlcoholFraction*ethanolDensity
	besideSugar := SucroseDensityKgPerL(m.sugarShare, referenceC) - m.SugarGPerL/1000
	m.waterKgPerL = besideEthanol + besideSugar - pure - pure*otherVolume*m.OtherGPerL/1000
	m.perWater = (1 - ethanolLoss*m.AlcoholFraction) * pure / besideEthanol
	doubt := doubtOfSolids * min(1, (m.SugarGPerL+m.OtherGPerL)/doubtSolidsGPerL)
	m.perWaterLow = (1 - ethanolLossSteepest*m.AlcoholFraction) * pure / besideEthanol * (1 - doubt)
	moles := m.AlcoholFraction * ethanolDensity / ethanolMolarMass
	m.ethanolPerWater = ethanolVolatility * moles * molarMassWater / m.waterKgPerL
}

// solvent is the mass of pure water that would take up as much gas as a litre of
// drink, kg, at tC; low gives the unfavourable end of what is published.
func (m *mixture) solvent(tC float64, low bool) float64 {
	effect := m.perWater
	if low {
		effect = m.perWaterLow
	}
	if m.ions.molPerL > 0 {
		effect *= math.Pow(10, -m.ions.saltingOut(tC))
	}
	return m.waterKgPerL * effect
}

// expansion returns the volume at tC of what is 1 L at 20 °C, at about 1 atm.
// Solids other than sugar are taken to grow as the water whose place they take.
func (m *mixture) expansion(tC float64) float64 {
	return SucroseDensityKgPerL(m.sugarShare, referenceC) / SucroseDensityKgPerL(m.sugarShare, tC) * ethanolExpansion(m.ethanolShare, tC)
}

// vapourKPa is the vapour pressure of the liquid: that of pure water (sugar
// lowers it by about 1 % at 15 Brix, not counted) and of the ethanol.
func (m *mixture) vapourKPa(tC float64) float64 {
	return WaterVapourKPa(tC) * (1 + m.ethanolPerWater)
}
