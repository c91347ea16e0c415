package rule

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "carbonated-protein-foam", Level: note,
	Title: "A carbonated protein drink foams and may gush on opening",
	Means: "Protein steadies the bubbles that leave the drink, most near its isoelectric pH: it foams when filled and gushes when opened, and fill heights scatter. Deeply cut protein foams as much, for a shorter time. Gushing grows with the gas that must leave, so with volumes and with warmth, and with what bubbles start on: shaking, air or nitrogen in the drink, haze, fibres and flocks.",
	Clear: "Fill cold and slowly with counter-pressure, hydrate the protein with low shear, let air out, fewer volumes, more headspace, an antifoam where the market permits it; open warm and shaken packs in trials.",
	Law:   []string{"carbonated-protein-foam.science", "us-antifoam", "eu-antifoam", "codex-antifoam", "uk-antifoam", "ca-antifoam", "anz-antifoam"},
	Check: func(f *facts.Facts) []Hit {
		w := windowOf("foam-gas")
		names, gPerL := steadying(f)
		if !f.Carbonated() || len(names) == 0 || gPerL.Known() && gPerL.High < w.ProteinGL.Low {
			return nil
		}
		gas := f.Gas.Volumes
		if gas.Known && !w.Span.Stands(beverage.Point(gas.V, beverage.Stated)).MayBeInside() {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s, %s; %s", listWords(names), foamGasWords(f), antifoamWords(f)), Values: phValues(f)}
		h.Values["protein_g_per_l"] = gPerL.MidOrNil()
		return []Hit{windowed(w, h)}
	},
})

// foamGasWords is the gas, and how much of it leaves on opening cold and warm.
func foamGasWords(f *facts.Facts) string {
	if !f.Gas.Volumes.Known {
		return "volumes not given"
	}
	words := fmt.Sprintf("%.2g volumes", f.Gas.Volumes.V)
	cold, warm := f.GasLeaving(coldOpeningC), f.GasLeaving(warmOpeningC)
	if !cold.Known() || !warm.Known() {
		return words
	}
	return words + fmt.Sprintf(", of which %.1f must leave when opened at %.0f °C and %.1f at %.0f °C", cold.Mid, coldOpeningC, warm.Mid, warmOpeningC)
}

// What a pack is opened at from the refrigerator and on a hot day: common
// practice, no source.
const coldOpeningC, warmOpeningC = 4.0, 30.0

// antifoamWords tells what each market lets an antifoam be, the kinds of drink that
// this one may be side by side.
func antifoamWords(f *facts.Facts) string {
	drink := f.AdditiveDrink()
	var each []string
	for _, m := range f.Drink.Markets {
		r := law.Rule(law.Antifoam, m, drink)
		words := siliconeAllowed(r.Lenient)
		if strict := siliconeAllowed(r.Strict); strict != words {
			words += ", " + strict
		}
		each = append(each, fmt.Sprintf("%s %s%s", m, words, doubtWords(r.Doubt)))
	}
	return "silicone antifoam allowed: " + strings.Join(each, "; ")
}

func siliconeAllowed(limit law.AdditiveLimit) string {
	switch limit.Permitted {
	case law.NotPermitted:
		return fmt.Sprintf("none in %s", limit.Category)
	case law.PermittedToLimit:
		return fmt.Sprintf("%.0f mg/L in %s", limit.LimitMGPerL, limit.Category)
	case law.PermittedGMP:
		return fmt.Sprintf("what the effect needs in %s", limit.Category)
	}
	return fmt.Sprintf("no text is held here for %s", limit.Category)
}

// steadying are the ingredients whose protein may steady foam, those whose protein
// nobody knows among them, with what they bring; unknown where one's is. Traces in
// juices and extracts are no such protein.
func steadying(f *facts.Facts) (names []string, gPerL beverage.Interval) {
	gPerL = beverage.Point(0, beverage.Predicted)
	for _, k := range families(f) {
		names, gPerL = append(names, k.names...), gPerL.Plus(k.gPerL)
	}
	for _, l := range f.Recipe.Lines {
		if unknownProtein(f, l) != "" {
			names, gPerL = append(names, l.Line.Name), beverage.Interval{}
		}
	}
	return names, gPerL
}
