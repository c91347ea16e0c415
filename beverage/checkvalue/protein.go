package checkvalue

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/protein"
)

var ofPart = []param{text("protein"), text("part")}

var proteinModels = map[string]model{
	// pH of zero charge in water at 25 °C, of a part or of the whole.
	"protein.zero-charge-ph": {[]param{text("protein"), optional(text("part"))}, zeroCharge},
	// g/mol.
	"protein.molar-mass": {ofPart, func(g given) (float64, error) {
		p, err := part(g)
		return p.MolarMass, err
	}},
	// mmol of acid that a gram takes up between two pH values.
	"protein.acid-bound": {[]param{text("protein"), number("from_ph"), number("to_ph"), in("ionic", "mol_per_l", "mol/L")}, acidBound},
	// Linderstrøm-Lang's w at one ionic strength less that at another.
	"protein.interaction": {append(ofPart[:2:2], in("at", "mol_per_l", "mol/L"), in("less", "mol_per_l", "mol/L")), interaction},
	// Per cent of one protein of milk that a hold unfolds for good.
	"protein.denatured": {append(ofPart[:2:2], in("concentration", "g_per_l", "g/L"), temp, duration("time")), denatured},
	// Grams of amino acids per 100 g of protein, computed from sequences.
	"protein.amino-acids": {[]param{text("protein"), text("amino")}, func(g given) (float64, error) {
		a, err := analysis(g.text("protein"), 0)
		if err != nil {
			return 0, err
		}
		v, err := amount(a, g.text("amino"))
		return perHundred * v, err
	}},
	// Per cent more of an amino acid than in one analysis of another protein, counted
	// from 0.
	"protein.more-amino-acids": {[]param{text("protein"), text("than"), number("analysis"), text("amino")}, moreAminoAcids},
	// Fall of pH of a neutral drink with milk salts.
	"protein.ph-drop": {[]param{temp, duration("time")}, func(g given) (float64, error) {
		return known(protein.PHDropOnHeat(g.celsius("t"), g.seconds("time")))
	}},
	// mm a day.
	"protein.settling": {[]param{in("diameter", "um", "µm"), in("particle", "kg_per_l", "kg/L"), in("drink", "kg_per_l", "kg/L"), in("viscosity", "mpa_s", "mPa·s")}, func(g given) (float64, error) {
		return protein.SettlingMMPerDay(g.in("diameter", "um"), g.in("particle", "kg_per_l"), g.in("drink", "kg_per_l"), g.in("viscosity", "mpa_s")), nil
	}},
	// mmol/L of calcium and phosphate that casein micelles hold at pH 6.7.
	"protein.colloid-calcium": {[]param{text("protein"), in("casein", "g_per_l", "g/L")}, func(g given) (float64, error) {
		return colloid(g, func(x protein.Colloid) beverage.Interval { return x.CalciumMmolPerG })
	}},
	"protein.colloid-phosphate": {[]param{text("protein"), in("casein", "g_per_l", "g/L")}, func(g given) (float64, error) {
		return colloid(g, func(x protein.Colloid) beverage.Interval { return x.PhosphateMmolPerG })
	}},
}

func whole(id string) (*protein.Composition, error) {
	c, ok := protein.Of(id)
	if !ok {
		return nil, fmt.Errorf("no protein %q", id)
	}
	return c, nil
}

func part(g given) (protein.Part, error) {
	c, err := whole(g.text("protein"))
	if err != nil {
		return protein.Part{}, err
	}
	for _, p := range c.Parts() {
		if p.ID == g.text("part") {
			return p, nil
		}
	}
	return protein.Part{}, fmt.Errorf("%s has no part %q", g.text("protein"), g.text("part"))
}

func zeroCharge(g given) (float64, error) {
	if g.text("part") != "" {
		p, err := part(g)
		if err != nil {
			return 0, err
		}
		return p.ZeroChargePH(), nil
	}
	c, err := whole(g.text("protein"))
	if err != nil {
		return 0, err
	}
	return c.ZeroChargePH(), nil
}

func acidBound(g given) (float64, error) {
	c, err := whole(g.text("protein"))
	if err != nil {
		return 0, err
	}
	ionic := g.in("ionic", "mol_per_l")
	return c.ChargePerGram(g.number("to_ph"), ionic, roomC) - c.ChargePerGram(g.number("from_ph"), ionic, roomC), nil
}

// interaction holds the charge: all groups then stand as they are, and the pH moves
// by 0.8686 (2/ln10) times w and the charge.
func interaction(g given) (float64, error) {
	p, err := part(g)
	if err != nil {
		return 0, err
	}
	const charge = 10
	lower, higher := phOfCharge(p, charge, g.in("at", "mol_per_l")), phOfCharge(p, charge, g.in("less", "mol_per_l"))
	return (higher - lower) * math.Ln10 / 2 / charge, nil
}

// phOfCharge halves between pH 0 and 14: the charge falls strictly.
func phOfCharge(p protein.Part, charge, ionic float64) float64 {
	const halvings = 60
	low, high := 0.0, 14.0
	for range halvings {
		middle := (low + high) / 2
		if p.NetCharge(middle, ionic, roomC) > charge {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// milkPH is that of the milk in which the rates were measured.
const milkPH = 6.7

func denatured(g given) (float64, error) {
	c, err := whole(g.text("protein"))
	if err != nil {
		return 0, err
	}
	p, err := part(g)
	if err != nil {
		return 0, err
	}
	d, valid := protein.NewDenaturer(c, protein.Conditions{
		PH: beverage.Point(milkPH, beverage.Measured), ProteinGPerL: g.in("concentration", "g_per_l") / p.MassFraction(),
	})
	if !valid.OK() {
		return 0, fmt.Errorf("%s", valid.Why)
	}
	d.Add(0, g.celsius("t"))
	d.Add(g.seconds("time"), g.celsius("t"))
	for _, x := range d.Parts() {
		if x.Part.ID == p.ID {
			v, err := known(x.Fraction)
			return perHundred * v, err
		}
	}
	return 0, fmt.Errorf("heat does not unfold %q", p.ID)
}

func known(v beverage.Interval) (float64, error) {
	if !v.Known() {
		return 0, fmt.Errorf("the figure is unknown")
	}
	return v.Mid, nil
}

func analysis(id string, n int) (protein.AminoAcids, error) {
	c, err := whole(id)
	if err != nil {
		return protein.AminoAcids{}, err
	}
	all := c.Analyses()
	if n < 0 || n >= len(all) {
		return protein.AminoAcids{}, fmt.Errorf("%s has no analysis %d", id, n)
	}
	return all[n], nil
}

// amount is in g/g: one amino acid or a group of them.
func amount(a protein.AminoAcids, amino string) (float64, error) {
	switch amino {
	case "leucine":
		return known(a.Leu)
	case "branched-chain":
		return known(a.BranchedChain())
	case "essential":
		return known(a.Essential())
	case "essential but tryptophan":
		a.Trp = beverage.Point(0, beverage.Library)
		return known(a.Essential())
	}
	return 0, fmt.Errorf("no amino acids %q", amino)
}

func moreAminoAcids(g given) (float64, error) {
	mine, err := analysis(g.text("protein"), 0)
	if err != nil {
		return 0, err
	}
	other, err := analysis(g.text("than"), int(g.number("analysis")))
	if err != nil {
		return 0, err
	}
	more, err := amount(mine, g.text("amino"))
	if err != nil {
		return 0, err
	}
	less, err := amount(other, g.text("amino"))
	return perHundred * (more/less - 1), err
}

// colloid is per gram of all protein; what unfolds in heat is no casein.
func colloid(g given, of func(protein.Colloid) beverage.Interval) (float64, error) {
	c, err := whole(g.text("protein"))
	if err != nil {
		return 0, err
	}
	x, ok := c.Colloid(milkPH)
	if !ok {
		return 0, fmt.Errorf("%s has no micelles", g.text("protein"))
	}
	perGram, err := known(of(x))
	return perGram / (1 - c.HeatLabileFraction()) * g.in("casein", "g_per_l"), err
}
