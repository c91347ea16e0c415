package acid

import (
	"fmt"
	"math"
)

// Total is the whole amount of one component, in all its species and complexes,
// in mol per kg of water.
type Total struct {
	Component string
	Molality  float64
}

// Polyelectrolyte is a protein or another macro-ion.
type Polyelectrolyte interface {
	// ChargePerGram returns the net charge in mmol per gram at a pH, an ionic
	// strength in mol/kg and a temperature in °C. It falls, or stays, as pH rises.
	ChargePerGram(pH, ionicStrength, tempC float64) float64
}

// Macro is an amount of a polyelectrolyte. Its charge counts in the balance; it
// does not count in the ionic strength, its counter-ions do.
type Macro struct {
	Poly            Polyelectrolyte
	GramsPerKgWater float64
}

// Solution is a recipe as chemistry: components in mol per kg of water, each
// salt as its acid and its cation, and polyelectrolytes. Components that stand
// twice are added up.
type Solution struct {
	Totals []Total
	Poly   []Macro
	// FreeCO2 above zero holds the dissolved CO2 itself at that molality, as gas
	// over an open drink or at a known pressure does, and lets bicarbonate follow.
	// It takes the place of a "carbonic" total, which is the closed pack: both at
	// once are an error.
	FreeCO2 float64
}

// maxTotal bounds the sum of all totals, mol per kg of water: above the most
// soluble acids, salts and bases of the trade.
const maxTotal = 100

// check returns why s or tC cannot be solved, nil when it can.
func (s Solution) check(tC float64) error {
	if !(tC >= MinTempC && tC <= MaxTempC) {
		return fmt.Errorf("acid: temperature %g °C is outside %d to %d °C", tC, MinTempC, MaxTempC)
	}
	if !(s.FreeCO2 >= 0 && s.FreeCO2 <= maxTotal) {
		return fmt.Errorf("acid: free CO2 of %g mol/kg is outside 0 to %d", s.FreeCO2, maxTotal)
	}
	sum := 0.0
	for _, t := range s.Totals {
		if !(t.Molality >= 0 && t.Molality <= maxTotal) {
			return fmt.Errorf("acid: %s at %g mol/kg is outside 0 to %d", t.Component, t.Molality, maxTotal)
		}
		sum += t.Molality
	}
	if sum > maxTotal {
		return fmt.Errorf("acid: components sum to %g mol/kg, above %d: no such solution", sum, maxTotal)
	}
	return s.checkPoly()
}

func (s Solution) checkPoly() error {
	for i, m := range s.Poly {
		if m.Poly == nil {
			return fmt.Errorf("acid: polyelectrolyte %d has no charge function", i+1)
		}
		if !(m.GramsPerKgWater >= 0) || math.IsInf(m.GramsPerKgWater, 0) {
			return fmt.Errorf("acid: polyelectrolyte %d at %g g/kg is not a finite amount", i+1, m.GramsPerKgWater)
		}
	}
	return nil
}
