package checkvalue

import (
	"fmt"

	"posset/carbonation"
)

var (
	temp    = temperature("t")
	partial = in("partial", "kpa", "kPa of CO2")
	share   = in("mass", "percent", "%")
)

var carbonationModels = map[string]model{
	// Thousandths of a mole fraction; without an equation, of what is computed with.
	"carbonation.mole-fraction": {[]param{optional(text("equation")), temp, partial}, moleFraction},
	// mol per litre of water and atm, of one published equation.
	"carbonation.correlation": {[]param{text("equation"), temp}, func(g given) (float64, error) {
		c, err := correlation(g.text("equation"))
		if err != nil {
			return 0, err
		}
		return c.MolPerLitreAtm(g.celsius("t")), nil
	}},
	"carbonation.k0":      atCelsius(func(tC float64) float64 { return carbonation.Solubility(tC).Nominal }), // mol/(L atm)
	"carbonation.bunsen":  atCelsius(carbonation.Bunsen),                                                     // mL at 0 °C and 1 atm per mL
	"carbonation.ostwald": atCelsius(carbonation.Ostwald),                                                    // mL per mL
	"carbonation.grams": {[]param{temp}, func(g given) (float64, error) { // g per 100 g of water, 1 atm in all
		return carbonation.GramsPer100(g.celsius("t"))
	}},
	"carbonation.virial":        atCelsius(func(tC float64) float64 { return perThousand * carbonation.VirialCO2LPerMol(tC) }), // cm³/mol
	"carbonation.n2":            atCelsius(carbonation.NitrogenMolPerLitreAtm),
	"carbonation.o2":            atCelsius(carbonation.OxygenMolPerLitreAtm),
	"carbonation.vapour":        atCelsius(carbonation.WaterVapourKPa),
	"carbonation.water-density": atCelsius(func(tC float64) float64 { return perThousand * carbonation.WaterDensityKgPerL(tC) }), // kg/m³
	// kg/L.
	"carbonation.sugar-density": {[]param{share, temp}, func(g given) (float64, error) {
		return carbonation.SucroseDensityKgPerL(g.in("mass", "percent")/perHundred, g.celsius("t")), nil
	}},
	// kg/m³.
	"carbonation.ethanol-density": {[]param{share, temp}, func(g given) (float64, error) {
		return perThousand * carbonation.EthanolDensityKgPerL(g.in("mass", "percent")/perHundred, g.celsius("t")), nil
	}},
	// g/L.
	"carbonation.grams-of-a-volume": {[]param{number("volumes")}, func(g given) (float64, error) {
		return carbonation.GramsPerLitre(g.number("volumes")), nil
	}},
	// kPa absolute above water with so many volumes.
	"carbonation.pressure": {[]param{number("volumes"), temp}, func(g given) (float64, error) {
		p, err := carbonation.Liquid{}.Pressure(g.number("volumes"), g.celsius("t"))
		return float64(p), err
	}},
	// kPa at a height above the sea.
	"carbonation.ambient": {[]param{in("altitude", "m", "m")}, func(g given) (float64, error) {
		p, err := carbonation.AmbientKPa(g.in("altitude", "m"))
		return float64(p), err
	}},
	// What a litre of drink takes up over what water does.
	"carbonation.beside-sugar": {[]param{in("sugar", "g_per_l", "g/L"), temp}, func(g given) (float64, error) {
		return overWater(carbonation.Liquid{SugarGPerL: g.in("sugar", "g_per_l")}, g.celsius("t"))
	}},
	"carbonation.beside-salt": {[]param{in("salt", "mol_per_l", "mol/L"), temp}, func(g given) (float64, error) {
		salt := g.in("salt", "mol_per_l")
		return overWater(carbonation.Liquid{IonsMolPerL: map[string]float64{"Na+": salt, "Cl-": salt}}, g.celsius("t"))
	}},
	// kPa gauge of a closed pack at one temperature, from its reading at another.
	"carbonation.pack-pair": {[]param{text("pack"), in("brimful", "ml", "mL"), in("fill", "ml", "mL"), in("sugar", "g_per_l", "g/L"),
		in("gauge", "kpa", "kPa"), temp, temperature("at")}, packPair},
}

const (
	perHundred  = 100.0
	perThousand = 1000.0
)

func atCelsius(f func(tC float64) float64) model {
	return model{[]param{temp}, func(g given) (float64, error) { return f(g.celsius("t")), nil }}
}

func moleFraction(g given) (float64, error) {
	kPa, tC := g.in("partial", "kpa"), g.celsius("t")
	if g.text("equation") == "" {
		return perThousand * carbonation.MoleFraction(kPa, tC), nil
	}
	c, err := correlation(g.text("equation"))
	if err != nil {
		return 0, err
	}
	return perThousand * c.MoleFraction(kPa, tC), nil
}

func correlation(name string) (carbonation.Correlation, error) {
	for _, c := range carbonation.Correlations() {
		if c.Name == name {
			return c, nil
		}
	}
	return carbonation.Correlation{}, fmt.Errorf("no equation %q", name)
}

// overWater compares at a pressure that any drink stands; the ratio hardly moves
// with it.
func overWater(l carbonation.Liquid, tC float64) (float64, error) {
	const anyKPa = 200
	drink, err := l.Volumes(anyKPa, tC)
	if err != nil {
		return 0, err
	}
	water, err := carbonation.Liquid{}.Volumes(anyKPa, tC)
	return drink / water, err
}

// filledC is where packs whose filling temperature is not told are taken as filled.
const filledC = 4

func packPair(g given) (float64, error) {
	wall, ok := carbonation.MaterialOf(g.text("pack"))
	if !ok {
		return 0, fmt.Errorf("no pack %q", g.text("pack"))
	}
	p, err := carbonation.Pack{
		BrimfulML: g.in("brimful", "ml"), FillML: g.in("fill", "ml"), FillTempC: filledC, Material: wall,
		HeadspaceGas: carbonation.GasCO2, Liquid: carbonation.Liquid{SugarGPerL: g.in("sugar", "g_per_l")},
	}.WithReading(carbonation.GaugeKPa(g.in("gauge", "kpa")), g.celsius("t"))
	if err != nil {
		return 0, err
	}
	s, err := p.At(g.celsius("at"))
	return float64(s.Gauge), err
}
