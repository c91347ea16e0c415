package carbonation

import "math"

const (
	ethanolDensity   = 0.78924 // kg/L at 20 °C: OIML R22
	ethanolMolarMass = 46.068
)

// sugarExpansion and ethanolExpansion say how much more than water a drink
// expands: its density ratio is that of water to the power of 1 plus this.
// 10 Brix expands about 10 % more (ICUMSA tables, memory, low confidence).
const (
	sugarExpansionPerGPerL = 0.1 / 104
	sugarExpansionCap      = 0.2
)

// expansion returns the volume at tC of what is 1 L at 20 °C, at about 1 atm.
func (l Liquid) expansion(tC float64) float64 {
	ratio := waterDensity(referenceC) / waterDensity(tC)
	power := 1 + math.Min(sugarExpansionCap, sugarExpansionPerGPerL*l.SugarGPerL)
	alcohol := 1 + ethanolExtraPerK*l.AlcoholFraction*(tC-referenceC)
	return math.Pow(ratio, power) * alcohol
}

// ethanolExtraPerK is the expansion of ethanol beyond that of water, per K and
// volume fraction: 1.1e-3 less 0.2e-3 (textbook, from memory).
const ethanolExtraPerK = 0.9e-3

// ethanolContraction is the share by which water takes up ethanol without growing.
func ethanolContraction(fraction float64) float64 {
	if fraction <= 0 {
		return 0
	}
	kg := fraction * ethanolDensity
	share := ethanolMassShare(fraction)
	total := kg / share
	waterLitres := (total - kg) / waterDensity(referenceC)
	return (waterLitres + fraction - 1) / fraction
}

// ethanolMassShare is the mass fraction of ethanol in a mixture with water that
// holds the given fraction by volume at 20 °C.
func ethanolMassShare(fraction float64) float64 {
	share := fraction * ethanolDensity
	for range 8 {
		share = fraction * ethanolDensity / ethanolWaterDensity(share)
	}
	return share
}

// ethanolWaterDensity in kg/L at 20 °C for a mass fraction: OIML R22, the terms
// A1 to A12 of its general formula (seen).
func ethanolWaterDensity(massShare float64) float64 {
	terms := [...]float64{998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
		306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426}
	sum := 0.0
	for i := len(terms) - 1; i >= 0; i-- {
		sum = sum*massShare + terms[i]
	}
	return sum / 1000
}

// ethanolEffect is the solubility per kg of water over that in pure water. The
// published effect (1.5 % lower at 5 % by volume, 3 % at 10 %; memory, low
// confidence, +-0.02) is per litre, so the water that the alcohol displaced is
// given back.
func (l Liquid) ethanolEffect() float64 {
	if l.AlcoholFraction == 0 {
		return 1
	}
	perLitre := 1 - ethanolSolubilityLoss*l.AlcoholFraction
	return perLitre / (1 - l.AlcoholFraction*(1-ethanolContraction(l.AlcoholFraction)))
}

const ethanolSolubilityLoss = 0.3

// ethanolVapourRatio is the vapour pressure of the ethanol over that of the water:
// mole ratio times a relative volatility of 11 in dilute solution (textbook 9 to
// 13, from memory).
func (l Liquid) ethanolVapourRatio() float64 {
	water := l.waterKgPerL() / molarMassWater
	ethanol := l.AlcoholFraction * ethanolDensity / ethanolMolarMass
	return ethanolVolatility * ethanol / water
}

const ethanolVolatility = 11
