package carbonation

import "math"

const (
	kelvin         = 273.15
	criticalK      = 647.096
	criticalKPa    = 22064.0
	molarMassWater = 18.01528 // g/mol
	gasConstant    = 8.314463 // J/(mol K), which is also kPa L/(mol K): CODATA
)

// WaterVapourKPa returns the vapour pressure of water in kPa at tC, 0 to 150 °C:
// Wagner and Pruss 1993, J. Phys. Chem. Ref. Data 22:783 (coefficients seen).
func WaterVapourKPa(tC float64) float64 {
	tK := tC + kelvin
	tau := 1 - tK/criticalK
	half := math.Sqrt(tau)
	tau3 := tau * tau * tau
	sum := -7.85951783*tau + 1.84408259*tau*half - 11.7866497*tau3 +
		22.6807411*tau3*half - 15.9618719*tau3*tau + 1.80122502*tau3*tau3*tau*half
	return criticalKPa * math.Exp(criticalK/tK*sum)
}

// WaterDensityKgPerL returns the density of water in kg/L at tC and about 1 atm:
// Kell 1975, J. Chem. Eng. Data 20:97 (coefficients seen), stated for 0 to
// 150 °C by its author; at 121 and 150 °C it stays within 0.02 % of the IAPWS
// saturated liquid (942.3 and 917.0 kg/m3, memory).
func WaterDensityKgPerL(tC float64) float64 {
	top := 999.83952 + tC*(16.945176+tC*(-7.9870401e-3+tC*(-46.170461e-6+tC*(105.56302e-9-280.54253e-12*tC))))
	return top / (1 + 16.879850e-3*tC) / 1000
}
