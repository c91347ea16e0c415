package acid

import "math"

// testProtein is a made-up protein: groups per gram as whey proteins have them,
// with the pK of model compounds, and pK that move with ionic strength and
// temperature, so that every argument matters.
type testProtein struct{}

// testGroups is mmol/g, pK at 25 °C, charge of the protonated form, kJ/mol.
var testGroups = [...]struct{ mmol, pK, top, dh float64 }{
	{0.06, 3.67, 0, 3}, {0.85, 3.9, 0, 3}, {0.90, 4.3, 0, 3}, {0.12, 6.5, 1, 30},
	{0.06, 7.7, 1, 42}, {0.28, 8.5, 0, 35}, {0.22, 9.8, 0, 25}, {0.83, 10.4, 1, 50}, {0.16, 12.5, 1, 52},
}

func (testProtein) ChargePerGram(pH, ionicStrength, tC float64) float64 {
	inverse := 1/refK - 1/(tC+zeroC)
	screen := 0.5 * math.Sqrt(ionicStrength) / (1 + 1.5*math.Sqrt(ionicStrength))
	sum := 0.0
	for _, g := range testGroups {
		pK := g.pK - g.dh*1000/(gasR*math.Ln10)*inverse + (2*g.top-1)*screen
		sum += g.mmol * (g.top - 1/(1+math.Exp(math.Ln10*(pK-pH))))
	}
	return sum
}
