package quantity

import (
	"regexp"
	"slices"
	"strings"
)

// Quantity is a number with its unit.
type Quantity struct {
	Value    float64   // in the base unit of Dim
	Dim      Dimension // what it is a quantity of
	Number   float64   // as written
	Unit     string    // canonical name of the unit as written
	Gauge    bool      // a pressure above the atmosphere's
	Absolute bool      // a pressure above vacuum
	As       string    // "citric acid" of "0.45 % as citric acid"
	Text     string    // as written
}

// unmistakableKPa is the pressure from which gauge and absolute are one: the
// atmosphere is within a fifth of a per cent of it. High pressure processing
// is written without either.
const unmistakableKPa = 50000

// Parse reads a number and a unit, such as "330 mL" or "0.45 % as citric acid".
// The error is an *Error.
func Parse(text string) (Quantity, error) { return ParseAs(text) }

// ParseAs is Parse for one of the wanted dimensions, which decide what an error
// offers. With none wanted any will do.
func ParseAs(text string, wanted ...Dimension) (Quantity, error) {
	return ParseLike(text, "", wanted...)
}

// ParseLike is ParseAs with the example that an error offers, such as
// "9 months" for a shelf life.
func ParseLike(text, example string, wanted ...Dimension) (Quantity, error) {
	q, is, write := parse(text, want{wanted, example})
	if is != "" {
		return Quantity{}, &Error{Text: text, Is: is, Write: write}
	}
	return q, nil
}

func parse(text string, w want) (q Quantity, is, write string) {
	tidied := tidy(text)
	switch {
	case len(text) > longestText:
		return q, "is too long for a quantity", "write " + w.such()
	case tidied == "":
		return q, "is empty", "write " + w.such()
	case strings.Contains(tidied, ","):
		return q, "has a comma", noComma(tidied, w)
	}
	end := scanNumber(tidied)
	switch {
	case notFinite.MatchString(tidied):
		return q, "is not a finite number", "write " + w.such()
	case end == 0:
		return q, "does not start with a number", "write " + w.such()
	}
	figure, rest := tidied[:end], strings.TrimSpace(tidied[end:])
	if q.Number, is, write = number(figure); is != "" {
		return q, is, write
	}
	q.Text = text
	name, as, _ := strings.Cut(rest, " as ")
	q.As = strings.TrimSpace(as)
	name = strings.TrimSpace(name)
	if total, ok := compound(tidied, name); ok {
		q.Number, figure, name = total, shortest(total), "s"
	}
	return q.withUnit(figure, name, w)
}

func noComma(tidied string, w want) string {
	if offers := withoutComma(tidied); len(offers) > 0 {
		return "write " + Either(offers)
	}
	return "write " + w.such() + ", with a point"
}

// withUnit fills the quantity from its unit and holds it against the floor of
// its dimension.
func (q Quantity) withUnit(figure, name string, w want) (_ Quantity, is, write string) {
	if name == "" {
		return q, "has no unit", "write " + w.units(figure)
	}
	u, ref, ok := find(name)
	if !ok {
		is, write = unknownUnit(figure, name, w)
		return q, is, write
	}
	q.Dim, q.Unit = u.dim, u.name
	q.Gauge, q.Absolute = ref == fromAtmosphere, ref == fromVacuum
	if len(w.dims) > 0 {
		if q.Dim, ok = u.dim.among(w.dims); !ok {
			return q, "is " + u.dim.String(), "write " + otherwise(figure, u, w)
		}
	}
	q.Value = u.toBase(q.Number, q.Dim)
	is, write = q.faults(figure, ref)
	return q, is, write
}

// faults finds what no quantity may be.
func (q Quantity) faults(figure string, ref reference) (is, write string) {
	switch floor := least(q.Dim, ref); {
	case q.Dim == Temperature && q.Value < floor:
		return "is below absolute zero (-273.15 C)", "write a temperature that can be, such as \"4 C\""
	case q.Dim == Pressure && q.Value < floor && floor < 0:
		return "is below vacuum", "write a gauge pressure above -1.01325 barg"
	case q.Value < floor:
		return "is negative", "write zero or more"
	case q.Dim == Pressure && ref == noReference && q.Value < unmistakableKPa:
		return "is neither gauge nor absolute", "write " + Either([]string{figure + " " + q.Unit + "g", figure + " " + q.Unit + "a"})
	}
	return "", ""
}

// otherwise says what to write for a quantity of the wrong dimension. An ounce
// where a volume is wanted was most likely a fluid ounce.
func otherwise(figure string, u *unit, w want) string {
	if u.name == "oz" && slices.Contains(w.dims, Volume) {
		return Quote(figure+" fl oz") + " if that is meant"
	}
	if slices.Contains(w.dims, Concentration) {
		switch u.dim {
		case Mass:
			return "per what it is: " + Either([]string{figure + " " + u.name + "/L", figure + " " + u.name + "/serving"})
		case Volume:
			return "per what it is: " + Quote(figure+" "+u.name+"/L")
		}
	}
	if u.dim == Equivalent {
		return "it in mmol/L or g/L, for the charge of what is weighed in is not known"
	}
	return w.such()
}

// unknownUnit offers the nearest units of the wanted dimensions.
func unknownUnit(figure, name string, w want) (is, write string) {
	switch {
	case name[0] >= '0' && name[0] <= '9':
		return "has a space inside the number", "write " + Quote(figure+name)
	case secondNumber.MatchString(name):
		return "is a range", "write one number and its unit"
	}
	is = "has the unknown unit " + Quote(name)
	if offers := nearUnits(figure, name, w.dims); len(offers) > 0 {
		return is, "write " + Either(offers)
	}
	return is, "write " + w.such()
}

// nearUnits offers the figure with the units nearest to the one written, each
// unit in one spelling.
func nearUnits(figure, name string, wanted []Dimension) (offers []string) {
	told := make(map[*unit]bool)
	for _, near := range Nearest(name, unitsFor(wanted)) {
		if u := unitByName[near]; !told[u] {
			told[u] = true
			offers = append(offers, figure+" "+near)
		}
	}
	return offers
}

func unitsFor(wanted []Dimension) (names []string) {
	for i := range units {
		if _, ok := units[i].dim.among(wanted); ok || len(wanted) == 0 {
			names = append(append(names, units[i].name), units[i].also...)
		}
	}
	return names
}

var (
	notFinite    = regexp.MustCompile(`^[+-]?(?i:nan|inf|infinity|∞)( |$)`)
	secondNumber = regexp.MustCompile(`^(-|–|—|to|\.\.+|±|\+/-|/) ?[0-9]`)
	timePart     = regexp.MustCompile(`^([0-9.]+) ?(\pL+) ?`)
)

// compound adds up a time written in parts, "1 h 30 min", in seconds; after is
// what follows the first number. A single part is none.
func compound(tidied, after string) (totalS float64, ok bool) {
	if !strings.ContainsAny(after, "0123456789") {
		return 0, false
	}
	parts := 0
	for rest := tidied; rest != ""; parts++ {
		m := timePart.FindStringSubmatch(rest)
		if m == nil || scanNumber(m[1]) != len(m[1]) {
			return 0, false
		}
		u, _, known := find(m[2])
		v, is, _ := number(m[1])
		if !known || u.dim != Duration || is != "" {
			return 0, false
		}
		totalS += u.toBase(v, Duration)
		rest = rest[len(m[0]):]
	}
	return totalS, parts > 1
}

// In holds the quantity against the dimensions wanted and returns it in the
// base unit of the one it serves. The error says what would do.
func (q Quantity) In(wanted ...Dimension) (Quantity, error) {
	return ParseAs(q.Text, wanted...)
}

// InUnit is the value in another unit of the same dimension, exactly the number
// as written where the unit is the same. An unknown or foreign unit gives NaN.
func (q Quantity) InUnit(name string) float64 {
	u, _, ok := find(name)
	switch {
	case !ok:
		return nan()
	case u.name == q.Unit:
		return q.Number
	case u.dim != q.Dim:
		return nan()
	}
	return u.fromBase(q.Value)
}

// String writes the quantity with its canonical unit; Parse reads the same
// quantity back.
func (q Quantity) String() string {
	text := shortest(q.Number) + " " + q.Unit
	switch {
	case q.Gauge:
		text += "g"
	case q.Absolute:
		text += "a"
	}
	if q.As != "" {
		text += " as " + q.As
	}
	return text
}

var tidier = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2007", " ", "\t", " ", // spaces
	"\u03bc", "µ", "\u00ba", "°", "\u02da", "°", // look-alikes of micro and degree
	"\u2212", "-", "³", "3", "²", "2", "^3", "3", "^2", "2", "\u22c5", "·", "\u2219", "·", "%", " %",
)

// tidy brings the look-alikes that keyboards and word processors make into one
// spelling, and runs of spaces into one space.
func tidy(text string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(tidier.Replace(text)), " "), " / ", "/")
}
