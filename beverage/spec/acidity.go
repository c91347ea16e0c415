package spec

import (
	"slices"

	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

// acids are those that an acidity is stated as.
var acids = []string{"citric acid", "malic acid", "tartaric acid", "lactic acid", "acetic acid", "phosphoric acid", "fumaric acid", "oxalic acid", "quinic acid"}

// pendingPerVolume marks an acidity that was written per volume: it waits, in
// g/L, for the density that turns it into per cent by mass.
const pendingPerVolume = " per volume"

// acidity declares a key that holds a titratable acidity.
func acidity[T any](key, means, example string, at func(*T) *beverage.Given[beverage.Acidity]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormQuantity, Type: "a percentage by mass as an acid, or g/L with the density", Means: means, Example: `"` + example + `"`},
		read: func(r *reader, n *node, it *T) {
			if a, ok := r.acidityOf(n); ok {
				*at(it) = given(r, n, a)
			}
		},
	}
}

func (r *reader) acidityOf(n *node) (beverage.Acidity, bool) {
	q, ok := r.quantityOf(n, quantity.Fraction, quantity.Concentration)
	if !ok {
		return beverage.Acidity{}, false
	}
	as := q.As
	if slices.Contains(acids, as+" acid") {
		as += " acid"
	}
	switch {
	case as == "":
		r.wrong(n, "names no acid", "write "+quantity.Quote(strings.TrimSpace(n.text)+" as citric acid"))
	case !slices.Contains(acids, as):
		near := quantity.Nearest(as, acids)
		if len(near) == 0 {
			near = acids
		}
		r.wrong(n, "is as an unknown acid", "write as "+quantity.Either(near))
	case q.Dim == quantity.Concentration:
		return beverage.Acidity{Percent: q.Value, As: as + pendingPerVolume}, true
	case q.Value > 100:
		r.wrong(n, "is out of range", "write a value "+anyPercent.String())
	default:
		return beverage.Acidity{Percent: q.Value, As: as}, true
	}
	return beverage.Acidity{}, false
}

// gPerLInPercent is how many g/L are one per cent by mass at 1 g/mL.
const gPerLInPercent = 10

// acidityByMass turns an acidity per volume into one by mass.
func acidityByMass(r *reader, n *node, a *beverage.Given[beverage.Acidity], density beverage.Given[float64]) {
	as, perVolume := strings.CutSuffix(a.V.As, pendingPerVolume)
	if n == nil || !perVolume {
		return
	}
	if !density.Known {
		r.wrong(n, "is per volume", "write density too, or per cent by mass such as \"0.45 % as citric acid\"")
		*a = beverage.Given[beverage.Acidity]{}
		return
	}
	a.V = beverage.Acidity{Percent: a.V.Percent / gPerLInPercent / density.V, As: as}
	if a.V.Percent > 100 {
		r.wrong(n, "is more acid than its density has room for", "write 100 % at most")
	}
}

func acidityOfDrink(r *reader, n *node, m *beverage.Readings) {
	acidityByMass(r, n.child("titratable_acidity"), &m.Acidity, m.DensityGPerML)
}
