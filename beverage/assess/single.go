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
		Behaviour: []beverage.ProteinBehaviour{}, ChargeCurve: []beverage.ChargePoint{}, Missing: []string{}, Cautions: a.Cautions,
	}
	if a.Protein == nil {
		r.Flags, r.Components = []beverage.ProteinFlag{}, []beverage.ProteinComponent{}
		r.Missing = append(r.Missing, "no ingredient of the recipe holds protein worth telling")
		r.Heat = heatPairs(beverage.HeatPicture{Why: "there is no protein"})
		return r, nil
	}
	r.ProteinState = *a.Protein
	for _, name := range f.Protein.Unknown {
		r.Missing = append(r.Missing, "the protein of "+name+" is not known")
	}
	if f.Protein.DenatureNo != "" && (f.Protein.HeatLabile() || len(f.Protein.Unmade()) > 0) {
		r.Missing = append(r.Missing, "denatured fraction: "+f.Protein.DenatureNo)
	}
	r.ChargeCurve = append(r.ChargeCurve, chargeCurve(f)...)
	r.AcidHeld = acidHeld(f)
	for i := range f.Protein.Parts {
		r.Behaviour = append(r.Behaviour, behaviour(f, &f.Protein.Parts[i]))
	}
	r.Nutrition = nutrition(f, a.Findings)
	r.Heat = heatPairs(f.HeatPicture())
	return r, nil
}

// What the charge curve is compared with: pure water, salted water, a hot drink.
const (
	saltedMolPerL = 0.1
	hotC          = 90.0
	coolC         = 25.0
)

func chargeCurve(f *facts.Facts) []beverage.ChargePoint {
	m := f.Protein.Main
	if m == nil || m.Composition == nil {
		return nil
	}
	var curve []beverage.ChargePoint
	main, salt := m.Composition.Main(), f.IonicStrength()
	for pH := curveFromPH; pH <= curveToPH+curveStepPH/2; pH += curveStepPH {
		curve = append(curve, beverage.ChargePoint{PH: pH, NetCharge: main.NetCharge(pH, salt, coolC), NoSalt: main.NetCharge(pH, 0, coolC),
			Salted: main.NetCharge(pH, saltedMolPerL, coolC), Hot: main.NetCharge(pH, salt, hotC), AcidHeld: m.Composition.ChargePerGram(pH, salt, coolC)})
	}
	return curve
}
