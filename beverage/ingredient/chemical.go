package ingredient

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

// part is one component of a make-up with its count in the formula unit.
type part struct {
	component string
	count     float64
}

// parseMakeUp reads "citric:1 sodium:3".
func parseMakeUp(text string) ([]part, error) {
	var out []part
	for _, word := range strings.Fields(text) {
		name, count, ok := strings.Cut(word, ":")
		n, err := strconv.ParseFloat(count, 64)
		if !ok || err != nil || n <= 0 {
			return nil, fmt.Errorf("make-up %q: %q is not component:count", text, word)
		}
		out = append(out, part{strings.ReplaceAll(name, "_", " "), n})
	}
	return out, nil
}

// mineral is an element that figures are kept of.
type mineral struct {
	field, element string
}

var minerals = []mineral{
	{"calcium_percent", "Ca"}, {"magnesium_percent", "Mg"}, {"phosphorus_percent", "P"},
	{"sodium_percent", "Na"}, {"potassium_percent", "K"},
}

// chemical lays a row of the table of pure chemicals over its entry: molar
// mass, shares and everything that follows from the formula alone.
func (l *loader) chemical(r row) error {
	e, err := l.entry(r.get("name"))
	if err != nil {
		return err
	}
	c, err := parseFormula(r.get("formula"))
	if err != nil {
		return err
	}
	if e.MolarMassG, err = c.massG(l.weights); err != nil {
		return err
	}
	e.Formula = r.get("formula")
	if e.StrengthPercent, err = span(r.get("strength_percent")); err != nil {
		return err
	}
	parts, err := parseMakeUp(r.get("make_up"))
	if err != nil {
		return err
	}
	for _, p := range parts {
		e.Shares = append(e.Shares, Share{p.component, p.count / e.MolarMassG})
	}
	l.fromFormula(e, r, c)
	return nil
}

// fromFormula works out the figures that a formula fixes. Chlorine counts only
// as the chloride of the make-up: what is bound to carbon is none.
func (l *loader) fromFormula(e *Entry, r row, c composition) {
	published := l.source(r)
	worked := beverage.Source{Text: "worked out from formula and strength with standard atomic weights", Basis: beverage.Computed}
	e.Figures = append(e.Figures,
		Figure{Field: "formula", Text: e.Formula, Source: published},
		Figure{Field: "molar_mass_g_per_mol", Low: e.MolarMassG, Typical: e.MolarMassG, High: e.MolarMassG, Source: worked})
	l.put(e, "strength_percent", e.StrengthPercent, published, "")
	for _, m := range minerals {
		l.put(e, m.field, e.StrengthPercent.Scale(c[m.element]*l.weights[m.element]/e.MolarMassG), worked, "")
	}
	l.put(e, "chloride_percent", e.AsSold("chloride").Scale(percent*l.weights["Cl"]), worked, "")
	water := hydrateWater(e.Formula) * (2*l.weights["H"] + l.weights["O"]) / e.MolarMassG
	l.put(e, "moisture_percent", moisture(e.StrengthPercent, water), worked, "")
	for _, name := range []string{"protein_percent", "fat_percent", "sugars_percent", "lactose_percent", "caffeine_percent", "polyphenols_percent"} {
		share := 0.0
		if isA(e, name) {
			share = 1 - water
		}
		l.put(e, name, e.StrengthPercent.Scale(share), worked, "")
	}
}

// moisture is the crystal's water and what a liquid's strength leaves.
func moisture(strength beverage.Interval, water float64) beverage.Interval {
	return beverage.Interval{
		Low: percent - strength.High*(1-water), Mid: percent - strength.Mid*(1-water), High: percent - strength.Low*(1-water),
		Basis: beverage.Library,
	}
}

// hydrateWater is the number of H2O after the dot of a formula.
func hydrateWater(formula string) float64 {
	_, water, ok := strings.Cut(formula, ".")
	if !ok || !strings.HasSuffix(water, "H2O") {
		return 0
	}
	n, err := strconv.ParseFloat(strings.TrimSuffix(water, "H2O"), 64)
	if err != nil {
		return 1
	}
	return n
}

// isA tells whether a pure chemical is wholly of the class that a figure counts.
func isA(e *Entry, name string) bool {
	switch name {
	case "sugars_percent":
		return e.Kind == beverage.KindSugar
	case "lactose_percent":
		return strings.HasPrefix(e.Name, "lactose")
	case "caffeine_percent":
		return e.Name == "caffeine"
	}
	return false
}
