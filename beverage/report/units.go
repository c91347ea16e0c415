package report

import (
	"math"
	"strconv"
	"strings"

	"posset/beverage/quantity"
)

// Units is the system in which a person reads figures; JSON always uses the
// units that its field names end in.
type Units int

// Metric is the system used unless told.
const (
	Metric Units = iota
	US
)

// measure is what a figure measures, with how each system shows it.
type measure struct {
	metric, us shown
}

// shown is a unit, of a dimension unless figures are shown as they are, and the
// decimals printed in it.
type shown struct {
	dim      quantity.Dimension
	unit     string
	decimals int
	small    bool // a small figure takes more decimals in a column, too
}

func measured(d quantity.Dimension, metric string, metricDecimals int, us string, usDecimals int) measure {
	return measure{metric: shown{dim: d, unit: metric, decimals: metricDecimals}, us: shown{dim: d, unit: us, decimals: usDecimals}}
}

var (
	temperature = measured(quantity.Temperature, "°C", 1, "°F", 1)
	difference  = measured(quantity.TemperatureDifference, "C°", 1, "F°", 1)
	gauge       = measured(quantity.Pressure, "barg", 2, "psig", 1)
	absolute    = measured(quantity.Pressure, "bara", 2, "psia", 1)
	volume      = measured(quantity.Volume, "mL", 0, "fl oz", 1)
)

// same is a measure that both systems show alike.
func same(unit string, decimals int) measure {
	s := shown{unit: unit, decimals: decimals, small: true}
	return measure{metric: s, us: s}
}

var (
	acidity     = same("", 2) // pH
	minutes     = same("min", 2)
	perLitre    = same("g/L", 1)
	grams       = same("g", 1)
	milligrams  = same("mg", 0)
	plainGrams  = same("g", 2)
	percent     = same("%", 1)
	plain       = same("", 2)
	volumes     = same("volumes", 2)
	densityUnit = same("g/mL", 3)
)

func (m measure) in(u Units) shown {
	if u == US {
		return m.us
	}
	return m.metric
}

func (s shown) of(v *float64) *float64 {
	if v == nil {
		return nil
	}
	x := *v
	if s.dim != quantity.None {
		x = quantity.Quantity{Value: x, Dim: s.dim}.InUnit(s.unit)
	}
	return &x
}

// figure shows v in the units of the reader.
func (u Units) figure(name string, m measure, v *float64) Figure {
	return u.between(name, m, v, nil, nil)
}

// between shows v with the range that it may really have.
func (u Units) between(name string, m measure, v, low, high *float64) Figure {
	s := m.in(u)
	return Figure{Name: name, Value: s.of(v), Low: s.of(low), High: s.of(high), Unit: s.unit, Decimals: s.decimals}
}

// cell is v for a table whose heading holds the unit; unknown is a dash.
func (u Units) cell(m measure, v *float64) string {
	s := m.in(u)
	if v == nil {
		return "-"
	}
	if !s.small {
		return fixed(*s.of(v), s.decimals)
	}
	return decimal(*s.of(v), s.decimals)
}

// heading adds the unit to a column's title.
func (u Units) heading(title string, m measure) string {
	if s := m.in(u); s.unit != "" {
		return title + ", " + s.unit
	}
	return title
}

// text is v with its unit, for use inside a sentence.
func (u Units) text(m measure, v float64) string {
	f := u.figure("", m, &v)
	return f.number()
}

// nothing is a figure so small, in any unit used here, that it is the noise of
// arithmetic.
const nothing = 1e-9

// decimal prints v with so many decimals, more where they would leave nothing
// of it, fewer digits where the figure is large. A small figure that is not
// zero never reads as zero.
func decimal(v float64, decimals int) string {
	switch a := math.Abs(v); {
	case !isFinite(v):
		return "-"
	case a > nothing && a < 0.5*math.Pow10(-decimals):
		return strconv.FormatFloat(v, 'g', 2, 64)
	case a >= 1e9:
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	return fixed(v, decimals)
}

// fixed prints v with so many decimals, and zero without a sign.
func fixed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// noise is what a figure may be off by arithmetic alone, in units of its last
// printed digit.
const noise = 1e-6

// up and down round to the last printed digit away from the middle, so that no
// printed end of a range hides that the range reaches past a limit.
func up(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Ceil(v*p-noise) / p
}

func down(v float64, decimals int) float64 { return -up(-v, decimals) }

// number is the figure's value and range with its unit, or "not known".
func (f Figure) number() string {
	if f.Value == nil && f.Low == nil && f.High == nil {
		return "not known"
	}
	s := "not known"
	if f.Value != nil {
		s = decimal(*f.Value, f.Decimals) + unitAfter(f.Unit)
	}
	if f.Low != nil && f.High != nil {
		s += " (" + decimal(down(*f.Low, f.Decimals), f.Decimals) + " to " + decimal(up(*f.High, f.Decimals), f.Decimals) + ")"
	}
	return s
}

func unitAfter(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}

// answer is everything after the figure's name.
func (f Figure) answer() string {
	s := f.Words
	if s == "" || f.Value != nil || f.Low != nil {
		s = join(" ", s, f.number())
	}
	return join("; ", s, f.Note)
}

func join(with string, parts ...string) string {
	out := ""
	for _, p := range parts {
		switch {
		case p == "":
		case out == "":
			out = p
		default:
			out += with + p
		}
	}
	return out
}
