package ingredient

import (
	"slices"

	"posset/beverage"
)

// nearOffered is how many near names an unknown one is answered with.
const nearOffered = 5

// Override is a figure that a spec gave against what the library or an own file
// says. One that would help the drink does not count: the stricter value stands
// in the entry.
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
	Described bool     // described well enough to stand alone
	Near      []string // near names when neither found nor described
	Overrides []Override
}

// Resolve finds every line in the user's own descriptions and the library and
// lays the line's own description over what was found.
func (l *Library) Resolve(lines, own []beverage.Ingredient) []Resolved {
	mine := map[string]beverage.Ingredient{}
	for _, o := range own {
		mine[key(words(o.Name))] = o
	}
	out := make([]Resolved, 0, len(lines))
	for _, line := range lines {
		out = append(out, l.resolve(line, mine))
	}
	return out
}

func (l *Library) resolve(line beverage.Ingredient, own map[string]beverage.Ingredient) Resolved {
	r := Resolved{Line: line}
	r.Entry, r.Found = l.Lookup(line.Name)
	if o, ok := own[key(words(line.Name))]; ok {
		r.overlay(o.Described, r.Found)
		r.Found = true
	}
	r.overlay(line.Described, r.Found)
	if r.Name == "" {
		r.Name = line.Name
	}
	l.completeFromKind(&r.Entry, line.Name)
	r.Described = described(r.Entry)
	if !r.Found && !r.Described {
		r.Near = l.Near(line.Name, nearOffered)
	}
	return r
}

// overlay lays a description over the entry; against is whether something was
// known of the ingredient before, so that a figure can contradict it.
func (r *Resolved) overlay(d beverage.Description, against bool) {
	r.overlayKind(d, against)
	r.overlayNature(d, against)
	for _, f := range fields {
		if g := f.given(&d); g.Known {
			r.overlayFigure(f, g, against)
		}
	}
	if d.Acidity.Known && d.Acidity.V.As != "" {
		r.AcidityAs = d.Acidity.V.As
		if r.MainAcid == "" {
			r.MainAcid = acidOf(d.Acidity.V.As)
		}
	}
	r.overlayProtein(d, against)
}

// overlayFigure takes a stated figure, unless it would help the drink against a
// known one: then the known interval stays, and the contradiction is kept.
func (r *Resolved) overlayFigure(f field, g beverage.Given[float64], against bool) {
	at := f.of(&r.Entry)
	better := against && at.Known() && (f.helps == lower && g.V < at.Low || f.helps == higher && g.V > at.High)
	if against && at.Known() && (g.V < at.Low || g.V > at.High) {
		r.Overrides = append(r.Overrides, Override{f.name, inWords(*at), figureText(g.V), better, g.Place})
	}
	if better {
		return
	}
	*at = beverage.Point(g.V, beverage.Stated)
	r.Figures = append(r.Figures, Figure{Field: f.name, Low: g.V, Typical: g.V, High: g.V,
		Source: beverage.Source{Text: "stated: " + g.Place.String()}})
}

// watched are the kinds whose presence brings a duty; a description cannot take
// an ingredient out of them.
var watched = []beverage.Kind{beverage.KindProtein, beverage.KindJuice, beverage.KindExtract, beverage.KindPreservative}

func (r *Resolved) overlayKind(d beverage.Description, against bool) {
	if !d.Kind.Known {
		return
	}
	if !against || r.Kind == "" {
		r.Kind = d.Kind.V
		return
	}
	if d.Kind.V == r.Kind {
		return
	}
	better := slices.Contains(watched, r.Kind)
	r.Overrides = append(r.Overrides, Override{"kind", string(r.Kind), string(d.Kind.V), better, d.Kind.Place})
	if !better && r.Formula == "" {
		r.Kind = d.Kind.V
	}
}

func (r *Resolved) overlayNature(d beverage.Description, against bool) {
	if !against || r.Nature == NatureUnknown {
		r.Nature = natureOfKind(r.Kind)
	}
	if !d.AcidFood.Known {
		return
	}
	given := LowAcidFood
	if d.AcidFood.V {
		given = AcidFood
	}
	if r.Nature == NatureUnknown || given == LowAcidFood {
		if against && r.Nature != given && r.Nature != NatureUnknown {
			r.Overrides = append(r.Overrides, Override{"acid_food", r.Nature.String(), given.String(), false, d.AcidFood.Place})
		}
		r.Nature = given
		return
	}
	if r.Nature != AcidFood {
		r.Overrides = append(r.Overrides, Override{"acid_food", r.Nature.String(), given.String(), true, d.AcidFood.Place})
	}
}

// natureOfKind is the nature that a kind alone fixes.
func natureOfKind(k beverage.Kind) Nature {
	switch k {
	case beverage.KindProtein:
		return LowAcidFood
	case beverage.KindAcid, beverage.KindSalt, beverage.KindSugar, beverage.KindPolyol, beverage.KindSweetener,
		beverage.KindPreservative, beverage.KindFlavour, beverage.KindMineral, beverage.KindVitamin, beverage.KindAid:
		return NeitherFood
	}
	return NatureUnknown
}
