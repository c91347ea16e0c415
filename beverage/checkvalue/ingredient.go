package checkvalue

import (
	"fmt"

	"posset/beverage/ingredient"
)

var ingredientModels = map[string]model{
	// g/mol, from the formula.
	"ingredient.molar-mass": ofIngredient(func(e ingredient.Entry) float64 { return e.MolarMassG }),
	// Grams of free acid, SO2 or active substance in a gram.
	"ingredient.active-fraction": ofIngredient(func(e ingredient.Entry) float64 { return e.ActiveFraction }),
}

func ofIngredient(figure func(ingredient.Entry) float64) model {
	return model{[]param{text("ingredient")}, func(g given) (float64, error) {
		e, ok := ingredient.Default().Lookup(g.text("ingredient"))
		if !ok {
			return 0, fmt.Errorf("no ingredient %q", g.text("ingredient"))
		}
		return figure(e), nil
	}}
}

// publishedMasses turns the molar masses that the ingredients' sources print into
// checks of what follows from the formulas: one a formula, of the substances that
// act on pH.
func publishedMasses() []Check {
	var checks []Check
	done := map[string]bool{}
	for _, e := range ingredient.Default().All() {
		f, ok := publishedMass(e)
		if !ok || len(e.Shares) == 0 || done[e.Formula] {
			continue
		}
		done[e.Formula] = true
		checks = append(checks, Check{
			ID: "ingredient/molar-mass/" + slug(e.Formula), Model: "ingredient.molar-mass", Given: map[string]any{"ingredient": e.Name},
			Want: f.Typical, Allowed: massAllowed, Why: massWhy, Source: f.Source.Text, Basis: f.Source.Basis,
		})
	}
	return checks
}

const (
	massAllowed = 0.1 // g/mol
	massWhy     = "printed to 0.1 or 0.01; monographs keep masses by older atomic weights, up to 0.09 off"
)

func publishedMass(e ingredient.Entry) (ingredient.Figure, bool) {
	for _, f := range e.Figures {
		if f.Field == "molar_mass_g_per_mol" {
			return f, true
		}
	}
	return ingredient.Figure{}, false
}
