package ingredient

import (
	"slices"

	"posset/beverage"
)

// Nature says whether an ingredient counts as an acid food, as a low-acid food,
// or as neither, by itself.
type Nature int

// NatureUnknown must be read as low-acid by whoever has to decide.
const (
	NatureUnknown Nature = iota
	LowAcidFood
	AcidFood    // acid by nature or by fermentation, own pH 4.6 or below
	NeitherFood // pure acids, water, sugars, salts, sweeteners, preservatives, flavours
)

func (n Nature) String() string {
	if n < NatureUnknown || n > NeitherFood {
		n = NatureUnknown
	}
	return [...]string{"unknown", "low-acid food", "acid food", "neither"}[n]
}

// MarshalText writes the nature's words.
func (n Nature) MarshalText() ([]byte, error) { return []byte(n.String()), nil }

// ProteinUnknown is the composition id of a protein that nobody has described.
const ProteinUnknown = "unknown"

// Share is how much of an acid-base component or ion a substance brings: moles
// per gram of the substance whose formula stands in the entry, hydrate water
// included, at 100 % strength. Component names are those of the charge balance;
// an ampholyte without constants of its own counts as the nearest that has some.
type Share struct {
	Component string
	MolPerG   float64
}

// Figure is one published, recalled or computed figure of an entry. Text holds
// what is not a number (a formula, the words on spores); the rest is then 0.
type Figure struct {
	Field              string
	Low, Typical, High float64
	Text               string
	Source             beverage.Source
	Note               string
}

// Entry is one ingredient. An Interval that is not Known, an empty string and a
// nil slice mean unknown, never zero.
type Entry struct {
	Name     string
	Synonyms []string
	ENumber  string
	Kind     beverage.Kind
	Nature   Nature

	Formula         string
	MolarMassG      float64           // g/mol, 0 unknown
	StrengthPercent beverage.Interval // of the substance in what is sold
	Shares          []Share           // complete for a pure chemical that acts on pH

	Protein, Fat, Sugars, Lactose, Moisture, Ash                beverage.Interval // %
	Calcium, Magnesium, Phosphorus, Sodium, Potassium, Chloride beverage.Interval // %
	Caffeine, Polyphenols                                       beverage.Interval // %
	OwnPH, OwnPHAtPercent, Acidity, Brix, DensityGPerML         beverage.Interval
	AcidityAs, MainAcid                                         string // component names: citric, malic ...
	HydrolysisPercent                                           beverage.Interval

	ProteinID    string // composition id; "" no protein worth counting, as the traces in a juice
	PreAcidified bool
	SlowBase     bool   // carbonate, oxide or phosphate of calcium or magnesium
	GumCharge    string // anionic, neutral, cationic
	Allergens    []string
	Spores       string

	Preservative   string
	ActiveFraction float64 // mass of free acid, SO2 or active per mass as sold

	MilkProduct, Juice, PlantBase, Tea, Coffee, Cocoa, Egg bool
	CaffeineSource, FromCarrot, Tomato, StarchSource       bool
	AscorbateSource, ThiaminSource, PhenylalanineSource    bool
	Sweetener, Polyol                                      bool

	Figures []Figure

	atoms  composition        // of the formula; nil where there is none
	masses map[string]float64 // atomic weights, g/mol
}

// AsSold is how many moles of a component one gram brings as it is sold, with
// the spread of its strength; unknown if the make-up or strength is unknown.
func (e Entry) AsSold(component string) beverage.Interval {
	if len(e.Shares) == 0 || !e.StrengthPercent.Known() {
		return beverage.Interval{}
	}
	var mol float64
	for _, s := range e.Shares {
		if s.Component == component {
			mol += s.MolPerG
		}
	}
	return e.StrengthPercent.Scale(mol / percent)
}

// Unknown lists the fields that nobody gave, by the names that Figures use.
func (e Entry) Unknown() []string {
	var out []string
	for _, f := range fields {
		if !f.of(&e).Known() {
			out = append(out, f.name)
		}
	}
	return out
}

func (e Entry) clone() Entry {
	e.Figures = slices.Clone(e.Figures)
	return e
}
