package carbonation

import "math"

// A Correlation is a published equation for the solubility of CO2 in water.
type Correlation struct {
	Name        string
	LowC, HighC float64 // the range it is stated for, °C
	Source      string
	molPerKgKPa func(tK float64) float64 // per kg of water and kPa of fugacity, at about 1 atm
}

// Correlations lists the published equations this package knows, all seen. It
// computes with the first two; see Solubility.
func Correlations() []Correlation {
	return []Correlation{
		{"Weiss", 0, 40, "Weiss 1974, Mar. Chem. 2:203", weiss},
		{"Carroll", 0, 160, "Carroll, Slupsky and Mather 1991, J. Phys. Chem. Ref. Data 20:1201", carroll},
		{"Plummer-Busenberg", 0, 250, "Plummer and Busenberg 1982, Geochim. Cosmochim. Acta 46:1011", plummerBusenberg},
		{"IAPWS", 0, 330, "Fernandez-Prini, Alvarez and Harvey 2003, IAPWS G7-04; made for high temperatures, low for cold CO2", iapwsCO2},
	}
}

// MolPerLitreAtm returns mol of CO2 per litre of water at tC and atm of fugacity,
// tC in °C. Outside LowC to HighC the equation is drawn on.
func (c Correlation) MolPerLitreAtm(tC float64) float64 {
	return perLitreAtm(c.molPerKgKPa(tC+kelvin), tC)
}

// MoleFraction returns the mole fraction of CO2 in water at tC in °C under a
// partial pressure of CO2 in kPa, as a real gas without air: the form in which
// evaluated solubilities are printed.
func (c Correlation) MoleFraction(partialKPa, tC float64) float64 {
	return moleFraction(c.molPerKgKPa(tC+kelvin), partialKPa, tC)
}

func moleFraction(perKgKPa, partialKPa, tC float64) float64 {
	molality := perKgKPa * partialKPa * realGasAt(tC).fugacityFactor(partialKPa, 1)
	return molality / (molality + molesWaterPerKg)
}

func perLitreAtm(perKgKPa, tC float64) float64 { return perKgKPa * kPaPerAtm * WaterDensityKgPerL(tC) }

// Solubility is K0 of CO2 in water as this package takes it, mol per litre of
// water at tC and atm of fugacity, tC 0 to 150 °C: Weiss to 40 °C; above that the
// lower of Weiss drawn on and of Carroll, since less solubility means more
// pressure. Low is the lowest of the correlations stated for CO2 (Weiss in its
// range, Carroll, Plummer and Busenberg): 2.4 % below at 0 °C, under 0.1 % from
// 10 to 25 °C, 0.7 % at 40 °C, 3.2 % at 65 °C, 3.8 % at 80 °C. High is the highest of them.
func Solubility(tC float64) Spread {
	nominal := perLitreAtm(henryCO2(tC), tC)
	return Spread{Low: perLitreAtm(henryCO2Low(tC), tC), Nominal: nominal, High: perLitreAtm(henryCO2High(tC), tC)}
}

// The functions below are in mol/(kg kPa), tK in kelvin and tC in °C.

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

// weissHighestC is where Weiss ends. He and Carroll cross again near 62 °C, so
// taking the lower one makes no step.
const weissHighestC = 40

func henryCO2(tC float64) float64 {
	if tC <= weissHighestC {
		return weiss(tC + kelvin)
	}
	return min(weiss(tC+kelvin), carroll(tC+kelvin))
}

// henry is the solubility computed with, nominal or at the unfavourable end.
func henry(tC float64, low bool) float64 {
	if low {
		return henryCO2Low(tC)
	}
	return henryCO2(tC)
}

func henryCO2Low(tC float64) float64 {
	return min(henryCO2(tC), carroll(tC+kelvin), plummerBusenberg(tC+kelvin))
}

func henryCO2High(tC float64) float64 {
	return max(henryCO2(tC), carroll(tC+kelvin), plummerBusenberg(tC+kelvin))
}

// iapwsTerms are the three coefficients of IAPWS G7-04 for a gas in water (seen):
//
//	ln(kH/psat) = a/Tr + b tau^0.355/Tr + c Tr^-0.41 exp(tau)
type iapwsTerms struct{ a, b, c float64 }

var (
	iapwsTermsCO2 = iapwsTerms{-8.55445, 4.01195, 9.52345}
	iapwsTermsN2  = iapwsTerms{-9.67578, 4.72162, 11.70585}
	iapwsTermsO2  = iapwsTerms{-9.44833, 4.43822, 11.42005}
)

// iapwsPowers is what that equation takes of the temperature, one for all gases.
type iapwsPowers struct{ tr, tau355, tr41, expTau, vapourKPa float64 }

func iapwsPowersAt(tC float64) iapwsPowers {
	tr := (tC + kelvin) / criticalK
	tau := 1 - tr
	return iapwsPowers{tr: tr, tau355: math.Pow(tau, 0.355), tr41: math.Pow(tr, -0.41), expTau: math.Exp(tau), vapourKPa: WaterVapourKPa(tC)}
}

// molPerKgKPa is the solubility in mol per kg of water and kPa.
func (g iapwsTerms) molPerKgKPa(p iapwsPowers) float64 {
	ln := g.a/p.tr + g.b*p.tau355/p.tr + g.c*p.tr41*p.expTau
	return molesWaterPerKg / (p.vapourKPa * math.Exp(ln))
}

func iapwsCO2(tK float64) float64 { return iapwsTermsCO2.molPerKgKPa(iapwsPowersAt(tK - kelvin)) }
