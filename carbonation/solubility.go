package carbonation

import "math"

// A Correlation is a published equation for the solubility of CO2 in water. Its
// result is mol per kg of water and kPa of fugacity, at 1 atm total pressure.
type Correlation struct {
	Name         string
	LowC, HighC  float64 // the range its author states, °C
	molPerKgKPa  func(tK float64) float64
	SourceAuthor string
}

// The correlations this package knows, all seen in secondary copies.
var (
	// Weiss1974 is Weiss 1974, Mar. Chem. 2:203, molality form.
	Weiss1974 = Correlation{"Weiss 1974", 0, 40, weiss, "Weiss 1974, Mar. Chem. 2:203"}
	// Carroll1991 is Carroll, Slupsky and Mather 1991; the CRC Handbook's table.
	Carroll1991 = Correlation{"Carroll et al. 1991", 0, 160, carroll, "Carroll, Slupsky and Mather 1991, J. Phys. Chem. Ref. Data 20:1201"}
	// PlummerBusenberg1982 is the equation of groundwater chemistry.
	PlummerBusenberg1982 = Correlation{"Plummer and Busenberg 1982", 0, 90, plummerBusenberg, "Plummer and Busenberg 1982, Geochim. Cosmochim. Acta 46:1011"}
	// IAPWS2004 lies low when cold: it is here for comparison, not for CO2 in drinks.
	IAPWS2004 = Correlation{"IAPWS G7-04", 0, 330, iapwsCO2, "Fernandez-Prini, Alvarez and Harvey 2003, IAPWS G7-04"}
)

// Correlations lists them, for tables that show how far apart they are.
func Correlations() []Correlation {
	return []Correlation{Weiss1974, Carroll1991, PlummerBusenberg1982, IAPWS2004}
}

// MolPerLitreAtm returns K0, mol of CO2 per litre of water at tC and atm of
// fugacity. tC in °C; outside LowC to HighC it is drawn on.
func (c Correlation) MolPerLitreAtm(tC float64) float64 {
	return c.molPerKgKPa(tC+kelvin) * kPaPerAtm * waterDensity(tC)
}

func weiss(tK float64) float64 {
	h := tK / 100
	return math.Exp(-60.2409+93.4517/h+23.3585*math.Log(h)) / kPaPerAtm
}

func carroll(tK float64) float64 {
	henryMPa := math.Exp(-6.8346 + (1.2817e4+(-3.7668e6+2.997e8/tK)/tK)/tK)
	return molesWaterPerKg / (henryMPa * 1000)
}

func plummerBusenberg(tK float64) float64 {
	return math.Pow(10, 108.3865+0.01985076*tK-6919.53/tK-40.45154*math.Log10(tK)+669365/(tK*tK)) / kPaPerAtm
}

// molesWaterPerKg turns a mole fraction of a dilute solute into molality.
const molesWaterPerKg = 1000 / molarMassWater

// joinC is where the correlation of Weiss ends; above it the lower of it and of
// Carroll counts. They cross near 62 °C, so the choice has no step there, and at
// 40 °C Weiss is the lower one, so it has none there either.
const joinC = 40

// henryCO2 is the solubility this package computes with, mol/(kg kPa): Weiss to
// 40 °C, above that the lower of Weiss drawn on and of Carroll. The lower one
// gives the higher pressure. See docs of Correlations for the distance to others.
func henryCO2(tC float64) float64 {
	tK := tC + kelvin
	if tC <= joinC {
		return weiss(tK)
	}
	return math.Min(weiss(tK), carroll(tK))
}

// henryCO2Low is the lowest of the correlations that are stated for CO2 from 0 °C
// to the tunnel, mol/(kg kPa). Beyond 90 °C, where the lowest one ends, its
// distance at 90 °C is held.
func henryCO2Low(tC float64) float64 {
	end := math.Min(tC, PlummerBusenberg1982.HighC) + kelvin
	lowest := math.Min(plummerBusenberg(end), carroll(end))
	return henryCO2(tC) * math.Min(1, lowest/henryCO2(end-kelvin))
}

// iapwsTerms are the three coefficients of IAPWS G7-04 for a gas in water:
// ln(kH/psat) = A/Tr + B tau^0.355/Tr + C Tr^-0.41 exp(tau). Seen.
type iapwsTerms struct{ a, b, c float64 }

var (
	iapwsTermsCO2 = iapwsTerms{-8.55445, 4.01195, 9.52345}
	iapwsTermsN2  = iapwsTerms{-9.67578, 4.72162, 11.70585}
	iapwsTermsO2  = iapwsTerms{-9.44833, 4.43822, 11.42005}
)

// molPerKgKPa is the solubility at tC. The exponentials of two gases at one
// temperature share powers; callers need few points, so clarity wins.
func (g iapwsTerms) molPerKgKPa(tC float64) float64 {
	tr := (tC + kelvin) / criticalK
	tau := 1 - tr
	ln := g.a/tr + g.b*math.Pow(tau, 0.355)/tr + g.c*math.Pow(tr, -0.41)*math.Exp(tau)
	return molesWaterPerKg / (waterVapourKPa(tC) * math.Exp(ln))
}

func iapwsCO2(tK float64) float64 { return iapwsTermsCO2.molPerKgKPa(tK - kelvin) }
