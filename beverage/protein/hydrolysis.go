package protein

import (
	"math"

	"posset/beverage"
)

// IntactBelowPercent is the degree of hydrolysis below which intact whey protein
// is still about (reviews tell slight hydrolysis, below 5 %, from deep; memory,
// medium).
const IntactBelowPercent = 5.0

// waterGPerMol is what each cut bond takes up.
const waterGPerMol = 18.01528

// WithHydrolysis returns the composition after dhPercent of its peptide bonds are
// cut: new end groups that hold acid and base, smaller molecules with little
// common charge, and nothing left to denature once even the low end is 5 % or
// more. Below that it stays in the family it was cut from. dhPercent is the degree of hydrolysis, 0 to 100; the charge is that of its
// middle. An unknown degree gives the composition unchanged, which is the
// unfavourable reading: it still denatures and gels.
func WithHydrolysis(c *Composition, dhPercent beverage.Interval) *Composition {
	if c == nil || !dhPercent.Known() || !(dhPercent.High > 0) {
		return c
	}
	whole := *c
	if known, _ := library(); c.hydrolysis.Known() {
		whole.parts = known.byID[c.recipe].parts
	}
	return whole.cut(dhPercent)
}

// cut replaces each part by its mean peptide.
func (c *Composition) cut(dhPercent beverage.Interval) *Composition {
	cut := *c
	cut.family, cut.hydrolysis, cut.micelles = FamilyHydrolysate, dhPercent, false
	if dhPercent.Low < IntactBelowPercent {
		cut.family = c.origin // most of it is still whole: it unfolds, gels and curds as such
	}
	cut.parts = make([]Part, len(c.parts))
	for i, p := range c.parts {
		cut.parts[i] = p.cut(dhPercent, c.bonds)
	}
	return &cut
}

// cut is the mean peptide of the part. bonds is the content of peptide bonds in
// mmol/g; 0 counts them from the residues.
func (p Part) cut(dhPercent beverage.Interval, bonds float64) Part {
	const percent, milli = 100, 1000
	perMolecule := bonds * p.MolarMass / milli
	if bonds == 0 {
		perMolecule = p.residues - 1
	}
	fraction := math.Min(math.Max(dhPercent.Mid, 0), percent) / percent
	pieces := 1 + fraction*perMolecule
	n := p.counts
	n[siteNterm] += pieces - 1
	n[siteCterm] += pieces - 1
	p.counts = n.scale(1 / pieces)
	p.MolarMass = (p.MolarMass + waterGPerMol*(pieces-1)) / pieces
	p.residues /= pieces
	p.radiusNM = compactRadiusNM(p.MolarMass)
	p.Labile = p.Labile && dhPercent.Low < IntactBelowPercent
	return p.finished()
}
