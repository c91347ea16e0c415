package checkvalue

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"posset/acid"
)

// dissolved are the parameters of a solution; free_co2 is what a gas holds.
var dissolved = []param{optional(text("composition")), optional(in("free_co2", "mol_per_kg", "mol/kg"))}

var acidModels = map[string]model{
	// pH. scale is what an old pH scale lies below the modern one.
	"acid.ph": {append(dissolved[:2:2], temp, optional(number("scale"))), func(g given) (float64, error) {
		s, err := g.solution()
		if err != nil {
			return 0, err
		}
		pH, err := acid.PH(s, g.celsius("t"))
		return pH - g.number("scale"), err
	}},
	// pH of one acid in water, by mass.
	"acid.ph-of-one": {[]param{text("acid"), share, temp}, phOfOne},
	// pH with all activity coefficients 1.
	"acid.ideal-ph": {[]param{text("composition"), text("acid"), listOf(number("pk"))}, func(g given) (float64, error) {
		s, err := g.solution()
		if err != nil {
			return 0, err
		}
		return acid.IdealPH(s, g.text("acid"), g.numberEach("pk")...)
	}},
	// kg^½ mol^-½.
	"acid.debye-hueckel": atCelsius(acid.DebyeHueckelA),
	"acid.water-pk":      atCelsius(acid.WaterPK),
	// pK of one step at ionic strength 0, and log10 of a complex's formation constant,
	// from the activities of a solved solution.
	"acid.pk":      {[]param{text("acid"), number("step"), temp}, dissociationPK},
	"acid.complex": {[]param{text("composition"), text("metal"), text("ligand"), text("complex"), temp}, formation},
	// log10 of a solubility product, from the activities of a solved solution.
	"acid.solubility": {[]param{text("solid"), text("composition"), text("ions"), temp}, solubility},
	// log10 of the ion product over the solubility product.
	"acid.saturation": {append([]param{text("solid"), temp}, dissolved...), saturation},
	// mmol per kg of water and unit of pH.
	"acid.buffer-capacity": {append(dissolved[:2:2], temp), func(g given) (float64, error) {
		s, err := g.solution()
		if err != nil {
			return 0, err
		}
		return acid.BufferCapacity(s, g.celsius("t"))
	}},
	"acid.water-activity": {[]param{optional(text("solutes")), optional(text("ions"))}, waterActivity},
	// Acidity in per cent, and grams of acid per milliequivalent of base.
	"acid.titratable-percent": {[]param{text("acid"), in("titrant", "ml", "mL"), number("normality"), in("sample", "g", "g")}, titratablePercent},
	"acid.titratable-factor": {[]param{text("acid")}, func(g given) (float64, error) {
		gPerMol, err := titratable(g.text("acid"))
		return gPerMol / perThousand, err
	}},
	// Share of an acid's uncharged form at ionic strength 0.
	"acid.undissociated-share": {[]param{text("acid"), number("ph")}, undissociatedShare},
}

func (g given) solution() (acid.Solution, error) {
	totals, err := composition(g.text("composition"))
	return acid.Solution{Totals: totals, FreeCO2: g.in("free_co2", "mol_per_kg")}, err
}

// composition reads "citric 0.05 potassium 0.05": mol per kg of water.
func composition(text string) ([]acid.Total, error) {
	fields := strings.Fields(text)
	if len(fields)%2 != 0 {
		return nil, fmt.Errorf("%q is not pairs of component and molality", text)
	}
	var totals []acid.Total
	for i := 0; i < len(fields); i += 2 {
		m, err := strconv.ParseFloat(fields[i+1], 64)
		if err != nil {
			return nil, fmt.Errorf("%q is not a molality", fields[i+1])
		}
		totals = append(totals, acid.Total{Component: fields[i], Molality: m})
	}
	return totals, nil
}

func phOfOne(g given) (float64, error) {
	c, ok := acid.Lookup(g.text("acid"))
	if !ok {
		return 0, fmt.Errorf("no acid %q", g.text("acid"))
	}
	percent := g.in("mass", "percent")
	molality := perThousand * percent / (perHundred - percent) / c.MolarMass
	return acid.PH(acid.Solution{Totals: []acid.Total{{Component: c.Name, Molality: molality}}}, g.celsius("t"))
}

func dissociationPK(g given) (float64, error) {
	c, ok := acid.Lookup(g.text("acid"))
	step := int(g.number("step"))
	if !ok || step < 1 || step > len(c.Steps) {
		return 0, fmt.Errorf("no step %d of acid %q", step, g.text("acid"))
	}
	return c.Steps[step-1].PK(g.celsius("t")), nil
}

func formation(g given) (float64, error) {
	e, err := g.solved()
	if err != nil {
		return 0, err
	}
	return logProduct(e, []acid.Total{{Component: g.text("complex"), Molality: 1}, {Component: g.text("metal"), Molality: -1}, {Component: g.text("ligand"), Molality: -1}})
}

// solubility takes how far a solution is from saturation off its ion product.
func solubility(g given) (float64, error) {
	e, err := g.solved()
	if err != nil {
		return 0, err
	}
	index, err := acid.SaturationIndex(e, g.text("solid"))
	if err != nil {
		return 0, err
	}
	ions, err := composition(g.text("ions"))
	if err != nil {
		return 0, err
	}
	product, err := logProduct(e, ions)
	return product - index, err
}

func (g given) solved() (acid.Equilibrium, error) {
	s, err := g.solution()
	if err != nil {
		return acid.Equilibrium{}, err
	}
	return acid.Solve(s, g.celsius("t"))
}

// logProduct is log10 of the product of activities, each to the power that stands
// in the place of a molality.
func logProduct(e acid.Equilibrium, powers []acid.Total) (float64, error) {
	activity := map[string]float64{}
	for _, x := range e.Species {
		activity[x.Name] = x.Activity()
	}
	sum := 0.0
	for _, p := range powers {
		a, ok := activity[p.Component]
		if !ok {
			return 0, fmt.Errorf("the solution has no %q", p.Component)
		}
		sum += p.Molality * math.Log10(a)
	}
	return sum, nil
}

func saturation(g given) (float64, error) {
	e, err := g.solved()
	if err != nil {
		return 0, err
	}
	return acid.SaturationIndex(e, g.text("solid"))
}

func waterActivity(g given) (float64, error) {
	totals, err := composition(g.text("solutes"))
	if err != nil {
		return 0, err
	}
	var solutes []acid.Solute
	for _, t := range totals {
		solutes = append(solutes, acid.Solute{Name: t.Component, Molality: t.Molality})
	}
	ions, err := composition(g.text("ions"))
	if err != nil {
		return 0, err
	}
	e, err := acid.Solve(acid.Solution{Totals: ions}, roomC)
	if err != nil {
		return 0, err
	}
	a, err := acid.WaterActivity(solutes, e)
	return a.Value, err
}

// roomC is the temperature that tables of solutions at room temperature are for.
const roomC = 25

func titratable(name string) (gPerMol float64, err error) {
	for _, a := range acid.TitratableAcids() {
		if a.Name == name {
			return a.GramsPerMolBase, nil
		}
	}
	return 0, fmt.Errorf("no titratable acid %q", name)
}

func titratablePercent(g given) (float64, error) {
	gPerMol, err := titratable(g.text("acid"))
	molBase := g.in("titrant", "ml") / perThousand * g.number("normality")
	return molBase * gPerMol * perHundred / g.in("sample", "g"), err
}

// undissociatedShare solves so little acid that only the strong acid which sets the
// pH gives ionic strength, and takes that out by the activity of the anion.
func undissociatedShare(g given) (float64, error) {
	const trace = 1e-9 // mol/kg
	name := g.text("acid")
	s := acid.Solution{Totals: []acid.Total{{Component: name, Molality: trace}}}
	chloride, err := acid.BalanceCharge(s, roomC, g.number("ph"), "chloride")
	if err != nil {
		return 0, err
	}
	s.Totals = append(s.Totals, acid.Total{Component: "chloride", Molality: chloride})
	e, err := acid.Solve(s, roomC)
	if err != nil {
		return 0, err
	}
	anion := 1.0
	for _, x := range e.Species {
		if x.Component == name && x.Charge == -1 {
			anion = x.ActivityCoef
		}
	}
	undissociated := e.Undissociated(name) / trace
	return undissociated / (undissociated + (1-undissociated)*anion), nil
}
