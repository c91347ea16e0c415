package quantity

import (
	"math"
	"regexp"
	"strings"
)

// unit is one unit of the trade. A value in the base unit of the dimension is
// number * num / den; both are kept so that whole factors stay exact.
type unit struct {
	name     string // canonical
	dim      Dimension
	num, den float64
	shift    float64  // temperatures: added to the number before scaling
	also     []string // other spellings
}

// Factors that are exact by definition: the yard and pound agreement of 1959
// (inch 25.4 mm, pound 453.59237 g), the US gallon of 231 cubic inches, the
// standard atmosphere of 101.325 kPa, the standard gravity in the pound-force,
// as listed in NIST Special Publication 811, appendix B (basis: memory).
const (
	gPerLb      = 453.59237
	gPerOz      = gPerLb / 16
	mLPerGal    = 3785.411784
	mLPerFlOz   = mLPerGal / 128
	mPerFt      = 0.3048
	mPerIn      = 0.0254
	kPaPerAtm   = 101.325
	kPaPerPsi   = gPerLb * 9.80665 / (mPerIn * mPerIn) / 1e6
	zeroCInK    = 273.15
	sPerDay     = 86400
	daysPerYear = 365.25 // a month is a twelfth of it, 30.44 days
)

var units = []unit{
	{name: "°C", dim: Temperature, num: 1, den: 1, also: []string{"C", "degC", "deg C", "° C", "degrees C", "celsius", "Celsius", "deg. C", "℃"}},
	{name: "°F", dim: Temperature, num: 5, den: 9, shift: -32, also: []string{"F", "degF", "deg F", "° F", "degrees F", "fahrenheit", "Fahrenheit", "deg. F", "℉"}},
	{name: "K", dim: Temperature, num: 1, den: 1, shift: -zeroCInK, also: []string{"kelvin", "Kelvin"}},
	{name: "C°", dim: TemperatureDifference, num: 1, den: 1, also: []string{"C deg"}},
	{name: "F°", dim: TemperatureDifference, num: 5, den: 9, also: []string{"F deg"}},

	{name: "kPa", dim: Pressure, num: 1, den: 1},
	{name: "Pa", dim: Pressure, num: 1, den: 1000},
	{name: "hPa", dim: Pressure, num: 1, den: 10},
	{name: "MPa", dim: Pressure, num: 1000, den: 1},
	{name: "mbar", dim: Pressure, num: 1, den: 10},
	{name: "bar", dim: Pressure, num: 100, den: 1},
	{name: "psi", dim: Pressure, num: kPaPerPsi, den: 1, also: []string{"lbf/in2", "PSI"}},
	{name: "atm", dim: Pressure, num: kPaPerAtm, den: 1},

	{name: "s", dim: Duration, num: 1, den: 1, also: []string{"sec", "secs", "second", "seconds"}},
	{name: "ms", dim: Duration, num: 1, den: 1000},
	{name: "min", dim: Duration, num: 60, den: 1, also: []string{"mins", "minute", "minutes"}},
	{name: "h", dim: Duration, num: 3600, den: 1, also: []string{"hr", "hrs", "hour", "hours"}},
	{name: "days", dim: Duration, num: sPerDay, den: 1, also: []string{"d", "day"}},
	{name: "weeks", dim: Duration, num: 7 * sPerDay, den: 1, also: []string{"wk", "week"}},
	{name: "months", dim: Duration, num: daysPerYear * sPerDay, den: 12, also: []string{"mo", "month"}},
	{name: "years", dim: Duration, num: daysPerYear * sPerDay, den: 1, also: []string{"y", "yr", "year"}},

	{name: "mL", dim: Volume, num: 1, den: 1, also: []string{"ml", "cc", "cm3", "millilitre", "millilitres", "milliliter", "milliliters"}},
	{name: "µL", dim: Volume, num: 1, den: 1000, also: []string{"µl", "uL"}},
	{name: "cL", dim: Volume, num: 10, den: 1, also: []string{"cl"}},
	{name: "dL", dim: Volume, num: 100, den: 1, also: []string{"dl"}},
	{name: "L", dim: Volume, num: 1000, den: 1, also: []string{"l", "litre", "litres", "liter", "liters"}},
	{name: "hL", dim: Volume, num: 100000, den: 1, also: []string{"hl"}},
	{name: "m3", dim: Volume, num: 1e6, den: 1},
	{name: "fl oz", dim: Volume, num: mLPerFlOz, den: 1, also: []string{"floz", "fl. oz", "fl. oz.", "fl oz.", "fl.oz.", "fluid ounce", "fluid ounces", "US fl oz"}},
	{name: "pt", dim: Volume, num: mLPerGal, den: 8, also: []string{"pint", "pints"}},
	{name: "qt", dim: Volume, num: mLPerGal, den: 4, also: []string{"quart", "quarts"}},
	{name: "gal", dim: Volume, num: mLPerGal, den: 1, also: []string{"gallon", "gallons", "US gal"}},

	{name: "g", dim: Mass, num: 1, den: 1, also: []string{"gram", "grams"}},
	{name: "µg", dim: Mass, num: 1, den: 1e6, also: []string{"ug", "mcg"}},
	{name: "mg", dim: Mass, num: 1, den: 1000},
	{name: "kg", dim: Mass, num: 1000, den: 1},
	{name: "oz", dim: Mass, num: gPerOz, den: 1, also: []string{"ounce", "ounces"}},
	{name: "lb", dim: Mass, num: gPerLb, den: 1, also: []string{"lbs", "pound", "pounds"}},

	{name: "g/L", dim: Concentration, num: 1, den: 1, also: []string{"g/l", "g/dm3"}},
	{name: "µg/L", dim: Concentration, num: 1, den: 1e6, also: []string{"µg/l", "ug/L", "mcg/L"}},
	{name: "mg/L", dim: Concentration, num: 1, den: 1000, also: []string{"mg/l"}},
	{name: "mg/mL", dim: Concentration, num: 1, den: 1, also: []string{"mg/ml"}},
	{name: "g/100 mL", dim: Concentration, num: 10, den: 1, also: []string{"g/100mL", "g/100 ml", "g/100ml", "g/dL", "g/dl", "% w/v", "% m/v", "% (w/v)", "% (m/v)"}},
	{name: "mg/100 mL", dim: Concentration, num: 1, den: 100, also: []string{"mg/100mL", "mg/100 ml", "mg/100ml", "mg/dL", "mg/dl"}},
	{name: "g/hL", dim: Concentration, num: 1, den: 100, also: []string{"g/hl"}},
	{name: "kg/hL", dim: Concentration, num: 10, den: 1, also: []string{"kg/hl"}},
	{name: "g/gal", dim: Concentration, num: 1000, den: mLPerGal},
	{name: "mg/fl oz", dim: Concentration, num: 1, den: mLPerFlOz},
	{name: "oz/gal", dim: Concentration, num: 1000 * gPerOz, den: mLPerGal},
	{name: "lb/gal", dim: Concentration, num: 1000 * gPerLb, den: mLPerGal, also: []string{"lbs/gal"}},

	{name: "%", dim: Fraction, num: 1, den: 1, also: []string{"percent", "per cent", "pct", "% w/w", "% m/m", "% (w/w)", "% (m/m)", "wt%", "wt %", "g/100 g", "g/100g"}},
	{name: "g/kg", dim: Fraction, num: 1, den: 10},
	{name: "mg/kg", dim: Fraction, num: 1, den: 1e4},
	{name: "µg/kg", dim: Fraction, num: 1, den: 1e7, also: []string{"ug/kg", "mcg/kg", "ppb"}},
	{name: "ppm", dim: Fraction, num: 1, den: 1e4},
	{name: "mg/100 g", dim: Fraction, num: 1, den: 1000, also: []string{"mg/100g"}},
	{name: "% vol", dim: VolumeFraction, num: 1, den: 1, also: []string{"%vol", "% v/v", "% (v/v)", "% by volume", "% abv", "% ABV", "%ABV", "vol%", "vol %"}},

	{name: "g/serving", dim: PerServing, num: 1, den: 1, also: []string{"g per serving"}},
	{name: "mg/serving", dim: PerServing, num: 1, den: 1000, also: []string{"mg per serving"}},
	{name: "µg/serving", dim: PerServing, num: 1, den: 1e6, also: []string{"ug/serving", "mcg/serving"}},
	{name: "oz/serving", dim: PerServing, num: gPerOz, den: 1},

	{name: "mL/L", dim: PerVolume, num: 1, den: 1, also: []string{"ml/l", "ml/L", "L/m3"}},
	{name: "mL/100 mL", dim: PerVolume, num: 10, den: 1, also: []string{"mL/100mL", "ml/100 ml", "ml/100ml"}},
	{name: "L/hL", dim: PerVolume, num: 10, den: 1, also: []string{"l/hl"}},
	{name: "mL/gal", dim: PerVolume, num: 1000, den: mLPerGal, also: []string{"ml/gal"}},
	{name: "fl oz/gal", dim: PerVolume, num: 1000, den: 128, also: []string{"floz/gal"}},

	{name: "mmol/L", dim: Molar, num: 1, den: 1, also: []string{"mmol/l", "mM"}},
	{name: "µmol/L", dim: Molar, num: 1, den: 1000, also: []string{"µmol/l", "umol/L", "µM"}},
	{name: "mol/L", dim: Molar, num: 1000, den: 1, also: []string{"mol/l", "M"}},
	{name: "meq/L", dim: Equivalent, num: 1, den: 1, also: []string{"meq/l", "mEq/L", "mval/L"}},
	{name: "eq/L", dim: Equivalent, num: 1000, den: 1, also: []string{"eq/l", "Eq/L"}},

	{name: "g/mL", dim: Density, num: 1, den: 1, also: []string{"g/ml", "g/cm3", "g/cc"}},
	{name: "kg/L", dim: Density, num: 1, den: 1, also: []string{"kg/l"}},
	{name: "kg/m3", dim: Density, num: 1, den: 1000},

	{name: "mPa·s", dim: Viscosity, num: 1, den: 1, also: []string{"mPa.s", "mPa s", "mPa*s", "mPas", "cP", "cps", "centipoise"}},
	{name: "Pa·s", dim: Viscosity, num: 1000, den: 1, also: []string{"Pa.s", "Pa s", "Pa*s", "Pas"}},
	{name: "P", dim: Viscosity, num: 100, den: 1, also: []string{"poise"}},

	{name: "m", dim: Length, num: 1, den: 1, also: []string{"metre", "metres", "meter", "meters"}},
	{name: "nm", dim: Length, num: 1, den: 1e9},
	{name: "µm", dim: Length, num: 1, den: 1e6, also: []string{"um", "micron", "microns"}},
	{name: "mm", dim: Length, num: 1, den: 1000},
	{name: "cm", dim: Length, num: 1, den: 100},
	{name: "km", dim: Length, num: 1000, den: 1},
	{name: "in", dim: Length, num: mPerIn, den: 1, also: []string{"inch", "inches", "in."}},
	{name: "ft", dim: Length, num: mPerFt, den: 1, also: []string{"foot", "feet"}},

	{name: "L/h", dim: Flow, num: 1, den: 1, also: []string{"l/h", "L/hr", "l/hr", "Lph"}},
	{name: "L/min", dim: Flow, num: 60, den: 1, also: []string{"l/min", "Lpm"}},
	{name: "L/s", dim: Flow, num: 3600, den: 1, also: []string{"l/s"}},
	{name: "mL/min", dim: Flow, num: 60, den: 1000, also: []string{"ml/min"}},
	{name: "m3/h", dim: Flow, num: 1000, den: 1, also: []string{"m3/hr"}},
	{name: "gal/min", dim: Flow, num: 60 * mLPerGal, den: 1000, also: []string{"gpm"}},
	{name: "gal/h", dim: Flow, num: mLPerGal, den: 1000, also: []string{"gph", "gal/hr"}},

	{name: "°Brix", dim: Sugar, num: 1, den: 1, also: []string{"Brix", "brix", "°Bx", "Bx", "deg Brix", "degBrix", "degrees Brix"}},
}

var unitByName = indexUnits()

func indexUnits() map[string]*unit {
	all := make(map[string]*unit, 3*len(units))
	for i := range units {
		u := &units[i]
		all[u.name] = u
		for _, name := range u.also {
			all[name] = u
		}
	}
	return all
}

// reference says what a pressure is counted from.
type reference int

const (
	noReference reference = iota
	fromAtmosphere
	fromVacuum
)

var pressureSuffixes = []struct {
	end string
	ref reference
}{
	{"(gauge)", fromAtmosphere}, {"gauge", fromAtmosphere}, {"(g)", fromAtmosphere}, {"g", fromAtmosphere},
	{"(absolute)", fromVacuum}, {"absolute", fromVacuum}, {"(abs)", fromVacuum}, {"abs", fromVacuum}, {"(a)", fromVacuum}, {"a", fromVacuum},
}

// gaugePlate is how gauges and data sheets print their units.
var gaugePlate = regexp.MustCompile(`^(PSI|BAR|Psi|Bar) ?(\(?[GA]\)?)$`)

// find looks a unit up; name has been through tidy.
func find(name string) (*unit, reference, bool) {
	if u, ok := unitByName[name]; ok {
		return u, noReference, true
	}
	if gaugePlate.MatchString(name) {
		name = strings.ToLower(name)
	}
	for _, s := range pressureSuffixes {
		if short, cut := strings.CutSuffix(name, s.end); cut {
			if u, ok := unitByName[strings.TrimRight(short, " -")]; ok && u.dim == Pressure {
				return u, s.ref, true
			}
		}
	}
	return nil, noReference, false
}

// toBase turns a number in this unit into the base unit of dimension d, which
// is the unit's own or one that takes it.
func (u *unit) toBase(number float64, d Dimension) float64 {
	if d == TemperatureDifference {
		return number * u.num / u.den
	}
	v := (number + u.shift) * u.num / u.den
	switch {
	case u.dim == Concentration && d == Density:
		return v / 1000
	case u.dim == Density && d == Concentration:
		return v * 1000
	case u.dim == VolumeFraction && d == PerVolume:
		return v * 10
	}
	return v
}

// fromBase is the inverse of toBase for the unit's own dimension.
func (u *unit) fromBase(v float64) float64 { return v*u.den/u.num - u.shift }

// least is the smallest number of base units that can be, for the dimensions
// with a floor below zero.
func least(d Dimension, ref reference) float64 {
	switch {
	case d == Temperature:
		return -zeroCInK
	case d == Pressure && ref == fromAtmosphere:
		return -kPaPerAtm
	case d == Pressure, !dimensions[d].signed:
		return 0
	}
	return math.Inf(-1)
}
