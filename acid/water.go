package acid

import "math"

const (
	zeroC = 273.15   // K at 0 °C
	refK  = 298.15   // K, where the tables of constants stand
	gasR  = 8.314463 // J/(mol K), SI 2019
)

// Temperatures for which the constants hold, °C.
const (
	MinTempC = 0
	MaxTempC = 100
)

// waterDensity returns g/mL of air-free water at 1 atm, 0 to 150 °C.
//
// Reference: Kell 1975 J. Chem. Eng. Data 20:97.
func waterDensity(tC float64) float64 {
	n := 0.99983952 + tC*(16.945176e-3+tC*(-7.9870401e-6+tC*(-46.170461e-9+
		tC*(105.56302e-12-tC*280.54253e-15))))
	return n / (1 + 16.879850e-3*tC)
}

// dielectric returns the relative permittivity of water at 0.1 MPa from the
// temperature in K and the density in g/mL: the Kirkwood equation with the
// correlation factor of the reference.
//
// Reference: Archer & Wang 1990 J. Phys. Chem. Ref. Data 19:371, equation 3.
func dielectric(tK, rho float64) float64 {
	const (
		pMPa    = 0.1
		alpha   = 1.444e-24    // cm³, polarizability of the molecule
		mu      = 1.84e-18     // esu cm, dipole moment
		boltz   = 1.380658e-16 // erg/K
		avog    = 6.0221367e23 // 1/mol
		molMass = 18.0153      // g/mol
		pole    = 215.0        // K
		b1, b2  = -4.044525e-2, 103.6180
		b3, b4  = 75.32165, -23.23778
		b5, b6  = -3.548184, -1246.311
		b7      = 263307.7
		b8, b9  = -6.928953e-1, -204.4473
	)
	d := tK - pole
	gm1 := b1*pMPa/tK + b2/math.Sqrt(tK) + b3/d + b4/math.Sqrt(d) + b5/math.Sqrt(math.Sqrt(d)) +
		math.Exp(b6/tK+b7/(tK*tK)+b8*pMPa/tK+b9*pMPa/(tK*tK))
	a := (alpha + (gm1*rho+1)*mu*mu/(3*boltz*tK)) * 4 * math.Pi * avog * rho / (3 * molMass)
	return (1 + 9*a + 3*math.Sqrt(9*a*a+2*a+1)) / 4
}

// DebyeHueckelA returns the Debye-Hückel slope of log10 g on the molality scale,
// kg^½ mol^-½, at tC in °C (0.5100 at 25 °C).
//
// Reference: the slope from density and permittivity of water, Archer & Wang 1990
// J. Phys. Chem. Ref. Data 19:371, with Kell's density.
func DebyeHueckelA(tC float64) float64 {
	const slope = 1.82483e6 // e³ √(2 pi N) / (ln10 (4 pi e0 k)^1.5), with density in g/mL
	rho := waterDensity(tC)
	tK := tC + zeroC
	return slope * math.Sqrt(rho) / math.Pow(dielectric(tK, rho)*tK, 1.5)
}

// WaterPK returns -log10 of the ion product of water on the molality scale at tC
// in °C, 0 to 100 (13.995 at 25 °C).
//
// Reference: Marshall & Franck 1981 J. Phys. Chem. Ref. Data 10:295.
func WaterPK(tC float64) float64 {
	t := tC + zeroC
	log := -4.098 - 3245.2/t + 2.2362e5/(t*t) - 3.984e7/(t*t*t) +
		(13.957-1262.3/t+8.5641e5/(t*t))*math.Log10(waterDensity(tC))
	return -log
}
