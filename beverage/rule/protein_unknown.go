package rule

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/protein"
)

var _ = declare(Rule{
	ID: "protein-unknown", Level: review, OnRoutes: true,
	Title: "What protein an ingredient holds is not known",
	Means: "Of a protein that is not named, or of an amount that is not given, nothing can be said: not its charge, its heat, its windows, its amino acids. None of the protein findings speaks for it, and their silence clears nothing.",
	Clear: "Use a name of the library, or describe it: its protein, and the source that the protein is of (whey, casein, milk, collagen, soy, pea, oat, rice, egg, potato).",
	Law:   []string{"unknown-ingredient.trade"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, l := range f.Recipe.Lines {
			if why := unknownProtein(f, l); why != "" {
				h := Hit{Detail: fmt.Sprintf("%s: %s.", upper(l.Line.Name), why), Values: Values{"ingredient": l.Line.Name}}
				if inTubeOrRetort(f) {
					h.Route = LeavesOpen // it may gel
				}
				hits = append(hits, h)
			}
		}
		hits = append(hits, uncutWords(f)...)
		named := slices.ContainsFunc(f.Recipe.Lines, func(l facts.Line) bool { return l.ProteinID != "" })
		if base := f.Drink.Base.V; len(hits) == 0 && !named && (base == beverage.SoldAsMilk || base == beverage.SoldAsPlant) {
			hits = append(hits, Hit{Detail: fmt.Sprintf("The %s base: nothing in the recipe says what protein it holds.", base)})
		}
		return hits
	},
})

// uncutWords tells of hydrolysates whose degree of hydrolysis nobody gave: slightly
// cut protein behaves as whole. What is sold as deeply cut is not asked.
func uncutWords(f *facts.Facts) []Hit {
	var hits []Hit
	for _, p := range f.Protein.Parts {
		d := p.Composition.Hydrolysis()
		if !d.Known() || p.Line.Line.Described.HydrolysisPercent.Known || d.Low >= proteinLimit("cut_deeply") {
			continue
		}
		hits = append(hits, Hit{Detail: fmt.Sprintf("%s: its degree of hydrolysis is not given, taken as %s; slightly cut, below %.3g %%, it would unfold, gel and cloud as whole protein.", upper(p.Line.Line.Name), degreeSpan(d), protein.IntactBelowPercent),
			Values: Values{"ingredient": p.Line.Line.Name}})
	}
	return hits
}

func degreeSpan(d beverage.Interval) string { return fmt.Sprintf("%.3g to %.3g %%", d.Low, d.High) }

// unknownProtein says what is not known of a line that is sold as protein, or as
// milk or a plant base; "" of all else.
func unknownProtein(f *facts.Facts, l facts.Line) string {
	if len(l.Shares) > 0 || l.Kind != beverage.KindProtein && !soldAsBase(f, l) {
		return ""
	}
	switch {
	case slices.Contains(f.Protein.Unknown, l.Line.Name):
		return "how much protein it brings is not given"
	case slices.ContainsFunc(f.Protein.Parts, func(p facts.ProteinPart) bool { return p.Composition == nil && p.Line.Line.Place == l.Line.Place }):
		return "what its protein is of is not given"
	}
	return ""
}

// soldAsBase is true of milk, and of what a plant drink is made on, whose protein
// nobody names; what the library lists without a protein worth counting is none.
func soldAsBase(f *facts.Facts, l facts.Line) bool {
	b := f.Drink.Base.V
	plant := l.PlantBase || b == beverage.SoldAsPlant || b == beverage.SoldAsMilk
	much := !f.Protein.GPerL.Known() || l.Share(l.Entry.Protein).High >= proteinLimit("protein_least")
	return l.ProteinID == ingredient.ProteinUnknown && l.Kind == beverage.KindOther && plant && much || l.MilkProduct && !l.Found
}
