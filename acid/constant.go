package acid

import "math"

// logK is log10 of an equilibrium constant over temperature,
//
//	log10 K = a + b/T + c ln T + d T + e/T²
//
// with T in K. A constant enthalpy and heat capacity is the case d = e = 0.
type logK struct{ a, b, c, d, e float64 }

// vantHoff returns the constant whose log10 is logK25 at 25 °C, with the
// enthalpy of reaction dh in kJ/mol there and the heat capacity of reaction dcp
// in J/(mol K) at all temperatures.
func vantHoff(logK25, dh, dcp float64) logK {
	const jPerKJ = 1000
	h, c := dh*jPerKJ/(gasR*math.Ln10), dcp/(gasR*math.Ln10)
	k := logK{b: -h + c*refK, c: c}
	k.a = logK25 - k.b/refK - c*math.Log(refK)
	return k
}

// at returns log10 K at the temperature tK in K, whose natural logarithm is lnT.
func (k *logK) at(tK, lnT float64) float64 {
	return k.a + k.b/tK + k.c*lnT + k.d*tK + k.e/(tK*tK)
}
