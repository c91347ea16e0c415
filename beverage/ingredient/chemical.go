package ingredient

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

// component is what make-ups are written in: an acid, a base or an ion. What
// has no constants of its own in a charge balance stands in for by another.
type component struct {
	formula string  // the acid, the neutral form, or the ion with its hydroxide or hydrogen
	counts  string  // name in the charge balance
	times   float64 // how many of it
}

func (t *tables) component(line row) error {
	r, err := line.read()
	if err != nil {
		return err
	}
	times, err := strconv.ParseFloat(r.get("times"), 64)
	t.components[r.get("name")] = component{formula: r.get("formula"), counts: r.get("counts_as"), times: times}
	return err
}

// part is one component of a make-up with its count in the formula unit.
type part struct {
	component string
	count     float64
}

// parseMakeUp reads "citric:1 sodium:3"; an underscore is a space.
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

// chemical lays a row of the table of pure chemicals over its entry: molar
// mass, shares and everything that follows from the formula alone.
func (t *tables) chemical(e *Entry, line row) error {
	r, err := line.read()
	if err != nil {
		return err
	}
	e.Formula = r.get("formula")
	if e.atoms, err = parseFormula(e.Formula); err != nil {
		return err
	}
	if e.MolarMassG, err = e.atoms.massG(t.weights); err != nil {
		return err
	}
	parts, err := parseMakeUp(r.get("make_up"))
	if err != nil {
		return err
	}
	for _, p := range parts {
		c, ok := t.components[p.component]
		if !ok {
			return fmt.Errorf("%s: component %q is not known", e.Name, p.component)
		}
		e.Shares = append(e.Shares, Share{c.counts, p.count * c.times / e.MolarMassG})
	}
	return t.describe(e, r)
}

// describe gives a chemical its published figures and those that follow.
func (t *tables) describe(e *Entry, r record) error {
	src := t.source(r)
	e.Figures = append(e.Figures, Figure{Field: "formula", Text: e.Formula, Source: src})
	m, err := strconv.ParseFloat(r.get("molar_mass_g_per_mol"), 64)
	if err != nil {
		return err
	}
	e.Figures = append(e.Figures, Figure{Field: "molar_mass_g_per_mol", Low: m, Typical: m, High: m, Source: src})
	if err := e.putCell("strength_percent", r.get("strength_percent"), t.strengthSource(r.get("strength_percent")), ""); err != nil {
		return err
	}
	e.masses = t.weights
	for f, v := range e.fromFormula() {
		e.put(f, v, workedOut, "")
	}
	return nil
}

// strengthSource: solids are sold as good as pure, liquids at what the trade has.
func (t *tables) strengthSource(cell string) beverage.Source {
	if cell == "100" {
		return beverage.Source{Text: t.sources["food-grade"], Basis: beverage.CommonPractice}
	}
	return beverage.Source{Text: t.sources["trade"], Basis: beverage.Memory}
}

var workedOut = beverage.Source{Text: "worked out from formula and strength with standard atomic weights", Basis: beverage.Computed}

// fromFormula yields the figures that a formula and a strength fix. Chlorine
// counts only as the chloride of the make-up: what is bound to carbon is none.
func (e *Entry) fromFormula() func(yield func(field, beverage.Interval) bool) {
	water := e.hydrateWater()
	return func(yield func(field, beverage.Interval) bool) {
		for _, f := range fields {
			var v beverage.Interval
			switch {
			case f.element != "":
				v = e.StrengthPercent.Scale(e.atoms[f.element] * e.masses[f.element] / e.MolarMassG)
			case f.name == "chloride_percent":
				v = e.chloride()
			case f.name == "moisture_percent" && e.Formula == "H2O":
				v = e.StrengthPercent
			case f.name == "moisture_percent":
				v = left(e.StrengthPercent, water)
			case f.whole != nil && f.whole(e):
				v = e.StrengthPercent.Scale(1 - water)
			case f.whole != nil:
				v = beverage.Point(0, beverage.Library)
			default:
				continue
			}
			if !yield(f, v) {
				return
			}
		}
	}
}

func (e *Entry) chloride() beverage.Interval {
	if c := e.AsSold("chloride"); c.Known() {
		return c.Scale(percent * e.masses["Cl"])
	}
	return beverage.Point(0, beverage.Library)
}

// left is the water that a strength leaves, with the crystal's own.
func left(strength beverage.Interval, water float64) beverage.Interval {
	dry := strength.Scale(1 - water)
	return beverage.Interval{Low: percent - dry.High, Mid: percent - dry.Mid, High: percent - dry.Low, Basis: beverage.Library}
}

// hydrateWater is the mass of the crystal's water in one mass of substance.
func (e *Entry) hydrateWater() float64 {
	_, water, ok := strings.Cut(e.Formula, ".")
	if !ok || !strings.HasSuffix(water, "H2O") {
		return 0
	}
	n, err := strconv.ParseFloat(strings.TrimSuffix(water, "H2O"), 64)
	if err != nil {
		n = 1
	}
	return n * (2*e.masses["H"] + e.masses["O"]) / e.MolarMassG
}

// dilute sets the strength that a name or a spec states. What the formula fixes
// follows from it; an own pH and a density of another strength do not hold.
func (e *Entry) dilute(strength beverage.Interval, src beverage.Source) {
	if e.atoms == nil || strength == e.StrengthPercent {
		return
	}
	e.ActiveFraction *= strength.High / max(e.StrengthPercent.High, 1)
	e.StrengthPercent, e.OwnPH, e.OwnPHAtPercent, e.DensityGPerML = strength, beverage.Interval{}, beverage.Interval{}, beverage.Interval{}
	kept := e.Figures[:0]
	for _, f := range e.Figures {
		if f.Text != "" || f.Field == "molar_mass_g_per_mol" {
			kept = append(kept, f)
		}
	}
	e.Figures = append(kept, Figure{Field: "strength_percent", Low: strength.Low, Typical: strength.Mid, High: strength.High, Source: src})
	for f, v := range e.fromFormula() {
		*f.of(e) = beverage.Interval{}
		e.put(f, v, workedOut, "")
	}
}

// sharesFromMinerals counts a salt of no one formula by its metals, its chloride
// and its phosphorus as phosphate. An anion that nobody gave counts as hydroxide:
// that raises a predicted pH, the cautious way.
func (e *Entry) sharesFromMinerals(weights map[string]float64) {
	if len(e.Shares) > 0 || e.Kind != beverage.KindSalt && e.Kind != beverage.KindMineral || !hasMetal(*e) {
		return
	}
	for _, ion := range []struct {
		component, element string
		pct                beverage.Interval
	}{
		{"calcium", "Ca", e.Calcium}, {"magnesium", "Mg", e.Magnesium}, {"sodium", "Na", e.Sodium}, {"potassium", "K", e.Potassium},
		{"chloride", "Cl", e.Chloride}, {"phosphoric", "P", e.Phosphorus},
	} {
		if ion.pct.Known() && ion.pct.Mid > 0 {
			e.Shares = append(e.Shares, Share{ion.component, ion.pct.Mid / percent / weights[ion.element]})
		}
	}
	e.StrengthPercent = beverage.Point(percent, beverage.Library)
}

// preservative gives the group that limits speak of and the active part of what
// is sold. Without a formula the substance counts as wholly active.
func (t *tables) preservative(e *Entry, line row) error {
	r, err := line.read()
	if err != nil {
		return err
	}
	e.Preservative, e.ActiveFraction = r.get("preservative"), 1
	src := t.source(r)
	if text := r.get("active"); text != "" {
		active, err := parseFormula(text)
		if err != nil {
			return err
		}
		mass, err := active.massG(t.weights)
		if err != nil {
			return err
		}
		count, err := strconv.ParseFloat(r.get("count"), 64)
		if err != nil {
			return err
		}
		e.ActiveFraction = count * mass / e.MolarMassG
	}
	pct := percent * e.ActiveFraction
	e.Figures = append(e.Figures, Figure{Field: "active_percent", Low: pct, Typical: pct, High: pct, Source: src, Note: r.get("note")})
	return nil
}
