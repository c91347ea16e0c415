package facts

import (
	"strings"

	"posset/beverage"
)

// Serving is what a serving holds; unknown figures are nil.
func (f *Facts) Serving() beverage.ServingNutrition {
	p := f.Protein
	n := beverage.ServingNutrition{
		ProteinG:   f.PerServing(p.GPerL).MidOrNil(),
		CalciumMG:  f.PerServing(p.Calcium).MidOrNil(),
		CaffeineMG: f.PerServing(p.Caffeine).MidOrNil(),
	}
	leucine, branched, essential := f.aminoAcids()
	n.LeucineG = f.PerServing(leucine).MidOrNil()
	n.BranchedChainG = f.PerServing(branched).MidOrNil()
	n.EssentialAminoG = f.PerServing(essential).MidOrNil()
	return n
}

// aminoAcids are grams a litre over all proteins; unknown where one protein's
// amino acids are, or where an ingredient's protein is unknown.
func (f *Facts) aminoAcids() (leucine, branched, essential beverage.Interval) {
	if len(f.Protein.Unknown) > 0 || !f.Protein.GPerL.Known() {
		return
	}
	zero := beverage.Point(0, beverage.Predicted)
	leucine, branched, essential = zero, zero, zero
	for _, p := range f.Protein.Parts {
		if p.Composition == nil {
			return beverage.Interval{}, beverage.Interval{}, beverage.Interval{}
		}
		aa, ok := p.Composition.AminoAcids()
		if !ok {
			return beverage.Interval{}, beverage.Interval{}, beverage.Interval{}
		}
		g := p.GPerL.Mid
		leucine = leucine.Plus(aa.Leu.Scale(g))
		branched = branched.Plus(aa.BranchedChain().Scale(g))
		essential = essential.Plus(aa.Essential().Scale(g))
	}
	return leucine, branched, essential
}

// Charge is the net charge of a molecule of the part's main protein at the
// drink's pH; nil where either is unknown.
func (f *Facts) Charge(p *ProteinPart) *float64 {
	if p.Composition == nil || !f.PH.Decides.Known() {
		return nil
	}
	return ptr(p.Composition.Main().NetCharge(f.PH.Decides.Mid, f.IonicStrength(), roomC))
}

// Isoelectric is the middle of the part's isoelectric band.
func (f *Facts) Isoelectric(p *ProteinPart) *float64 {
	if p.Composition == nil {
		return nil
	}
	return p.Composition.Isoelectric().MidOrNil()
}

// usualIonicStrength stands in where the recipe does not tell: that of a drink
// with a few grams of acid and salt. Common practice, no source.
const usualIonicStrength = 0.05

// IonicStrength is that of the recipe, mol/kg, or the usual one.
func (f *Facts) IonicStrength() float64 {
	if i := f.Ions.IonicMM; i.Known() && i.Mid > 0 {
		return i.Mid / 1000
	}
	return usualIonicStrength
}

// AboutProtein tells whether a finding speaks of what becomes of the protein.
func AboutProtein(id string) bool {
	switch id {
	case "protein-acid-botulinum":
		return false
	case "casein-acid-curd", "carbonated-protein-foam", "sterile-filtration-protein", "hydrolysate-bitter", "flavour-light", "ph-drop-on-heat", "thickening-changes-heating":
		return true
	}
	return strings.HasPrefix(id, "protein-")
}
