package ingredient

import (
	"strings"

	"posset/beverage"
)

const percent = 100

// direction tells which way a given value would make the drink look better
// than the library does.
type direction int

const (
	eitherWay direction = iota
	lower
	higher
)

// Short names for the one table that uses them twenty times over.
type (
	interval = beverage.Interval
	said     = beverage.Description
	stated   = beverage.Given[float64]
)

// field is one numeric figure of an entry.
type field struct {
	name    string // heading in the data files and in Figures; ends in the unit
	of      func(*Entry) *interval
	given   func(*said) stated
	least   float64 // what the figure can be at least and at most
	most    float64
	helps   direction
	element string            // that a formula counts
	whole   func(*Entry) bool // whether a pure chemical's dry part is all of this class; nil: no formula fixes it
}

func part100(name string, of func(*Entry) *interval, given func(*said) stated) field {
	return field{name: name, of: of, given: given, most: percent}
}

func (f field) help(d direction) field { f.helps = d; return f }

func (f field) within(least, most float64) field { f.least, f.most = least, most; return f }

func (f field) counting(element string) field { f.element = element; return f }

func (f field) allOf(whole func(*Entry) bool) field { f.whole = whole; return f }

func none(*Entry) bool { return false }

var fields = []field{
	part100("strength_percent", func(e *Entry) *interval { return &e.StrengthPercent },
		func(d *said) stated { return d.StrengthPercent }).help(higher),
	part100("protein_percent", func(e *Entry) *interval { return &e.Protein },
		func(d *said) stated { return d.ProteinPercent }).help(lower).allOf(none),
	part100("fat_percent", func(e *Entry) *interval { return &e.Fat },
		func(d *said) stated { return d.FatPercent }).allOf(none),
	part100("sugars_percent", func(e *Entry) *interval { return &e.Sugars },
		func(d *said) stated { return d.SugarsPercent }).allOf(func(e *Entry) bool { return e.Kind == beverage.KindSugar }),
	part100("lactose_percent", func(e *Entry) *interval { return &e.Lactose },
		func(d *said) stated { return d.LactosePercent }).allOf(func(e *Entry) bool { return strings.HasPrefix(e.Name, "lactose") }),
	part100("moisture_percent", func(e *Entry) *interval { return &e.Moisture },
		func(d *said) stated { return d.MoisturePercent }),
	part100("ash_percent", func(e *Entry) *interval { return &e.Ash },
		func(d *said) stated { return d.AshPercent }),
	part100("calcium_percent", func(e *Entry) *interval { return &e.Calcium },
		func(d *said) stated { return d.CalciumPercent }).help(lower).counting("Ca"),
	part100("magnesium_percent", func(e *Entry) *interval { return &e.Magnesium },
		func(d *said) stated { return d.MagnesiumPercent }).counting("Mg"),
	part100("phosphorus_percent", func(e *Entry) *interval { return &e.Phosphorus },
		func(d *said) stated { return d.PhosphorusPercent }).counting("P"),
	part100("sodium_percent", func(e *Entry) *interval { return &e.Sodium },
		func(d *said) stated { return d.SodiumPercent }).counting("Na"),
	part100("potassium_percent", func(e *Entry) *interval { return &e.Potassium },
		func(d *said) stated { return d.PotassiumPercent }).counting("K"),
	part100("chloride_percent", func(e *Entry) *interval { return &e.Chloride },
		func(d *said) stated { return d.ChloridePercent }),
	part100("caffeine_percent", func(e *Entry) *interval { return &e.Caffeine },
		func(d *said) stated { return d.CaffeinePercent }).help(lower).allOf(func(e *Entry) bool { return e.Name == "caffeine" }),
	part100("polyphenols_percent", func(e *Entry) *interval { return &e.Polyphenols },
		func(d *said) stated { return d.PolyphenolsPercent }).help(lower).allOf(none),
	part100("ph", func(e *Entry) *interval { return &e.OwnPH },
		func(d *said) stated { return d.PH }).help(lower).within(0, 14),
	part100("ph_at_percent", func(e *Entry) *interval { return &e.OwnPHAtPercent },
		func(d *said) stated { return d.PHAtPercent }),
	part100("titratable_acidity_percent", func(e *Entry) *interval { return &e.Acidity },
		acidityGiven).help(higher),
	part100("brix", func(e *Entry) *interval { return &e.Brix },
		func(d *said) stated { return d.Brix }),
	part100("degree_of_hydrolysis_percent", func(e *Entry) *interval { return &e.HydrolysisPercent },
		func(d *said) stated { return d.HydrolysisPercent }).help(higher),
	part100("density_g_per_ml", func(e *Entry) *interval { return &e.DensityGPerML },
		func(d *said) stated { return d.DensityGPerML }).within(lightestGPerML, heaviestGPerML),
}

// What is sold to be drunk is neither lighter nor heavier than these: loose
// powders begin at about 0.1 g/mL, the heaviest syrups and acids end below 2.
const (
	lightestGPerML = 0.05
	heaviestGPerML = 2.5
)

func acidityGiven(d *said) stated {
	return stated{V: d.Acidity.V.Percent, Known: d.Acidity.Known, Place: d.Acidity.Place}
}

func fieldByName(name string) (field, bool) {
	for _, f := range fields {
		if f.name == name {
			return f, true
		}
	}
	return field{}, false
}
