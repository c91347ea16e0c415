package carbonation

const (
	// molarMassCO2 in g/mol: CODATA atomic weights.
	molarMassCO2 = 44.0095
	// litresPerMol is the molar volume of real CO2 at 0 °C and 1 atm: IUPAC-NIST
	// solubility data base (seen). The ideal gas would be 22.414, 0.7 % more.
	litresPerMol = 22.2605
)

// GramsPerLitre returns the g of CO2 per litre of drink that a number of volumes
// is: 1.977 g/L a volume. One volume is 1 L of CO2 at 0 °C and 1 atm, as real
// gas, per litre of drink.
func GramsPerLitre(volumes float64) float64 { return volumes * molarMassCO2 / litresPerMol }

// VolumesOf returns the volumes of CO2 that g per litre of drink are, by the
// convention of GramsPerLitre.
func VolumesOf(gPerL float64) float64 { return gPerL * litresPerMol / molarMassCO2 }
