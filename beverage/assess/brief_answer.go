package assess

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/quantity"
)

// answer is what the drink says to a key of the spec, or to a figure that is
// worked out. An empty text is an answer that nobody gave.
type answer struct {
	text  string
	from  string // where it was written, or who must give it
	basis beverage.ValueBasis
	short bool // something is known, but not what was asked for: a prediction for a measurement
}

// missing tells whether somebody must still give it.
func (a answer) missing() bool { return a.text == "" || a.short }

func (a answer) basisWords() string {
	if a.text == "" || a.basis == beverage.Unknown {
		return "not given"
	}
	return string(a.basis)
}

const (
	askPlant   = "the plant"
	byModel    = "worked out from the recipe"
	byDefault  = "not said; the default"
	digits     = 4 // significant digits of a figure in a brief
	nobodyKnow = "nobody gave it"
)

// answers give each key its value.
var answers = map[string]func(*facts.Facts) answer{
	"plant": func(*facts.Facts) answer { return answer{from: askPlant} },
	"none for a drink": func(*facts.Facts) answer {
		return answer{text: "none: a drink has no packing medium", from: "a drink", basis: beverage.Stated}
	},
	"drink.name": func(f *facts.Facts) answer {
		return answer{text: f.Drink.Name, from: f.Drink.File, basis: beverage.Stated}
	},
	"drink.base":      func(f *facts.Facts) answer { return word(f.Drink.Base) },
	"drink.serving":   func(f *facts.Facts) answer { return figure(f.Drink.ServingML, quantity.Volume) },
	"drink.particles": particlesAnswer,

	"ingredient.ph":                ownPHAnswer,
	"ingredient.amount":            saltAndSugar,
	"ingredient.kind acid":         acidsAnswer,
	"ingredient.kind preservative": preservativesAnswer,

	"measured.ph": phAnswer,
	"measured.water_activity": func(f *facts.Facts) answer {
		return reading(f.Drink.Measured.WaterActivity, quantity.None).or(f.WaterActivity, "")
	},
	"measured.brix": func(f *facts.Facts) answer { return reading(f.Drink.Measured.Brix, quantity.Sugar) },
	"measured.density": func(f *facts.Facts) answer {
		return reading(f.Drink.Measured.DensityGPerML, quantity.Density).or(f.Recipe.DensityGPerML, " g/mL")
	},
	"measured.viscosity":          func(f *facts.Facts) answer { return reading(f.Drink.Measured.ViscosityMilliPa, quantity.Viscosity) },
	"measured.titratable_acidity": acidityAnswer,

	"predicted.ph":               phByRecipe,
	"predicted.protein":          func(f *facts.Facts) answer { return predicted(f.Protein.GPerL, " g/L") },
	"predicted.protein_serving":  func(f *facts.Facts) answer { return predicted(f.PerServing(f.Protein.GPerL), " g") },
	"predicted.caffeine_serving": func(f *facts.Facts) answer { return predicted(f.PerServing(f.Protein.Caffeine), " mg") },
	"predicted.denatured":        func(f *facts.Facts) answer { return predicted(f.Protein.Denatured.Scale(percent), " %") },

	"carbonation.volumes": func(f *facts.Facts) answer { return figure(f.Gas.Volumes, quantity.None) },

	"package.type":            func(f *facts.Facts) answer { return word(f.Drink.Package.Type) },
	"package.fill":            func(f *facts.Facts) answer { return figure(f.Drink.Package.FillML, quantity.Volume) },
	"package.brimful":         func(f *facts.Facts) answer { return figure(f.Drink.Package.BrimfulML, quantity.Volume) },
	"package.headspace_gas":   func(f *facts.Facts) answer { return word(f.Drink.Package.HeadspaceGas) },
	"package.headspace":       headspaceAnswer,
	"package.pressure":        pressureAnswer,
	"package.pressure_rating": ratingAnswer,

	"process.route":                 func(f *facts.Facts) answer { return word(f.Drink.Process.Route) },
	"process.initial_temperature":   func(f *facts.Facts) answer { return figure(f.Drink.Process.InitialC, quantity.Temperature) },
	"process.hold_temperature":      holdTemperatureAnswer,
	"process.hold_time":             holdAnswer,
	"process.fill_temperature":      func(f *facts.Facts) answer { return figure(f.Drink.Process.FillTempC, quantity.Temperature) },
	"process.pack_hold_time":        func(f *facts.Facts) answer { return figure(f.Drink.Process.PackHoldS, quantity.Duration) },
	"process.pack_hold_temperature": func(f *facts.Facts) answer { return figure(f.Drink.Process.PackHoldC, quantity.Temperature) },
	"process.pressure":              pressAnswer,
	"process.filter_pore":           poreAnswer,
	"process.target":                targetAnswer,
	"process.scheduled":             scheduledAnswer,
	"process.scheduled.reference":   referenceAnswer,
	"process.critical":              criticalAnswer,

	"storage.distribution": func(f *facts.Facts) answer { return word(f.Drink.Storage.Distribution) },
	"storage.temperature":  func(f *facts.Facts) answer { return figure(f.Drink.Storage.TempC, quantity.Temperature) },
	"storage.shelf_life":   shelfLifeAnswer,
}

const percent = 100

// answerTo is the answer to a key; to a key that is not known nobody gave one.
func answerTo(f *facts.Facts, key string) answer {
	if of, ok := answers[key]; ok {
		if a := of(f); a.text != "" || a.from != "" {
			return a
		}
	}
	return answer{from: nobodyKnow}
}

// word answers with a word of the spec.
func word[T ~string](g beverage.Given[T]) answer {
	if !g.Known {
		return answer{}
	}
	return answer{text: string(g.V), from: g.Place.String(), basis: beverage.Stated}
}

// figure answers with a figure of the spec, in the base unit of its dimension.
func figure(g beverage.Given[float64], d quantity.Dimension) answer {
	if !g.Known {
		return answer{}
	}
	return answer{text: quantity.Format(g.V, d, digits, quantity.Metric), from: g.Place.String(), basis: beverage.Stated}
}

// reading answers with a measurement.
func reading(g beverage.Given[float64], d quantity.Dimension) answer {
	a := figure(g, d)
	if a.text != "" {
		a.basis = beverage.Measured
	}
	return a
}

// or falls back on what was worked out, which does not answer for a measurement.
func (a answer) or(i beverage.Interval, unit string) answer {
	if a.text != "" || !i.Known() {
		return a
	}
	b := predicted(i, unit)
	b.text, b.short = b.text+", not measured", true
	return b
}

// predicted answers with an interval that was worked out.
func predicted(i beverage.Interval, unit string) answer {
	if !i.Known() {
		return answer{}
	}
	return answer{text: span(i) + unit, from: byModel, basis: beverage.Predicted}
}

func span(i beverage.Interval) string {
	low, high := quantity.Number(i.Low, digits), quantity.Number(i.High, digits)
	if low == high {
		return low
	}
	return low + " to " + high
}

// phAnswer is the measured pH; a prediction is told, and still missing.
func phAnswer(f *facts.Facts) answer {
	m, p := f.PH.Measured, f.PH.Decides
	switch {
	case m.Known():
		return answer{text: fmt.Sprintf("read %.2f, %s with all doubt", f.Drink.Measured.PH.V, phSpan(m)), from: f.Drink.Measured.PH.Place.String(), basis: beverage.Measured}
	case p.Known():
		return answer{text: phSpan(p) + " by the recipe, not measured", from: byModel, basis: beverage.Predicted, short: true}
	}
	return answer{}
}

func phByRecipe(f *facts.Facts) answer {
	if !f.PH.Predicted.Known() {
		return answer{}
	}
	return answer{text: phSpan(f.PH.Predicted), from: byModel, basis: beverage.Predicted}
}

func phSpan(i beverage.Interval) string {
	low, high := i.Outward(2)
	return fmt.Sprintf("%.2f to %.2f", low, high)
}

// shelfLifeAnswer tells a short life in days.
func shelfLifeAnswer(f *facts.Facts) answer {
	g := f.Drink.Storage.ShelfLifeS
	a := figure(g, quantity.Duration)
	if days := g.V / secondsPerDay; g.Known && days < longLifeDays {
		a.text = quantity.Number(days, digits) + " days"
	}
	return a
}

const (
	secondsPerDay = 86400.0
	longLifeDays  = 120 // from which a life is told in months
)

func acidityAnswer(f *facts.Facts) answer {
	g := f.Drink.Measured.Acidity
	if !g.Known {
		return answer{}
	}
	return answer{text: fmt.Sprintf("%s %% as %s", quantity.Number(g.V.Percent, digits), g.V.As), from: g.Place.String(), basis: beverage.Measured}
}

func particlesAnswer(f *facts.Facts) answer {
	g := f.Drink.Particles
	if !g.Known {
		return answer{text: "liquid, no particles", from: byDefault, basis: beverage.Stated}
	}
	return answer{text: "liquid, particles: " + g.V, from: g.Place.String(), basis: beverage.Stated}
}

// ownPHAnswer tells the own pH of the low-acid ingredients: the pH before
// acidification.
func ownPHAnswer(f *facts.Facts) answer {
	var said []string
	short := false
	for _, l := range f.Recipe.Lines {
		if l.Nature != ingredient.LowAcidFood && l.Nature != ingredient.NatureUnknown {
			continue
		}
		if !l.OwnPH.Known() {
			short = true
			continue
		}
		said = append(said, fmt.Sprintf("%s pH %s", l.Line.Name, span(l.OwnPH)))
	}
	return answer{text: strings.Join(said, "; "), from: "own pH of the low-acid ingredients", basis: beverage.Library, short: short}
}

func acidsAnswer(f *facts.Facts) answer {
	var names []string
	for _, l := range f.Recipe.Lines {
		if l.Kind == beverage.KindAcid || l.Nature == ingredient.AcidFood {
			names = append(names, l.Line.Name)
		}
	}
	return answer{text: strings.Join(names, ", "), from: "the recipe", basis: beverage.Stated}
}

func preservativesAnswer(f *facts.Facts) answer {
	var said []string
	short := false
	for _, a := range f.Additives() {
		short = short || !a.AsAdded.Known()
		if a.AsAdded.Known() {
			said = append(said, fmt.Sprintf("%s %s mg/L", strings.Join(a.Names, " and "), span(a.AsAdded)))
		}
	}
	if len(said) == 0 && !short {
		return answer{text: "none", from: "the recipe", basis: beverage.Stated}
	}
	return answer{text: strings.Join(said, "; "), from: "the recipe", basis: beverage.Stated, short: short}
}

func saltAndSugar(f *facts.Facts) answer {
	text := ""
	if s := f.Recipe.SugarGPerL; s.Known() {
		text = "sugars " + span(s) + " g/L"
	}
	if l, ok := f.Line("sodium chloride"); ok && l.GPerL.Known() {
		text += ", salt " + span(l.GPerL) + " g/L"
	}
	return answer{text: text, from: "the recipe", basis: beverage.Stated, short: len(f.Recipe.Unknown) > 0}
}
