package carbonation

// The forms in which solubility is printed, for whoever holds this package
// against published figures.

// MoleFraction returns the mole fraction of CO2 in water at tC in °C, 0 to 150,
// under a partial pressure of CO2 in kPa, by the solubility that this package
// computes with; see Correlation.MoleFraction.
func MoleFraction(partialKPa, tC float64) float64 {
	return moleFraction(henryCO2(tC), partialKPa, tC)
}

// Bunsen returns the mL of CO2, at 0 °C and 1 atm as real gas, that 1 mL of water
// at tC in °C, 0 to 150, takes up under 1 atm of CO2: Bunsen's coefficient.
func Bunsen(tC float64) float64 { return molPerLitreUnder1Atm(tC) * litresPerMol }

// Ostwald returns the concentration of CO2 in water over that in the gas above it,
// at tC in °C, 0 to 150, and 1 atm of CO2 as real gas: Ostwald's coefficient.
func Ostwald(tC float64) float64 {
	gas := realGasAt(tC)
	return molPerLitreUnder1Atm(tC) * gas.rt * gas.compressibility(kPaPerAtm, 1) / kPaPerAtm
}

func molPerLitreUnder1Atm(tC float64) float64 {
	return Solubility(tC).Nominal * realGasAt(tC).fugacityFactor(kPaPerAtm, 1)
}

// GramsPer100 returns the g of CO2 in 100 g of water at tC in °C, 0 to 99, under 1
// atm in all, the vapour of the water counted. It fails as Liquid.Volumes does.
func GramsPer100(tC float64) (float64, error) {
	volumes, err := Liquid{}.Volumes(StandardAtmosphere, tC)
	return GramsPerLitre(volumes) / WaterDensityKgPerL(referenceC) / 10, err
}

// NitrogenMolPerLitreAtm returns the mol of nitrogen in a litre of water at tC in
// °C, 0 to 150, and 1 atm of it: IAPWS G7-04.
func NitrogenMolPerLitreAtm(tC float64) float64 {
	return perLitreAtm(iapwsTermsN2.molPerKgKPa(iapwsPowersAt(tC)), tC)
}

// OxygenMolPerLitreAtm is the same of oxygen.
func OxygenMolPerLitreAtm(tC float64) float64 {
	return perLitreAtm(iapwsTermsO2.molPerKgKPa(iapwsPowersAt(tC)), tC)
}
