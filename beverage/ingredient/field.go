package ingredient

import "posset/beverage"

const percent = 100

// helps tells in which direction a given value would make the drink look
// better than the library does.
type helps int

const (
	neither helps = iota
	lower
	higher
)

// field is one numeric figure of an entry: its heading in the data files and in
// Figures, where it lives, the range it can have, and whether a composition may
// count it as part of the whole.
type field struct {
	name     string
	of       func(*Entry) *beverage.Interval
	given    func(*beverage.Description) beverage.Given[float64]
	low, top float64
	helps    helps
}

var fields = []field{
	{"strength_percent", func(e *Entry) *beverage.Interval { return &e.StrengthPercent }, func(d *beverage.Description) beverage.Given[float64] { return d.StrengthPercent }, 0, percent, higher},
	{"protein_percent", func(e *Entry) *beverage.Interval { return &e.Protein }, func(d *beverage.Description) beverage.Given[float64] { return d.ProteinPercent }, 0, percent, lower},
	{"fat_percent", func(e *Entry) *beverage.Interval { return &e.Fat }, func(d *beverage.Description) beverage.Given[float64] { return d.FatPercent }, 0, percent, neither},
	{"sugars_percent", func(e *Entry) *beverage.Interval { return &e.Sugars }, func(d *beverage.Description) beverage.Given[float64] { return d.SugarsPercent }, 0, percent, neither},
	{"lactose_percent", func(e *Entry) *beverage.Interval { return &e.Lactose }, func(d *beverage.Description) beverage.Given[float64] { return d.LactosePercent }, 0, percent, neither},
	{"moisture_percent", func(e *Entry) *beverage.Interval { return &e.Moisture }, func(d *beverage.Description) beverage.Given[float64] { return d.MoisturePercent }, 0, percent, neither},
	{"ash_percent", func(e *Entry) *beverage.Interval { return &e.Ash }, func(d *beverage.Description) beverage.Given[float64] { return d.AshPercent }, 0, percent, neither},
	{"calcium_percent", func(e *Entry) *beverage.Interval { return &e.Calcium }, func(d *beverage.Description) beverage.Given[float64] { return d.CalciumPercent }, 0, percent, lower},
	{"magnesium_percent", func(e *Entry) *beverage.Interval { return &e.Magnesium }, func(d *beverage.Description) beverage.Given[float64] { return d.MagnesiumPercent }, 0, percent, neither},
	{"phosphorus_percent", func(e *Entry) *beverage.Interval { return &e.Phosphorus }, func(d *beverage.Description) beverage.Given[float64] { return d.PhosphorusPercent }, 0, percent, neither},
	{"sodium_percent", func(e *Entry) *beverage.Interval { return &e.Sodium }, func(d *beverage.Description) beverage.Given[float64] { return d.SodiumPercent }, 0, percent, neither},
	{"potassium_percent", func(e *Entry) *beverage.Interval { return &e.Potassium }, func(d *beverage.Description) beverage.Given[float64] { return d.PotassiumPercent }, 0, percent, neither},
	{"chloride_percent", func(e *Entry) *beverage.Interval { return &e.Chloride }, func(d *beverage.Description) beverage.Given[float64] { return d.ChloridePercent }, 0, percent, neither},
	{"caffeine_percent", func(e *Entry) *beverage.Interval { return &e.Caffeine }, func(d *beverage.Description) beverage.Given[float64] { return d.CaffeinePercent }, 0, percent, lower},
	{"polyphenols_percent", func(e *Entry) *beverage.Interval { return &e.Polyphenols }, func(d *beverage.Description) beverage.Given[float64] { return d.PolyphenolsPercent }, 0, percent, lower},
	{"ph", func(e *Entry) *beverage.Interval { return &e.OwnPH }, func(d *beverage.Description) beverage.Given[float64] { return d.PH }, 0, 14, lower},
	{"ph_at_percent", func(e *Entry) *beverage.Interval { return &e.OwnPHAtPercent }, func(d *beverage.Description) beverage.Given[float64] { return d.PHAtPercent }, 0, percent, neither},
	{"titratable_acidity_percent", func(e *Entry) *beverage.Interval { return &e.Acidity }, acidityGiven, 0, percent, higher},
	{"brix", func(e *Entry) *beverage.Interval { return &e.Brix }, func(d *beverage.Description) beverage.Given[float64] { return d.Brix }, 0, percent, neither},
	{"degree_of_hydrolysis_percent", func(e *Entry) *beverage.Interval { return &e.HydrolysisPercent }, func(d *beverage.Description) beverage.Given[float64] { return d.HydrolysisPercent }, 0, percent, higher},
	{"density_g_per_ml", func(e *Entry) *beverage.Interval { return &e.DensityGPerML }, func(d *beverage.Description) beverage.Given[float64] { return d.DensityGPerML }, 0.1, 3, neither},
}

func acidityGiven(d *beverage.Description) beverage.Given[float64] {
	return beverage.Given[float64]{V: d.Acidity.V.Percent, Known: d.Acidity.Known, Place: d.Acidity.Place}
}

func fieldByName(name string) (field, bool) {
	for _, f := range fields {
		if f.name == name {
			return f, true
		}
	}
	return field{}, false
}
