package carbonation

// isotherm is what of a drink and its gases depends on temperature alone: worked
// out once for all fills and amounts of gas that are tried at that temperature.
type isotherm struct {
	tC                     float64
	gas                    realGas
	vapour                 float64 // of the drink, kPa
	expansion              float64 // volume of what is 1 L at 20 °C
	n2PerKgKPa, o2PerKgKPa float64 // solubility, mol per kg of water and kPa
	nominal, low           uptake
}

// uptake is how much gas a drink takes up, as published or at the unfavourable end.
type uptake struct {
	solvent     float64 // kg of pure water that would take up as much gas as a litre of drink
	co2PerKgKPa float64 // solubility, mol per kg of water and kPa
}

func (m *mixture) isotherm(tC float64) isotherm {
	powers := iapwsPowersAt(tC)
	return isotherm{
		tC: tC, gas: realGasAt(tC), vapour: m.vapourKPa(tC), expansion: m.expansion(tC),
		n2PerKgKPa: iapwsTermsN2.molPerKgKPa(powers), o2PerKgKPa: iapwsTermsO2.molPerKgKPa(powers),
		nominal: uptake{m.solvent(tC, false), henryCO2(tC)}, low: uptake{m.solvent(tC, true), henryCO2Low(tC)},
	}
}

// uptake is the one that an assumption counts with.
func (i *isotherm) uptake(a *assumption) uptake {
	if a.low {
		return i.low
	}
	return i.nominal
}
