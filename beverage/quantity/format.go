package quantity

import (
	"math"
	"strconv"
	"strings"
)

// System is the family of units that a report speaks.
type System int

// Metric is the default; US is customary units.
const (
	Metric System = iota
	US
)

// step is a unit that is used for figures from a certain size on.
type step struct {
	from float64 // in the base unit
	unit string
}

var metricSteps = map[Dimension][]step{
	Temperature:           {{0, "°C"}},
	TemperatureDifference: {{0, "C°"}},
	Duration:              {{0, "s"}, {120, "min"}, {2 * 3600, "h"}, {2 * sPerDay, "days"}, {90 * sPerDay, "months"}},
	Volume:                {{0, "mL"}, {1000, "L"}},
	Mass:                  {{0, "mg"}, {1, "g"}, {1000, "kg"}},
	Concentration:         {{0, "mg/L"}, {1, "g/L"}},
	Fraction:              {{0, "mg/kg"}, {0.01, "%"}},
	VolumeFraction:        {{0, "% vol"}},
	PerServing:            {{0, "mg/serving"}, {1, "g/serving"}},
	PerVolume:             {{0, "mL/L"}},
	Molar:                 {{0, "mmol/L"}},
	Equivalent:            {{0, "meq/L"}},
	Density:               {{0, "g/mL"}},
	Viscosity:             {{0, "mPa·s"}},
	Length:                {{0, "µm"}, {1e-3, "mm"}, {1, "m"}},
	Flow:                  {{0, "L/h"}},
	Sugar:                 {{0, "°Brix"}},
}

// usSteps holds only what differs from metric.
var usSteps = map[Dimension][]step{
	Temperature:           {{0, "°F"}},
	TemperatureDifference: {{0, "F°"}},
	Volume:                {{0, "fl oz"}, {mLPerGal, "gal"}},
	Mass:                  {{0, "mg"}, {1, "g"}, {gPerOz, "oz"}, {gPerLb, "lb"}},
	Density:               {{0, "lb/gal"}},
	Viscosity:             {{0, "mPa·s"}},
	Length:                {{0, "µm"}, {1e-3, "in"}, {mPerFt, "ft"}},
	Flow:                  {{0, "gal/h"}, {60 * mLPerGal / 1000, "gal/min"}},
}

// Format writes a value given in the base unit of its dimension, with so many
// significant digits (0: all), in the unit that suits its size. Pressures need
// FormatPressure, which says gauge or absolute. NaN is "unknown".
func Format(v float64, d Dimension, digits int, s System) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "unknown"
	}
	u := suited(v, d, s)
	if u == nil {
		return Number(v, digits)
	}
	return Number(u.express(v, d), digits) + " " + u.name
}

func suited(v float64, d Dimension, s System) *unit {
	steps, ok := usSteps[d]
	if s != US || !ok {
		steps = metricSteps[d]
	}
	var name string
	for _, st := range steps {
		if math.Abs(v) >= st.from || name == "" {
			name = st.unit
		}
	}
	return unitByName[name]
}

// express turns a value in d's base unit into this unit.
func (u *unit) express(v float64, d Dimension) float64 {
	if u.dim == Concentration && d == Density {
		v *= 1000
	}
	return u.fromBase(v)
}

// FormatPressure writes a pressure given in kPa as bar or psi, with g or a; from
// 50 MPa on, where the two are one, as MPa or psi alone.
func FormatPressure(kPa float64, gauge bool, digits int, s System) string {
	if math.IsNaN(kPa) || math.IsInf(kPa, 0) {
		return "unknown"
	}
	name, ref := "bar", "a"
	if gauge {
		ref = "g"
	}
	if kPa >= unmistakableKPa {
		name, ref = "MPa", ""
	}
	if s == US {
		name = "psi"
	}
	return Number(unitByName[name].fromBase(kPa), digits) + " " + name + ref
}

// Number writes a figure with so many significant digits, without exponent and
// without trailing zeros; digits before the point are never cut. With 0 digits
// it writes the shortest text that reads back as the same number.
func Number(v float64, digits int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "unknown"
	}
	if digits <= 0 || v == 0 {
		return shortest(v)
	}
	places := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	text := strconv.FormatFloat(v, 'f', max(places, 0), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}

func shortest(v float64) string {
	if v == 0 {
		return "0"
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func nan() float64 { return math.NaN() }
