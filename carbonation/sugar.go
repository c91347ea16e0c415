package carbonation

import "math"

// sugarTerms are the coefficients of the density of sucrose solutions less that
// of water, kg/m3: row i holds the terms of ((t-20)/100)^i, column k those of
// w^(k+1), w the mass fraction. Source: ICUMSA's formula, 0 to 100 °C, as printed
// in Bubnik, Kadlec, Urban and Bruhns 1995, Sugar Technologists Manual, page 164
// (seen in two public copies, which differ by 0.0003 in one term).
var sugarTerms = [...][]float64{
	{385.1761, 135.3705, 40.9299, -3.9646, 13.4853, -17.2890},
	{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
	{59.7712, 7.2491, 12.3630, -35.4791},
	{-47.2207, -21.6977, 27.6301},
	{18.3184, 12.3081},
}

// solutionHighestC is where the density formulas of sugar end; above it what the
// sugar adds at that temperature is held.
const solutionHighestC = 100

// SucroseDensityKgPerL returns the density of a sucrose solution in kg/L at tC for a mass
// fraction.
func SucroseDensityKgPerL(share, tC float64) float64 {
	if share == 0 {
		return WaterDensityKgPerL(tC)
	}
	x := (min(tC, solutionHighestC) - referenceC) / 100
	added := 0.0
	for i := len(sugarTerms) - 1; i >= 0; i-- {
		added = added*x + share*polynomial(sugarTerms[i], share)
	}
	return WaterDensityKgPerL(tC) + added/1000
}

// sugarMassShare returns the mass fraction of a sucrose solution that holds
// gPerL at 20 °C.
func sugarMassShare(gPerL float64) float64 {
	if gPerL == 0 {
		return 0
	}
	return massShare(gPerL/1000, func(share float64) float64 { return SucroseDensityKgPerL(share, referenceC) })
}

// massShare returns the mass fraction of a solution that holds kgPerL, its density
// a function of that fraction. Each round shrinks the error at least threefold.
func massShare(kgPerL float64, density func(share float64) float64) float64 {
	share := kgPerL
	for range massShareRounds {
		next := kgPerL / density(share)
		if math.Abs(next-share) < massShareClose {
			return next
		}
		share = next
	}
	return share
}

const (
	massShareRounds = 30
	massShareClose  = 1e-9
)

// polynomial returns c[0] + c[1] x + c[2] x^2 ...
func polynomial(c []float64, x float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}
