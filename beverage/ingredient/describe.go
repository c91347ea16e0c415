package ingredient

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"posset/beverage"
)

// compositionOf is the composition that the source named for a protein of
// unknown make counts as: the one of its kind with the most in it that heat or
// calcium can harm.
var compositionOf = map[string]string{
	"whey": "whey concentrate", "casein": "micellar casein", "milk": "milk protein", "collagen": "collagen",
	"soy": "soy", "pea": "pea", "oat": "oat", "rice": "rice", "egg": "egg white", "potato": "potato",
}

func (r *Resolved) overlayProtein(d beverage.Description, against bool) {
	if d.ProteinSourceOfKind.Known && (r.ProteinID == "" || r.ProteinID == ProteinUnknown) {
		r.ProteinID = compositionOf[d.ProteinSourceOfKind.V]
	}
	if r.ProteinID == "" && (r.Kind == beverage.KindProtein || d.ProteinPercent.Known && d.ProteinPercent.V > 0) {
		r.ProteinID = ProteinUnknown
	}
	if !d.MilkProduct.Known || d.MilkProduct.V == r.MilkProduct {
		return
	}
	if against {
		r.Overrides = append(r.Overrides, Override{"milk_product", yesNo(r.MilkProduct), yesNo(d.MilkProduct.V), r.MilkProduct, d.MilkProduct.Place})
	}
	r.MilkProduct = r.MilkProduct || d.MilkProduct.V
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// completeFromKind gives a described juice or milk without protein figures
// those of its kind.
func (l *Library) completeFromKind(e *Entry, name string) {
	if e.Protein.Known() {
		return
	}
	switch {
	case e.Kind == beverage.KindJuice:
		e.Juice = true
		l.takeProtein(e, "juice", func(o Entry) bool { return o.Juice && o.Brix.Known() && o.Brix.High < 20 })
	case e.MilkProduct || isMilk(name):
		e.MilkProduct = true
		l.takeProtein(e, "milk protein", func(o Entry) bool { return o.Name == "whole milk" || o.Name == "skim milk" })
	}
}

// plantMilks are the words that make a milk none of an animal.
var plantMilks = []string{"almond", "oat", "soy", "soya", "coconut", "rice", "hemp", "pea", "cashew", "nut", "hazelnut", "plant"}

func isMilk(name string) bool {
	ws := words(name)
	return slices.Contains(ws, "milk") && !slices.ContainsFunc(ws, func(w string) bool { return slices.Contains(plantMilks, w) })
}

func (l *Library) takeProtein(e *Entry, id string, like func(Entry) bool) {
	for _, o := range l.entries {
		if like(o) && o.Protein.Known() {
			e.Protein = hull(e.Protein, o.Protein)
		}
	}
	if !e.Protein.Known() {
		return
	}
	e.ProteinID = id
	e.Figures = append(e.Figures, Figure{Field: "protein_percent", Low: e.Protein.Low, Typical: e.Protein.Mid, High: e.Protein.High,
		Source: beverage.Source{Text: "not given: the range of its kind in the library", Basis: beverage.Computed}})
}

// described tells whether an entry has its kind and what that kind needs.
func described(e Entry) bool {
	switch e.Kind {
	case "":
		return false
	case beverage.KindProtein:
		return e.Protein.Known()
	case beverage.KindAcid:
		return len(e.Shares) > 0 || e.OwnPH.Known() && e.Acidity.Known()
	case beverage.KindJuice, beverage.KindExtract, beverage.KindOther:
		return e.OwnPH.Known() && e.Acidity.Known()
	case beverage.KindSalt, beverage.KindMineral:
		return len(e.Shares) > 0 || e.Sodium.Known() || e.Potassium.Known() || e.Calcium.Known() || e.Magnesium.Known()
	case beverage.KindPreservative:
		return e.Preservative != ""
	}
	return true
}

// acidOf is the component name of an acid as a spec writes it: "citric acid".
func acidOf(as string) string {
	name, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(as)), " ")
	return name
}

func inWords(i beverage.Interval) string {
	if i.Low == i.High {
		return figureText(i.Low)
	}
	return figureText(i.Low) + " to " + figureText(i.High)
}

func figureText(v float64) string {
	const digits = 1e4
	return fmt.Sprint(math.Round(v*digits) / digits)
}
