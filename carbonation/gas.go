package carbonation

import "math"

// VirialCO2LPerMol returns the second virial coefficient of CO2 in L/mol at tC. Up to
// 60 °C the cubic of Weiss 1974; above, the exponential form of Kaye and Laby's
// tables, shifted to meet it (they differ by less than 0.002 L/mol there).
func VirialCO2LPerMol(tC float64) float64 {
	if tC <= virialJoinC {
		return virialWeiss(tC + kelvin)
	}
	return virialKayeLaby(tC+kelvin) + virialWeiss(virialJoinC+kelvin) - virialKayeLaby(virialJoinC+kelvin)
}

const virialJoinC = 60

func virialWeiss(tK float64) float64 {
	return (-1636.75 + tK*(12.0408+tK*(-0.0327957+tK*3.16528e-5))) / 1000
}

func virialKayeLaby(tK float64) float64 { return (137.6 - 87.7*math.Exp(325.7/tK)) / 1000 }

// crossVirial is the cross term of CO2 with air in L/mol, Weiss 1974 (seen);
// water vapour is counted as air there.
func crossVirial(tC float64) float64 { return (57.7 - 0.118*(tC+kelvin)) / 1000 }

// molarVolumeDissolved is the partial molar volume of CO2 in water, L/mol: Weiss
// 1974 (from memory, high confidence; later work 0.033 to 0.035). It sets how
// pressure itself lowers solubility, 0.15 % a bar.
const molarVolumeDissolved = 0.0323

// realGas holds what of the real gas depends on temperature alone.
type realGas struct {
	rt                   float64 // kPa L/mol
	virial, cross, molar float64 // L/mol
}

func realGasAt(tC float64) realGas {
	return realGas{rt: gasConstant * (tC + kelvin), virial: VirialCO2LPerMol(tC), cross: crossVirial(tC), molar: molarVolumeDissolved}
}

// fugacityFactor is fugacity over partial pressure of CO2 making up the share
// yCO2 of a gas at pKPa in total, times the effect of that pressure on the
// liquid: one exponential for both. Weiss 1974.
func (g realGas) fugacityFactor(pKPa, yCO2 float64) float64 {
	other := 1 - yCO2
	lnPhi := pKPa * (g.virial + 2*other*other*g.cross) / g.rt
	return math.Exp(lnPhi - (pKPa-kPaPerAtm)*g.molar/g.rt)
}

// compressibility is Z of a gas at pKPa in which CO2 has the share yCO2; what is
// not CO2 is ideal (its own virial coefficient is below 0.02 L/mol).
func (g realGas) compressibility(pKPa, yCO2 float64) float64 {
	other := 1 - yCO2
	mixed := yCO2*yCO2*g.virial + 2*yCO2*other*(g.cross+g.virial/2)
	return 1 + pKPa*mixed/g.rt
}
