package spec

import (
	"posset/beverage"
	"posset/beverage/quantity"
)

// How much of what one spec may hold.
const (
	mostIngredients    = 200
	mostOwnIngredients = 1000 // of one file of the user's own
	mostOwnFiles       = 20
	mostBench          = 200
	mostRecords        = 50
	mostRoles          = 200
	mostZones          = 100
	mostLimits         = 100
	mostList           = 20 // of markets, treatments
)

// Ranges. They are wide: what is outside is a slip of the pen.
var (
	anyPercent    = span{0, 100, "%", false}
	somePercent   = span{0, 100, "%", true}
	alcoholRange  = span{0, 100, "% vol", false}
	servingRange  = span{0, 100_000, "mL", true}
	packRange     = span{0, 1_000_000, "mL", true} // a keg is 50 L, a tank no pack
	slackRange    = span{0, 1_000_000, "mL", false}
	sampleRange   = span{-20, 150, "°C", false}
	processRange  = span{-30, 250, "°C", false}
	storageRange  = span{-60, 100, "°C", false}
	holdRange     = span{0, 30 * 86400, "s", false} // half an hour in a tunnel, days of equilibration
	stayRange     = span{0, 30 * 86400, "s", true}
	shelfRange    = span{0, 20 * 365.25 * 86400, "s", true}
	densityRange  = span{0, 5, "g/mL", true}
	flowingRange  = span{0, 1_000_000, "mPa·s", true}
	nitrogenRange = span{0, 1000, "g", false}
	altitudeRange = span{-500, 9000, "m", false}
	highRange     = span{0, 2000, "MPa", true}
	poreRange     = span{0, 1000, "µm", true}
)

// Bounds of the bare numbers.
const (
	lowestPH, highestPH = 0, 14
	mostBrix            = 100
	mostVolumes         = 20
	mostKPa             = 10_000 // of a pack or a gas: ten times what bottles burst at
)

// file is the whole spec.
var specFile = table[beverage.Drink]{check: finishDrink, fields: []field[beverage.Drink]{
	one("drink", "What the drink is.", drink, func(d *beverage.Drink) *beverage.Drink { return d }),
	several("ingredient", mostIngredients, "One line of the recipe: from the library, or described here; a property given here overrides the library.", ingredient,
		func(_ *reader, _ *node, d *beverage.Drink, i beverage.Ingredient) {
			d.Ingredients = append(d.Ingredients, i)
		}),
	one("measured", "What was read in the finished, equilibrated drink; what is absent is predicted and marked so.", measured,
		func(d *beverage.Drink) *beverage.Readings { return &d.Measured }),
	several("bench", mostBench, "The developer's own trials: what differed from the recipe, and the pH that was read.", bench,
		func(_ *reader, _ *node, d *beverage.Drink, b beverage.Bench) { d.Bench = append(d.Bench, b) }),
	gas("carbonation", "The CO2 of the drink, as a shaken sample of the closed pack reads at 20 C, unless temperature and pressure are given. Leave it out for a still drink."),
	one("package", "The closed pack.", pack, func(d *beverage.Drink) *beverage.Package { return &d.Package }),
	one("process", "What is done to make the drink keep.", process, func(d *beverage.Drink) *beverage.Process { return &d.Process }),
	one("storage", "How the pack is kept.", storage, func(d *beverage.Drink) *beverage.Storage { return &d.Storage }),
	one("market", "Whose rules speak.", market, func(d *beverage.Drink) *beverage.Drink { return d }),
}}

var drink = table[beverage.Drink]{fields: []field[beverage.Drink]{
	name("The drink's name.", "Quince clear protein water", func(d *beverage.Drink) *string { return &d.Name }),
	measure("serving", quantity.Volume, servingRange, "What is drunk at once; amounts per serving rest on it.", "330 mL",
		func(d *beverage.Drink) *beverage.Given[float64] { return &d.ServingML }),
	measure("alcohol", quantity.VolumeFraction, alcoholRange, "Alcohol by volume, the most it will ever be.", "0 %",
		func(d *beverage.Drink) *beverage.Given[float64] { return &d.AlcoholPercent }).otherwise("0 %"),
	word("base", bases, "How the drink is sold; rules take the stricter of this and the ingredients.",
		func(d *beverage.Drink) *beverage.Given[beverage.SoldAs] { return &d.Base }),
	word("intended_for", []string{"general", "infants", "medical"}, "Whom it is for; infants and medical have their own law.",
		func(d *beverage.Drink) *beverage.Given[string] { return &d.IntendedFor }).otherwise("general"),
	word("particles", []string{"none", "pulp", "pieces"}, "What floats in it.",
		func(d *beverage.Drink) *beverage.Given[string] { return &d.Particles }).otherwise("none"),
	flag("live_cultures", "Whether living cultures are in it.", "false",
		func(d *beverage.Drink) *beverage.Given[bool] { return &d.LiveCultures }).otherwise("false"),
	ownFiles("ingredient_files", "Files with figures of your own: [[ingredient]] tables without amount, inside this file's folder.", `["ours.toml"]`),
}}

var bases = []beverage.SoldAs{beverage.SoldAsWater, beverage.SoldAsJuice, beverage.SoldAsTea, beverage.SoldAsCoffee,
	beverage.SoldAsMilk, beverage.SoldAsPlant, beverage.SoldAsFermented}

var measured = table[beverage.Readings]{check: acidityOfDrink, fields: []field[beverage.Readings]{
	number("ph", lowestPH, highestPH, "pH.", "3.25", func(m *beverage.Readings) *beverage.Given[float64] { return &m.PH }),
	number("ph_tolerance", 0, highestPH, "How far the pH may be off: meter and lot to lot.", "0.05",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.PHTolerance }).otherwise("0.1"),
	word("ph_method", []string{"meter", "paper", "titration"}, "How pH was read; above 4.0 paper counts as unmeasured.",
		func(m *beverage.Readings) *beverage.Given[string] { return &m.PHMethod }).otherwise("meter"),
	measure("ph_temperature", quantity.Temperature, sampleRange, "Temperature of the sample when its pH was read.", "25 C",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.PHTempC }),
	measure("ph_equilibrated", quantity.Duration, holdRange, "How long the drink had stood before its pH was read.", "24 h",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.PHEquilibratedS }),
	flag("ph_degassed", "Whether the gas was driven out first; unsaid, the upper end is raised by the shift of the gas.", "true",
		func(m *beverage.Readings) *beverage.Given[bool] { return &m.PHDegassed }),
	number("water_activity", 0, 1, "Water activity.", "0.99",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.WaterActivity }),
	number("brix", 0, mostBrix, "Soluble solids by refractometer.", "8.4",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.Brix }),
	acidity[beverage.Readings]("titratable_acidity", "Acid by titration to pH 8.1, by mass, as the acid named.", "0.45 % as citric acid"),
	measure("density", quantity.Density, densityRange, "Density at 20 C.", "1.022 g/mL",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.DensityGPerML }),
	measure("viscosity", quantity.Viscosity, flowingRange, "Viscosity.", "1.6 mPa·s",
		func(m *beverage.Readings) *beverage.Given[float64] { return &m.ViscosityMilliPa }),
}}

var storage = table[beverage.Storage]{fields: []field[beverage.Storage]{
	word("distribution", []beverage.Distribution{beverage.Ambient, beverage.Refrigerated, beverage.Frozen},
		"How it is stored, shipped and sold; unsaid, it counts as ambient and warm.",
		func(s *beverage.Storage) *beverage.Given[beverage.Distribution] { return &s.Distribution }),
	measure("temperature", quantity.Temperature, storageRange, "Warmest the pack will see.", "38 C",
		func(s *beverage.Storage) *beverage.Given[float64] { return &s.TempC }),
	measure("shelf_life", quantity.Duration, shelfRange, "How long it shall keep.", "9 months",
		func(s *beverage.Storage) *beverage.Given[float64] { return &s.ShelfLifeS }),
}}

var market = table[beverage.Drink]{fields: []field[beverage.Drink]{{
	KeyDoc: KeyDoc{Key: "jurisdiction", Form: FormWords, Type: "a word, or a list of words", Values: plainWords(beverage.Markets),
		Default: "US", Means: "One market, or a list; each finding names the markets it speaks for.", Example: `["US", "EU"]`},
	read: func(r *reader, n *node, d *beverage.Drink) {
		for _, w := range r.words(n, plainWords(beverage.Markets)) {
			d.Markets, d.MarketGiven = append(d.Markets, beverage.Market(w)), true
		}
	},
}}}
