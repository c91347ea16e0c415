package assess

import (
	"context"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/route"
)

// Routes is every route of a drink, with those that are left in order.
func Routes(ctx context.Context, d *beverage.Drink, o Options) (*beverage.RoutesResult, error) {
	f, err := factsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	a := assessment(f, o)
	return &beverage.RoutesResult{
		Schema: beverage.RoutesSchema, Tool: a.Tool, Input: a.Input, Drink: a.Drink.Name, Class: a.AcidClass, Routes: a.Routes,
		Left: route.Left(f, a.Routes), Cautions: a.Cautions,
	}, nil
}

// The charge curve of a protein result, pH.
const (
	curveFromPH = 2.0
	curveToPH   = 8.0
	curveStepPH = 0.25
)

// Protein is what is known of a drink's protein.
func Protein(ctx context.Context, d *beverage.Drink, o Options) (*beverage.ProteinResult, error) {
	f, err := factsOf(ctx, d)
	if err != nil {
		return nil, err
	}
	a := assessment(f, o)
	r := &beverage.ProteinResult{
		Schema: beverage.ProteinSchema, Tool: a.Tool, Input: a.Input, Drink: a.Drink.Name,
		ChargeCurve: []beverage.ChargePoint{}, Missing: []string{}, Cautions: a.Cautions,
	}
	if a.Protein == nil {
		r.Flags, r.Components = []beverage.ProteinFlag{}, []beverage.ProteinComponent{}
		r.Missing = append(r.Missing, "no ingredient of the recipe holds protein worth telling")
		return r, nil
	}
	r.ProteinState = *a.Protein
	for _, name := range f.Protein.Unknown {
		r.Missing = append(r.Missing, "the protein of "+name+" is not known")
	}
	if f.Protein.DenatureNo != "" {
		r.Missing = append(r.Missing, "denatured fraction: "+f.Protein.DenatureNo)
	}
	r.ChargeCurve = append(r.ChargeCurve, chargeCurve(f)...)
	return r, nil
}

func chargeCurve(f *facts.Facts) []beverage.ChargePoint {
	m := f.Protein.Main
	if m == nil || m.Composition == nil {
		return nil
	}
	var curve []beverage.ChargePoint
	main := m.Composition.Main()
	for pH := curveFromPH; pH <= curveToPH+curveStepPH/2; pH += curveStepPH {
		curve = append(curve, beverage.ChargePoint{PH: pH, NetCharge: main.NetCharge(pH, f.IonicStrength(), 25)})
	}
	return curve
}
