package spec

import (
	"slices"

	"posset/beverage"
	"posset/beverage/quantity"
)

type ing = beverage.Ingredient

func percent(key, means, example string, within span, at func(*beverage.Description) *beverage.Given[float64]) field[ing] {
	return measure(key, quantity.Fraction, within, means+", by mass of the ingredient as sold.", example,
		func(i *ing) *beverage.Given[float64] { return at(&i.Described) })
}

// described lists what may be said of an ingredient; it overrides the library.
func described() []field[ing] {
	return append([]field[ing]{
		word("kind", beverage.Kinds, "What it is for.", func(i *ing) *beverage.Given[beverage.Kind] { return &i.Described.Kind }),
		number("ph", lowestPH, highestPH, "Its own pH.", "3.1", func(i *ing) *beverage.Given[float64] { return &i.Described.PH }),
		measure("ph_at", quantity.Fraction, somePercent, "Strength of the solution in water that its pH was read in.", "10 %",
			func(i *ing) *beverage.Given[float64] { return &i.Described.PHAtPercent }),
		acidity[ing]("titratable_acidity", "Its acid by titration, by mass of the ingredient as sold, as the acid named.", "6.5 % as citric acid"),
		number("brix", 0, mostBrix, "Its soluble solids by refractometer.", "65", func(i *ing) *beverage.Given[float64] { return &i.Described.Brix }),
		flag("acid_food", "Whether it is acid by nature. Pure acids, water, sugars, salts, sweeteners, preservatives and flavours are neither acid nor low-acid foods.",
			"true", func(i *ing) *beverage.Given[bool] { return &i.Described.AcidFood }),
		treatments(),
		measure("density", quantity.Density, densityRange, "Its density at 20 C.", "1.32 g/mL",
			func(i *ing) *beverage.Given[float64] { return &i.Described.DensityGPerML }),
		flag("milk_product", "Whether it is milk or made from milk.", "true", func(i *ing) *beverage.Given[bool] { return &i.Described.MilkProduct }),
		flag("has_particles", "Whether pulp or pieces are in it.", "false", func(i *ing) *beverage.Given[bool] { return &i.Described.ParticlesInIt }),
		word("protein_source", []string{"whey", "casein", "milk", "collagen", "soy", "pea", "oat", "rice", "egg", "potato"}, "What its protein is from.",
			func(i *ing) *beverage.Given[string] { return &i.Described.ProteinSourceOfKind }),
	}, composition()...)
}

func composition() []field[ing] {
	return []field[ing]{
		percent("strength", "Strength of a liquid acid or of an antifoam; without it, it counts as pure", "85 %", somePercent,
			func(d *beverage.Description) *beverage.Given[float64] { return &d.StrengthPercent }),
		measure("degree_of_hydrolysis", quantity.Fraction, anyPercent, "Share of the peptide bonds that are cut, of hydrolysates.", "28 %",
			func(i *ing) *beverage.Given[float64] { return &i.Described.HydrolysisPercent }),
		percent("protein", "Protein", "89 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.ProteinPercent }),
		percent("fat", "Fat", "1 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.FatPercent }),
		percent("sugars", "Sugars", "4 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.SugarsPercent }),
		percent("lactose", "Lactose", "3 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.LactosePercent }),
		percent("moisture", "Water", "5 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.MoisturePercent }),
		percent("ash", "Ash", "3 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.AshPercent }),
		percent("calcium", "Calcium", "0.5 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.CalciumPercent }),
		percent("magnesium", "Magnesium", "0.08 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.MagnesiumPercent }),
		percent("phosphorus", "Phosphorus", "0.3 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.PhosphorusPercent }),
		percent("sodium", "Sodium", "0.2 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.SodiumPercent }),
		percent("potassium", "Potassium", "0.4 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.PotassiumPercent }),
		percent("chloride", "Chloride", "0.1 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.ChloridePercent }),
		percent("caffeine", "Caffeine", "2 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.CaffeinePercent }),
		percent("polyphenols", "Polyphenols", "10 %", anyPercent, func(d *beverage.Description) *beverage.Given[float64] { return &d.PolyphenolsPercent }),
	}
}

func treatments() field[ing] {
	known := []string{"5-log juice", "pasteurized", "sterilized"}
	return field[ing]{
		KeyDoc: KeyDoc{Key: "treatments", Form: FormWords, Type: "a list of words", Values: known, Example: `["pasteurized"]`,
			Means: "What its supplier did to it; shown, never clears the drink's own step."},
		read: func(r *reader, n *node, i *ing) {
			if list := r.words(n, known); len(list) > 0 {
				i.Described.Treatments = given(r, n, list)
			}
		},
	}
}

// words reads a list of known words, or one; a word given twice counts once.
func (r *reader) words(n *node, known []string) []string {
	var list []string
	for _, item := range r.list(n, mostList) {
		if w, ok := r.wordOf(item, known); ok && !slices.Contains(list, w) {
			list = append(list, w)
		}
	}
	return list
}
