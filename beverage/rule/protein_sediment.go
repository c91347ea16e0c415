package rule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/protein"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "protein-sediment", Level: note,
	Title: "The drink may throw a sediment in its life",
	Means: "Sterilized milk drinks settle over months, sooner when warm, below pH 6.65 or with much phosphate; plant protein settles without a suspending gum, and calcium that does not dissolve goes with it.",
	Clear: "Homogenize, keep the pH at 6.7 or above, suspend with gellan or carrageenan, grind minerals fine; keep samples over the whole life at its temperature.",
	Law:   []string{"protein-sediment.science"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		if h, ok := settlesAsMilk(f); ok {
			hits = append(hits, h)
		}
		for _, k := range families(f) {
			if h, ok := settlesUndissolved(f, k); ok {
				hits = append(hits, h)
			}
		}
		return hits
	},
})

// settlesAsMilk speaks of sterilized casein drinks whose life may outlast what was
// published, or whose pH, phosphate or calcium hastens sediment.
func settlesAsMilk(f *facts.Facts) (Hit, bool) {
	k, ok := caseins(f)
	direct := windowOf("heat-low-ph")
	if !ok || !k.mayReach(proteinLimit("protein_least")) || !nearNeutral(f) || !mayReachC(f, windowOf("heat-calcium-ion").TempC.Low) {
		return Hit{}, false
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, %s%s", k.words(), phWords(f), lifeWords(f), slowWords(f)+suspendedWords(f)+stokesWords(f, k)), Values: proteinValues(f, k)}
	switch harm := windowOf("calcium-chelator-harm"); {
	case direct.Span.Stands(f.PH.Decides).MayBeInside() && f.Process.HoldsInTube():
		return windowed(direct, h), true
	case f.PhosphateGPerL().High >= harm.Span.Low && k.mayReach(proteinLimit("milk_protein_most")):
		return windowed(harm, h), true
	}
	w := windowOf("sed-uht")
	const secondsPerWeek = 7 * 86400
	life := f.Drink.Storage.ShelfLifeS
	return windowed(w, h), !f.Cold() && (!life.Known || life.V >= w.Span.Low*secondsPerWeek)
}

// settlesUndissolved speaks of plant protein and egg white of which a share does not
// dissolve at the drink's pH, and that no gum suspends.
func settlesUndissolved(f *facts.Facts, k kept) (Hit, bool) {
	soluble, source := leastSoluble(f, k)
	if k.family != protein.FamilyPlant && k.family != protein.FamilyEgg || !k.mayReach(proteinLimit("protein_least")) || suspended(f) {
		return Hit{}, false
	}
	if soluble.Known() && soluble.Low >= proteinLimit("dissolved_least") {
		return Hit{}, false
	}
	share := "what share of it dissolves is not held for this pH"
	if soluble.Known() {
		share = fmt.Sprintf("%.0f to %.0f %% of it stays dissolved unheated in little salt, by a map from reviews", soluble.Low, soluble.High)
	}
	h := Hit{Detail: fmt.Sprintf("%s, %s, no gum in its suspending dose%s: %s%s", k.words(), phWords(f), slowWords(f), share, stokesWords(f, k)), Values: proteinValues(f, k), Source: source}
	h.Values["soluble_percent_low"], h.Values["soluble_percent_high"] = soluble.LowOrNil(), soluble.HighOrNil()
	if w := windowOf("sed-soy-native"); ofSoy(k) && w.Span.Stands(f.PH.Decides).MayBeInside() {
		return windowed(w, h), true
	}
	gum := windowOf("sed-plant")
	h.Detail = fmt.Sprintf("%s; what moves it: %s (%s), a pH farther from where it is least soluble.", upper(h.Detail), gum.Moves, spanWords(gum))
	if source.Text == "" {
		h.Source = gum.Source
	}
	return h, true
}

// leastSoluble is the map's answer for the part that dissolves least.
func leastSoluble(f *facts.Facts, k kept) (least beverage.Interval, source beverage.Source) {
	for _, p := range k.parts {
		s, from, ok := p.Composition.Solubility(f.PH.Decides)
		if !ok {
			return beverage.Interval{}, beverage.Source{}
		}
		if !least.Known() || s.Low < least.Low {
			least, source = s, from
		}
	}
	return least, source
}

func ofSoy(k kept) bool {
	return slices.ContainsFunc(k.parts, func(p *facts.ProteinPart) bool { return p.Composition.ID() == "soy" })
}

// The particles that are told of: small ones that stay for weeks, large ones that
// lie at the bottom the next day.
const (
	smallUM, largeUM = 1.0, 10.0
	waterMilliPaS    = 1.0 // at 20 °C: nothing that flows is thinner
)

// stokesWords is how fast lone particles settle in the drink, by Stokes's law, at
// the thinnest that it may be.
func stokesWords(f *facts.Facts, k kept) string {
	density, _, ok := protein.ParticleDensity(k.family)
	drink := f.Recipe.DensityGPerML
	if !ok || !drink.Known() {
		return ""
	}
	thin := f.Drink.Measured.ViscosityMilliPa.Or(waterMilliPaS)
	speed := func(um float64) string {
		return twoDigits(math.Max(0, protein.SettlingMMPerDay(um, density.High, drink.Low, thin)))
	}
	return fmt.Sprintf("; by Stokes a lone particle of %.0f µm sinks up to %s mm a day, of %.0f µm up to %s", smallUM, speed(smallUM), largeUM, speed(largeUM))
}

// twoDigits writes a figure as well as an estimate is known.
func twoDigits(v float64) string {
	if v == 0 {
		return "0"
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return quantity.Number(math.Round(v/unit)*unit, 2)
}

// suspendedWords names carrageenan in the dose that is published to suspend milk.
func suspendedWords(f *facts.Facts) string {
	w := windowOf("gum-carrageenan-milk")
	for _, l := range f.Gums() {
		if strings.Contains(l.Name, "carrageenan") && w.Span.Stands(l.GPerL).SurelyInside() {
			return ", " + l.Line.Name + " in the dose that suspends part of it"
		}
	}
	return ""
}

// suspended tells whether a gum is there in the least dose that is published to
// suspend plant protein.
func suspended(f *facts.Facts) bool {
	least := windowOf("sed-plant").Span.Low
	sum := beverage.Point(0, beverage.Predicted)
	for _, l := range f.Gums() {
		if l.GPerL.Known() {
			sum = sum.Plus(l.GPerL)
		}
	}
	return sum.Low >= least
}

// slowWords names the calcium that dissolves little and settles with the rest.
func slowWords(f *facts.Facts) string {
	if slow := f.SlowCalcium(); len(slow) > 0 {
		return ", with " + listWords(slow) + " that dissolves little"
	}
	return ""
}

// lifeWords tells the shelf life, or that it is not given.
func lifeWords(f *facts.Facts) string {
	const secondsPerMonth = 30.4375 * 86400
	if l := f.Drink.Storage.ShelfLifeS; l.Known {
		return fmt.Sprintf("a life of %.2g months", l.V/secondsPerMonth)
	}
	return "a life that is not given"
}
