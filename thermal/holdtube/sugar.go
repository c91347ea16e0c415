package holdtube

import "math"

// Where density and viscosity come from when they are not given.
const (
	DensitySource   = "ICUMSA's formula for sucrose, 0 to 100 °C, in Bubnik, Kadlec, Urban & Bruhns 1995, over the density of water by IAPWS SR1-86"
	ViscositySource = "Génotelle 1978 in Mathlouthi & Reiser 1995, made for 0 to 80 °C, above it a continuation that stays above water"
)

// sugarTerms are the density of sucrose solutions less that of water, kg/m³: row
// i holds the terms of ((t-20)/100)^i, column k those of w^(k+1), w the mass
// fraction. Source: ICUMSA's formula, 0 to 100 °C, as printed in Bubnik, Kadlec,
// Urban and Bruhns 1995, Sugar Technologists Manual, page 164 (seen in public
// copies).
var sugarTerms = [...][]float64{
	{385.1761, 135.3705, 40.9299, -3.9646, 13.4853, -17.2890},
	{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
	{59.7712, 7.2491, 12.3630, -35.4791},
	{-47.2207, -21.6977, 27.6301},
	{18.3184, 12.3081},
}

const (
	sugarReferenceC = 20
	sugarHighestC   = 100 // above it what sugar adds is held
	highestBrix     = 80
)

// DensityKgM3 is the density of a sucrose solution of brix mass percent at tC,
// in kg/m³: ICUMSA's formula over that of water at its vapour pressure. Valid 0
// to 80 Brix, 0 to 100 °C; beyond that only the water goes on expanding.
func DensityKgM3(brix, tC float64) float64 {
	w := brix / 100
	x := (min(tC, sugarHighestC) - sugarReferenceC) / 100
	var added float64
	for i := len(sugarTerms) - 1; i >= 0; i-- {
		row := 0.0
		for k := len(sugarTerms[i]) - 1; k >= 0; k-- {
			row = row*w + sugarTerms[i][k]
		}
		added = added*x + row*w
	}
	return waterKgM3(tC) + added
}

// densestC is where water is densest.
const densestC = 4

// Expansion is by how much a drink of brix grows from one temperature to
// another, as a ratio of volumes: the larger of a sucrose solution's and water's.
func Expansion(brix, fromC, toC float64) float64 {
	fromC = max(fromC, densestC)
	sugar := DensityKgM3(brix, fromC) / DensityKgM3(brix, toC)
	return max(sugar, waterKgM3(fromC)/waterKgM3(toC))
}

// Terms of Génotelle's equation for the viscosity of pure sucrose solutions,
//
//	log10 η = 22.46 N - 0.114 + (30-t)/(91+t) (1.1 + 43.1 N^1.25)
//
// η in mPa·s, N = B/(1900 - 18 B) the moles of sucrose in a mole, B in mass
// percent. Source: Génotelle 1978, Ind. Aliment. Agric. 95:747, as given by
// Mathlouthi and Reiser 1995, Sucrose, equation 6.29 (seen in public copies).
const (
	viscosityPerN     = 22.46
	viscosityAt30     = -0.114
	viscosityHeat     = 1.1
	viscosityHeatPerN = 43.1
	viscosityExponent = 1.25
	viscosityMiddleC  = 30
	viscosityOffsetC  = 91
	molarWater        = 18
	molarSucrose100   = 1900 // 100 × molar mass of sucrose over that of water
)

// SugarMPaS is the viscosity of a pure sucrose solution of brix at tC, in
// mPa·s, by Génotelle's equation: made for 0 to 80 °C; up to 150 °C it stays
// above that of water, by 17 % at 140 °C. A drink with protein, gum or pulp is
// thicker.
func SugarMPaS(brix, tC float64) float64 {
	n := brix / (molarSucrose100 - molarWater*brix)
	heat := (viscosityMiddleC - tC) / (viscosityOffsetC + tC)
	return math.Pow(10, viscosityPerN*n+viscosityAt30+heat*(viscosityHeat+viscosityHeatPerN*math.Pow(n, viscosityExponent)))
}
