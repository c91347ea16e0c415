package report

import "posset/beverage"

func someProtein() *beverage.ProteinResult {
	return &beverage.ProteinResult{Schema: beverage.ProteinSchema, Tool: tool, Input: input("quince.toml"), Drink: "Quince clear protein water", ProteinState: *quince().Protein,
		ChargeCurve: []beverage.ChargePoint{{PH: 3, NetCharge: 19.1, NoSalt: 12.2, Salted: 19.8, Hot: 18.1, AcidHeld: 0.83}, {PH: 5.2, NetCharge: -0.04}}, Missing: []string{"no heat history was given"}, Cautions: testCautions,
		AcidHeld: known(-36), Behaviour: someBehaviour(), Nutrition: someNutrition(), Map: someMap(),
		Heat: beverage.HeatPairs{TrefC: known(121.1), ZC: known(10), LethalityMin: known(6), Of: "the target that was stated", Source: "rate constants (seen)", Notes: []string{"wide"},
			Pairs: []beverage.HeatPair{{TempC: 120, HoldS: 460, Denatured: known(0.98), DenaturedLow: known(0.9), DenaturedHigh: known(1)}, {TempC: 140, HoldS: 4.6}}}}
}

func someBehaviour() []beverage.ProteinBehaviour {
	return []beverage.ProteinBehaviour{{Name: "whey protein isolate", Kind: "whey isolate", KindSource: "handbooks", KindBasis: beverage.Memory,
		Proteins:       []beverage.ProteinShare{{Name: "beta-lactoglobulin B", PercentLow: 22, Percent: 27, PercentHigh: 34, NetCharge: known(-5), IsoelectricLow: known(5.1), IsoelectricHigh: known(5.3), Denatured: known(0.9), DenaturedLow: known(0.4), DenaturedHigh: known(1)}, {Name: "macropeptide", PercentLow: 10, PercentHigh: 24}},
		IsoelectricLow: known(4.5), IsoelectricHigh: known(5.3), IsoelectricSource: "texts", IsoelectricBasis: beverage.Seen, Dispute: "two families of figures", HydrolysisLow: known(8), HydrolysisHigh: known(15),
		AcidHeld: known(0.83), AcidBinding: known(1.1), SolubleLow: known(95), SolubleHigh: known(100), SolubleSource: "reviews", SolubleBasis: beverage.Memory, Looks: "clear", LooksWhy: "pH 3 to 3.6; what moves it: pH", LooksSource: "a paper", LooksBasis: beverage.Seen},
		{Name: "malt"}}
}

func someNutrition() *beverage.ProteinNutrition {
	return &beverage.ProteinNutrition{NitrogenFactors: []beverage.NitrogenFactor{{Name: "whey protein isolate", Factor: 6.38, Use: "milk products", Source: "a standard", Basis: beverage.Seen}},
		Daily:      []beverage.DailyShare{{Market: beverage.US, Nutrient: "calcium", Amount: known(574), Unit: "mg", Value: 1300, Percent: known(44.1), Source: "a rule", Basis: beverage.Seen}, {Market: beverage.EU, Nutrient: "calcium", Unit: "mg", Value: 800}},
		AminoAcids: &beverage.AminoAcidFigures{LeucineLow: known(1.6), LeucineHigh: known(2), BranchedLow: known(3), BranchedHigh: known(4.6), EssentialLow: known(7), EssentialHigh: known(9.9), Score: known(1.3), ScoreLow: known(1), ScoreHigh: known(1.6), Limiting: "Met+Cys", Pattern: "FAO 2013, over 3 years", Source: "sequences", Basis: beverage.Computed},
		LeftOut:    []string{"malt"}, Comparisons: []beverage.AminoComparison{{Name: "beta-lactoglobulin", Than: "whey isolate, a paper", Leucine: known(44), Essential: known(27), Without: []string{"Trp"}}}, Caffeine: []string{"review caffeine-high: US: 300 mg"}}
}

func someMap() *beverage.ProteinMap {
	stop, review := beverage.Stop, beverage.Review
	return &beverage.ProteinMap{X: beverage.MapAxis{Name: "pH", Step: 1, Values: []float64{4, 5}}, Y: beverage.MapAxis{Name: "temperature of the hold", Unit: "°C", Step: 10, Values: []float64{60, 70}},
		Drink: beverage.MapPlace{X: known(4.9), XLow: known(4.8), XHigh: known(5), Y: known(68)}, Heat: "held for 15 s at each temperature", Everywhere: []beverage.MapFinding{{ID: "flavour-light", Level: beverage.Note}},
		Signs: []beverage.MapSign{{Letter: "C", ID: "casein-acid-curd", Title: "Casein curds in acid"}, {Letter: "I", ID: "protein-isoelectric", Title: "No charge"}, {Letter: "A", ID: "protein-astringent", Title: "Dry"}},
		Cells: []beverage.MapCell{{X: 4, Y: 60, Level: &stop, Looks: "cloudy", Findings: []beverage.MapFinding{{ID: "casein-acid-curd", Level: stop, Window: "curd-cold"}, {ID: "protein-isoelectric", Level: review}, {ID: "protein-astringent", Level: beverage.Note}}},
			{X: 5, Y: 60, Looks: "unknown", CannotTell: []string{"how much unfolds: no constants"}},
			{X: 4, Y: 70, Level: &review, Looks: "cloudy", Findings: []beverage.MapFinding{{ID: "protein-isoelectric", Level: review}}},
			{X: 5, Y: 70, Looks: "unknown"}}, Notes: []string{"drawn as if held"}, Sources: []string{"curds (curd-cold): a paper"}}
}
