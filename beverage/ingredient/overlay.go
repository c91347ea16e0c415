package ingredient

import (
	"math"
	"slices"
	"strconv"

	"posset/beverage"
)

// overlay lays a description over the entry.
func (r *Resolved) overlay(d beverage.Description) {
	r.overlayKind(d)
	r.overlayNature(d)
	for _, f := range fields {
		if g := f.given(&d); g.Known {
			r.overlayFigure(f, g, d)
		}
	}
	r.overlayProtein(d)
	r.overlayMilk(d)
}

// overlayFigure takes a stated figure, unless it would help the drink against a
// known one: then the known interval stays, and the contradiction is kept.
func (r *Resolved) overlayFigure(f field, g beverage.Given[float64], d beverage.Description) {
	at := f.of(&r.Entry)
	value := g.V
	if f.name == "titratable_acidity_percent" {
		value = r.inLibraryAcid(g.V, d.Acidity.V.As)
	}
	better := false
	if r.known && at.Known() && (value < at.Low || value > at.High) {
		better = f.helps == lower && value < at.Low || f.helps == higher && value > at.High
		r.object(f.name, inWords(*at), figureText(g.V), better, g.Place)
	}
	if better {
		return
	}
	stated := beverage.Source{Text: "stated: " + g.Place.String(), Basis: beverage.Basis(beverage.Stated)}
	if f.name == "strength_percent" && r.atoms != nil {
		r.dilute(beverage.Point(g.V, beverage.Stated), stated)
		return
	}
	*at = beverage.Point(g.V, beverage.Stated)
	if f.name == "titratable_acidity_percent" {
		r.acidIs(d.Acidity.V.As)
	}
	r.Figures = append(r.Figures, Figure{Field: f.name, Low: g.V, Typical: g.V, High: g.V, Source: stated})
}

// acidIs takes the acid that a stated acidity is stated as. The main acid of a
// known ingredient stays what it is.
func (r *Resolved) acidIs(as string) {
	if as != "" {
		r.AcidityAs = acidOf(as)
	}
	if r.MainAcid == "" {
		r.MainAcid = r.AcidityAs
	}
}

// inLibraryAcid turns an acidity stated as one acid into the acid that the
// library states it as, by equivalents.
func (r *Resolved) inLibraryAcid(pct float64, as string) float64 {
	given, ok1 := equivalentG[acidOf(as)]
	library, ok2 := equivalentG[r.AcidityAs]
	if !ok1 || !ok2 {
		return pct
	}
	return pct * library / given
}

func (r *Resolved) object(field, library, given string, better bool, at beverage.Place) {
	r.Overrides = append(r.Overrides, Override{Field: field, Library: library, Given: given, HelpsDrink: better, Place: at})
}

// watched are the kinds whose presence brings a duty; a description cannot take
// an ingredient out of them.
var watched = []beverage.Kind{beverage.KindProtein, beverage.KindJuice, beverage.KindExtract, beverage.KindPreservative}

// overlayKind takes a stated kind. A pure chemical's kind is not the user's to
// say, and a watched kind stays.
func (r *Resolved) overlayKind(d beverage.Description) {
	if !d.Kind.Known || d.Kind.V == r.Kind {
		return
	}
	if r.Kind == "" {
		r.Kind = d.Kind.V
		return
	}
	better := slices.Contains(watched, r.Kind)
	r.object("kind", string(r.Kind), string(d.Kind.V), better, d.Kind.Place)
	if !better && r.Formula == "" {
		r.Kind = d.Kind.V
	}
}

// overlayNature keeps the stricter of what is known and what is stated:
// low-acid food before all. What nobody said follows from the kind.
func (r *Resolved) overlayNature(d beverage.Description) {
	if r.Nature == NatureUnknown {
		r.Nature = natureOfKind(r.Kind)
	}
	if d.PH.Known && d.PH.V > acidLinePH && r.Nature == NatureUnknown {
		r.Nature = LowAcidFood
	}
	if !d.AcidFood.Known {
		return
	}
	given := LowAcidFood
	if d.AcidFood.V {
		given = AcidFood
	}
	switch {
	case given == r.Nature:
	case r.Nature == NatureUnknown:
		r.Nature = given
	case given == AcidFood: // what is neither is as good as an acid food
		r.object("acid_food", r.Nature.String(), given.String(), r.Nature == LowAcidFood, d.AcidFood.Place)
	default:
		r.object("acid_food", r.Nature.String(), given.String(), false, d.AcidFood.Place)
		r.Nature = given
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

// compositionOf is the composition that a protein of stated source counts as:
// of its kind the one with the most in it that heat or calcium can harm.
var compositionOf = map[string]string{
	"whey": "whey concentrate", "casein": "micellar casein", "milk": "milk protein", "collagen": "collagen",
	"soy": "soy", "pea": "pea", "oat": "oat", "rice": "rice", "egg": "egg white", "potato": "potato",
}

// overlayProtein names the composition of a protein that has none: by its
// stated source, else as unknown. It is never guessed from a name.
func (r *Resolved) overlayProtein(d beverage.Description) {
	if r.ProteinID != "" && r.ProteinID != ProteinUnknown {
		return
	}
	if id, ok := compositionOf[d.ProteinSourceOfKind.V]; ok && d.ProteinSourceOfKind.Known {
		r.ProteinID = id
		return
	}
	described := !r.known && r.Kind != beverage.KindJuice && d.ProteinPercent.Known && d.ProteinPercent.V > 0
	if r.Kind == beverage.KindProtein || described {
		r.ProteinID = ProteinUnknown
	}
}

func (r *Resolved) overlayMilk(d beverage.Description) {
	if !d.MilkProduct.Known || d.MilkProduct.V == r.MilkProduct {
		return
	}
	if r.known {
		r.object("milk_product", yesNo(r.MilkProduct), yesNo(d.MilkProduct.V), r.MilkProduct, d.MilkProduct.Place)
	}
	r.MilkProduct = r.MilkProduct || d.MilkProduct.V
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func inWords(i beverage.Interval) string {
	if i.Low == i.High {
		return figureText(i.Low)
	}
	return figureText(i.Low) + " to " + figureText(i.High)
}

func figureText(v float64) string {
	const digits = 1e4
	return strconv.FormatFloat(math.Round(v*digits)/digits, 'f', -1, 64)
}
