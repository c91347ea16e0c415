package facts

import (
	"strings"

	"posset/beverage"
	"posset/beverage/protein"
)

// Serving is what a serving holds; unknown figures are nil.
func (f *Facts) Serving() beverage.ServingNutrition {
	p := f.Protein
	n := beverage.ServingNutrition{
		ProteinG:   f.PerServing(p.GPerL).MidOrNil(),
		CalciumMG:  f.PerServing(p.Calcium).MidOrNil(),
		CaffeineMG: f.PerServing(p.Caffeine).MidOrNil(),
	}
	a := f.AminoAcids()
	n.LeucineG = f.PerServing(a.PerLitre.Leu).MidOrNil()
	n.BranchedChainG = f.PerServing(a.PerLitre.BranchedChain()).MidOrNil()
	n.EssentialAminoG = f.PerServing(a.PerLitre.Essential()).MidOrNil()
	return n
}

// uncountedMost is the share of the protein whose amino acids may stay uncounted
// while those of the rest are told: they are then too low by about that share.
// Common practice, no source.
const uncountedMost = 0.05

// Amino is what the drink's protein feeds.
type Amino struct {
	PerLitre protein.AminoAcids // g a litre; unknown where too much is left out
	PerGram  protein.AminoAcids // g in a gram of the protein that is counted
	GPerL    float64            // the protein that is counted
	LeftOut  []string           // ingredients whose protein is not: nobody analysed it
}

// AminoAcids are those of all proteins. Unknown where an ingredient's protein is,
// or where more than a twentieth of the protein has no known amino acids.
func (f *Facts) AminoAcids() Amino {
	var a Amino
	if len(f.Protein.Unknown) > 0 || !f.Protein.GPerL.Known() {
		return a
	}
	var each []protein.AminoAcids
	var gPerL []float64
	for _, p := range f.Protein.Parts {
		aa, ok := p.Composition.AminoAcids()
		if !ok {
			a.LeftOut = append(a.LeftOut, p.Line.Line.Name)
			continue
		}
		each, gPerL, a.GPerL = append(each, aa), append(gPerL, p.GPerL.Mid), a.GPerL+p.GPerL.Mid
	}
	if a.GPerL > 0 && a.GPerL >= (1-uncountedMost)*f.Protein.GPerL.Mid {
		a.PerLitre = protein.Sum(each, gPerL)
		a.PerGram = a.PerLitre.Scale(1 / a.GPerL)
	}
	return a
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
