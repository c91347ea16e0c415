package spec

import (
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

// acids are those that an acidity is stated as.
var acids = []string{"citric acid", "malic acid", "tartaric acid", "lactic acid", "acetic acid", "phosphoric acid", "fumaric acid", "oxalic acid", "quinic acid",
	"succinic acid", "gluconic acid", "adipic acid", "ascorbic acid"}

// acidity declares a key that holds a titratable acidity. One per volume needs
// the density, which may stand below it: the table's check reads it.
func acidity[T any](key, means, example string) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormQuantity, Type: "a percentage by mass as an acid, or g/L with the density", Means: means, Example: `"` + example + `"`},
		read:   func(*reader, *node, *T) {},
	}
}

// acidityGiven reads an acidity; nil is unknown.
func (r *reader) acidityGiven(n *node, density beverage.Given[float64]) (unknown beverage.Given[beverage.Acidity]) {
	if n == nil {
		return unknown
	}
	q, ok := r.quantityOf(n, "0.45 % as citric acid", quantity.Fraction, quantity.Concentration)
	if !ok {
		return unknown
	}
	as, ok := r.acidOf(n, q.As)
	if !ok {
		return unknown
	}
	percent, ok := r.percentByMass(n, q, density)
	if !ok {
		return unknown
	}
	return given(r, n, beverage.Acidity{Percent: percent, As: as})
}

// acidOf reads the acid that an acidity is stated as; "citric" will do.
func (r *reader) acidOf(n *node, as string) (string, bool) {
	if slices.Contains(acids, as+" acid") {
		as += " acid"
	}
	if slices.Contains(acids, as) {
		return as, true
	}
	near := quantity.Nearest(as, acids)
	switch {
	case as == "":
		r.wrong(n, "names no acid", "write "+quantity.Quote(strings.TrimSpace(n.text)+" as citric acid"))
	case len(near) > 0:
		r.wrong(n, "is stated as an acid that is not known", "write as "+quantity.Either(near))
	default:
		r.wrong(n, "is stated as an acid that is not known", "write as "+oneOf(acids))
	}
	return "", false
}

// gPerLInPercent is how many g/L are one per cent by mass at 1 g/mL.
const gPerLInPercent = 10

func (r *reader) percentByMass(n *node, q quantity.Quantity, density beverage.Given[float64]) (float64, bool) {
	percent := q.Value
	if q.Dim == quantity.Concentration {
		if !density.Known {
			r.wrong(n, "is per volume", `write density too, or per cent by mass such as "0.45 % as citric acid"`)
			return 0, false
		}
		percent /= gPerLInPercent * density.V
	}
	if !anyPercent.holds(percent) {
		r.wrong(n, "is out of range", "write a value "+anyPercent.String())
		return 0, false
	}
	return percent, true
}

func acidityOfDrink(r *reader, n *node, m *beverage.Readings) {
	m.Acidity = r.acidityGiven(n.child("titratable_acidity"), m.DensityGPerML)
}
