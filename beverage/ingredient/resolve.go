package ingredient

import (
	"posset/beverage"
)

// nearOffered is how many near names an unknown one is answered with.
const nearOffered = 5

// Override is a figure that a spec or an own file gives against what was known
// of the ingredient. One that would help the drink does not count: the stricter
// value stands in the entry.
type Override struct {
	Field, Library, Given string
	HelpsDrink            bool
	Place                 beverage.Place
}

// Resolved is one line of a recipe with all that is known of it.
type Resolved struct {
	Line beverage.Ingredient
	Entry
	Found     bool     // in the library or an own file
	Described bool     // its kind is known, and the figures that such a kind needs
	Near      []string // near names when neither found nor described
	Overrides []Override

	known bool // something but the line's own description speaks of it
}

// Resolve finds every line in the user's own descriptions and the library and
// lays the line's own description over what was found. Descriptions of one
// ingredient in several own files lie over each other in their order.
func (l *Library) Resolve(lines, own []beverage.Ingredient) []Resolved {
	mine := map[string][]beverage.Ingredient{}
	for _, o := range own {
		k := key(words(o.Name))
		mine[k] = append(mine[k], o)
	}
	out := make([]Resolved, 0, len(lines))
	for _, line := range lines {
		out = append(out, l.resolve(line, mine[key(words(line.Name))]))
	}
	return out
}

func (l *Library) resolve(line beverage.Ingredient, own []beverage.Ingredient) Resolved {
	r := Resolved{Line: line}
	r.Entry, r.Found = l.Lookup(line.Name)
	inLibrary := r.Found
	r.known = inLibrary
	for _, o := range own {
		r.overlay(o.Described)
		r.Found, r.known = true, true
	}
	r.overlay(line.Described)
	if !inLibrary {
		r.Name = line.Name
		l.complete(&r.Entry)
	}
	if r.Formula == "" {
		r.Shares = nil // of the figures as they stand now
		r.sharesFromMinerals(l.facts.weights)
	}
	if r.Kind == beverage.KindProtein && r.OwnPH.SurelyBelow(acidLinePH) {
		r.PreAcidified = true
	}
	r.Described = described(r.Entry)
	if !r.Found && !r.Described {
		r.Near = l.Near(line.Name, nearOffered)
	}
	return r
}

// complete adds to an ingredient that only its user described what its name and
// kind tell. Doubt counts: a juice may hold vitamin C, and a milk or juice holds
// the protein of its kind.
func (l *Library) complete(e *Entry) {
	e.traitsFromName(e.Name)
	e.MilkProduct = e.MilkProduct || isMilk(e.Name)
	e.CaffeineSource = e.CaffeineSource || e.Caffeine.Known() && e.Caffeine.High > 0
	switch e.Kind {
	case beverage.KindJuice:
		e.Juice, e.AscorbateSource = true, true
		e.takeProtein("", l.proteinOfJuice)
	case beverage.KindSweetener:
		e.Sweetener = true
	case beverage.KindPolyol:
		e.Polyol, e.Sweetener = true, true
	case beverage.KindPreservative:
		e.preservativeFromName()
	}
	if e.MilkProduct && (e.Kind == beverage.KindOther || e.Kind == "") {
		e.takeProtein("milk protein", l.proteinOfMilk)
	}
}

// acidLinePH is the line between low-acid and acid in every market (21 CFR 114.3).
const acidLinePH = 4.6

// singleStrengthBrix parts juices from concentrates: no single-strength juice of
// the library is at or above it, no concentrate below.
const singleStrengthBrix = 25

func singleStrengthJuice(e *Entry) bool {
	return e.Juice && e.Brix.Known() && e.Brix.Mid < singleStrengthBrix
}

func drinkingMilk(e *Entry) bool { return e.Name == "whole milk" || e.Name == "skim milk" }

// proteinAmong is the range of protein in the juices and milk products that are
// alike.
func (l *Library) proteinAmong(like func(*Entry) bool) (protein beverage.Interval) {
	for i := range l.names {
		if !l.names[i].Juice && !l.names[i].MilkProduct {
			continue
		}
		if o, err := l.at(i); err == nil && like(&o) {
			protein = hull(protein, o.Protein)
		}
	}
	return protein
}

// takeProtein gives an entry without protein figures the range of its kind.
func (e *Entry) takeProtein(id string, ofKind func() beverage.Interval) {
	if e.Protein.Known() {
		return
	}
	if e.Protein = ofKind(); !e.Protein.Known() {
		return
	}
	// A concentrate holds more than the juice: by its Brix, where that is given.
	if e.Brix.Known() && e.Brix.High > thinnestJuiceBrix {
		e.Protein.High *= e.Brix.High / thinnestJuiceBrix
	}
	e.ProteinID = id
	e.Figures = append(e.Figures, Figure{Field: "protein_percent", Low: e.Protein.Low, Typical: e.Protein.Mid, High: e.Protein.High,
		Source: beverage.Source{Text: "not given: the range of its kind in the library", Basis: beverage.Computed}})
}

// thinnestJuiceBrix is what the range of single-strength juices is scaled from:
// about the thinnest of them, so that the upper end errs upwards.
const thinnestJuiceBrix = 10
