package ingredient

import (
	"maps"
	"math"
	"slices"
	"testing"
)

// near is written so that a NaN fails.
func near(got, want, allowed float64) bool { return math.Abs(got-want) <= allowed }

// chemicals calls do with the record of every pure chemical and its entry.
func chemicals(t *testing.T, do func(r record, e Entry)) {
	t.Helper()
	n := 0
	err := eachRow("chemicals.csv", func(line row) error {
		r, err := line.read()
		if err != nil {
			return err
		}
		e, ok := Default().Lookup(line.name())
		if !ok || e.Name != line.name() {
			t.Errorf("%q resolves to %q, %v", line.name(), e.Name, ok)
			return nil
		}
		n++
		do(r, e)
		return nil
	})
	if err != nil || n < 130 {
		t.Fatal(n, err)
	}
}

// TestMolarMassIsThatOfTheFormula holds published molar masses against formulas.
// Allowed is half a unit of the second decimal of the older atomic weights they
// rest on: 0.02, or 0.05 % where the source prints one decimal.
func TestMolarMassIsThatOfTheFormula(t *testing.T) {
	chemicals(t, func(r record, e Entry) {
		want, err := span(r.get("molar_mass_g_per_mol"))
		if err != nil {
			t.Errorf("%s: %v", e.Name, err)
		}
		if !near(e.MolarMassG, want.Mid, max(0.02, 5e-4*want.Mid)) {
			t.Errorf("%s: %s weighs %.3f, published %.2f", e.Name, e.Formula, e.MolarMassG, want.Mid)
		}
	})
}

// balance is what water cannot change: the atoms but hydrogen and oxygen, and
// hydrogen less twice the oxygen.
func balance(t *testing.T, formula string) composition {
	t.Helper()
	c, err := parseFormula(formula)
	if err != nil {
		t.Fatal(err)
	}
	c["H-2O"] = c["H"] - 2*c["O"]
	delete(c, "H")
	delete(c, "O")
	return c
}

// TestMakeUpIsTheFormula: acids, hydroxides and hydrogen halides of the make-up
// give the formula with no atom left over but those of water. This is mass and
// charge balance in one: a salt with one sodium too few would miss a hydrogen.
func TestMakeUpIsTheFormula(t *testing.T) {
	chemicals(t, func(r record, e Entry) {
		parts, err := parseMakeUp(r.get("make_up"))
		if err != nil {
			t.Fatal(err)
		}
		sum := composition{}
		for _, p := range parts {
			if f := Default().facts.components[p.component].formula; f != "" {
				sum.add(balance(t, f), p.count)
			}
		}
		if rest := r.get("rest"); rest != "" {
			sum.add(balance(t, rest), 1)
		}
		want := balance(t, e.Formula)
		for _, element := range slices.Sorted(maps.Keys(union(sum, want))) {
			if !near(sum[element], want[element], 1e-9) {
				t.Errorf("%s: %s of %s: make-up %g, formula %g", e.Name, element, e.Formula, sum[element], want[element])
			}
		}
	})
}

func union(a, b composition) composition {
	c := maps.Clone(a)
	maps.Copy(c, b)
	return c
}

// TestMetalPerGram: what a gram brings of each metal is the same by share, by
// mineral figure and by formula, for every hydrate and strength.
func TestMetalPerGram(t *testing.T) {
	metals := []struct {
		component, element string
		figure             func(Entry) float64
	}{
		{"sodium", "Na", func(e Entry) float64 { return e.Sodium.Mid }},
		{"potassium", "K", func(e Entry) float64 { return e.Potassium.Mid }},
		{"calcium", "Ca", func(e Entry) float64 { return e.Calcium.Mid }},
		{"magnesium", "Mg", func(e Entry) float64 { return e.Magnesium.Mid }},
	}
	chemicals(t, func(_ record, e Entry) {
		if e.Name == "water" { // the drinking water of the tables, not H2O alone
			return
		}
		c, err := parseFormula(e.Formula)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range metals {
			perGram := c[m.element] / e.MolarMassG
			strength := e.StrengthPercent.Mid / 100
			if got := e.AsSold(m.component).Mid; !near(got, perGram*strength, 1e-12) {
				t.Errorf("%s: %g mol/g of %s, formula %g", e.Name, got, m.component, perGram*strength)
			}
			if got := m.figure(e); !near(got, 100*perGram*strength*Default().facts.weights[m.element], 1e-9) {
				t.Errorf("%s: %g %% %s, formula %g", e.Name, got, m.component, 100*perGram*strength*Default().facts.weights[m.element])
			}
		}
	})
}

// TestLookAlikesDiffer holds the pairs that recipes mix up against values worked
// out by hand from molar masses: mmol of acid or metal in a gram as sold.
func TestLookAlikesDiffer(t *testing.T) {
	for _, c := range []struct {
		name, component string
		mmolPerG        float64
	}{
		{"citric acid", "citric", 1000 / 192.12},
		{"citric acid monohydrate", "citric", 1000 / 210.14},
		{"sodium citrate", "sodium", 3000 / 258.07},
		{"trisodium citrate dihydrate", "sodium", 3000 / 294.10},
		{"trisodium citrate dihydrate", "citric", 1000 / 294.10},
		{"potassium citrate", "potassium", 3000 / 306.40},
		{"tripotassium citrate monohydrate", "potassium", 3000 / 324.41},
		{"potassium dihydrogen citrate", "potassium", 1000 / 230.21},
		{"phosphoric acid", "phosphoric", 1000 / 97.995},
		{"phosphoric acid 75 %", "phosphoric", 750 / 97.995},
		{"phosphoric acid 85 %", "phosphoric", 850 / 97.995},
		{"lactic acid", "lactic", 1000 / 90.08},
		{"lactic acid 88 %", "lactic", 880 / 90.08},
		{"gluconic acid 50 %", "gluconic", 500 / 196.16},
		{"glucono-delta-lactone", "gluconic", 1000 / 178.14},
		{"sodium lactate 60 %", "sodium", 600 / 112.06},
		{"calcium lactate", "calcium", 1000 / 218.22},
		{"calcium lactate pentahydrate", "calcium", 1000 / 308.30},
		{"calcium chloride", "chloride", 2000 / 110.98},
		{"calcium chloride dihydrate", "chloride", 2000 / 147.01},
		{"magnesium chloride hexahydrate", "magnesium", 1000 / 203.30},
		{"magnesium citrate", "magnesium", 3000 / 451.11},
		{"trimagnesium citrate, anhydrous", "magnesium", 3000 / 451.11},
		{"magnesium citrate nonahydrate", "magnesium", 3000 / 613.25},
		{"magnesium citrate, dibasic", "magnesium", 1000 / 214.41},
		{"tricalcium citrate", "calcium", 3000 / 498.43},
		{"tricalcium citrate tetrahydrate", "calcium", 3000 / 570.49},
		{"tricalcium phosphate", "phosphoric", 3000 / 502.31},
		{"disodium phosphate", "phosphoric", 1000 / 141.96},
		{"disodium phosphate dihydrate", "phosphoric", 1000 / 177.99},
		{"sodium hexametaphosphate", "polyphosphate", 6000 / 611.77},
		{"sodium benzoate", "benzoic", 1000 / 144.11},
		{"potassium benzoate", "benzoic", 1000 / 160.21},
		{"potassium sorbate", "sorbic", 1000 / 150.22},
		{"sodium metabisulfite", "sulfurous", 2000 / 190.11},
		{"calcium disodium EDTA", "edta", 1000 / 374.27},
		{"calcium disodium EDTA dihydrate", "calcium", 1000 / 410.30},
		{"hydrochloric acid", "chloride", 1000 / 36.46},
		{"sodium hydroxide", "sodium", 1000 / 40.00},
		{"thiamin hydrochloride", "chloride", 2000 / 337.27},
	} {
		e, ok := Default().Lookup(c.name)
		if got := 1000 * e.AsSold(c.component).Mid; !ok || !near(got, c.mmolPerG, 5e-4*c.mmolPerG) {
			t.Errorf("%s: %.4f mmol/g of %s, want %.4f", c.name, got, c.component, c.mmolPerG)
		}
	}
}

// TestActivePart: limits speak of the free acid or of SO2 (EU and Codex), and a
// wrong factor would let a third more through.
func TestActivePart(t *testing.T) {
	for name, want := range map[string]float64{
		"sodium benzoate": 122.12 / 144.11, "potassium benzoate": 122.12 / 160.21, "potassium sorbate": 112.13 / 150.22,
		"sodium metabisulfite": 2 * 64.06 / 190.11, "potassium metabisulfite": 2 * 64.06 / 222.33, "sodium sulfite": 64.06 / 126.04,
		"sulfur dioxide": 1, "sorbic acid": 1, "benzoic acid": 1, "dimethyl dicarbonate": 1, "nisin": 1, "natamycin": 1, "glycolipids": 1, "lauric arginate": 1,
	} {
		e, ok := Default().Lookup(name)
		if !ok || !near(e.ActiveFraction, want, 5e-4) {
			t.Errorf("%s: active part %.4f, want %.4f", name, e.ActiveFraction, want)
		}
	}
}

// TestHydrateWater: the crystal's water is moisture, and the rest is sugar.
func TestHydrateWater(t *testing.T) {
	for name, want := range map[string]float64{"glucose monohydrate": 9.09, "citric acid monohydrate": 8.57, "trehalose dihydrate": 9.52, "magnesium chloride hexahydrate": 53.2, "phosphoric acid 75 %": 25, "sucrose": 0, "water": 100} {
		e, _ := Default().Lookup(name)
		if !near(e.Moisture.Mid, want, 0.05) {
			t.Errorf("%s: moisture %.3f %%, want %.2f", name, e.Moisture.Mid, want)
		}
		if name == "glucose monohydrate" && !near(e.Sugars.Mid, 100-want, 0.05) {
			t.Errorf("%s: sugars %.3f %%", name, e.Sugars.Mid)
		}
	}
}

func TestParseFormula(t *testing.T) {
	for text, want := range map[string]composition{
		"H2O":               {"H": 2, "O": 1},
		"Ca3(C6H5O7)2.4H2O": {"Ca": 3, "C": 12, "H": 18, "O": 18},
		"Ca5(PO4)3OH":       {"Ca": 5, "P": 3, "O": 13, "H": 1},
		"2CH4O":             {"C": 2, "H": 8, "O": 2},
	} {
		got, err := parseFormula(text)
		if err != nil || !maps.Equal(got, want) {
			t.Errorf("%s: %v, %v; want %v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"":                    `formula "" cannot be read at position 1`,
		"Na(":                 `formula "Na(" cannot be read at position 4`,
		"(Na":                 `formula "(Na" cannot be read at position 4`,
		"Na)":                 `formula "Na)" cannot be read at position 3`,
		"na":                  `formula "na" cannot be read at position 1`,
		"H2O.":                `formula "H2O." cannot be read at position 5`,
		"(((((((((H)))))))))": `formula "(((((((((H)))))))))" cannot be read at position 9`,
	} {
		if _, err := parseFormula(text); err == nil || err.Error() != want {
			t.Errorf("%q: error %v, want %s", text, err, want)
		}
	}
	if _, err := (composition{"Xx": 1}).massG(Default().facts.weights); err == nil || err.Error() != `element "Xx" is not in the table of atomic weights` {
		t.Error(err)
	}
}

func TestSpan(t *testing.T) {
	for text, want := range map[string][3]float64{"1.2": {1.2, 1.2, 1.2}, "1..2": {1, 1.5, 2}, "1..1.4..2": {1, 1.4, 2}, "-1..0": {-1, -0.5, 0}} {
		v, err := span(text)
		if err != nil || [3]float64{v.Low, v.Mid, v.High} != want || !v.Known() {
			t.Errorf("%s: %v, %v", text, v, err)
		}
	}
	for text, want := range map[string]string{
		"":           `"" is not a figure: write 1.2, 1..2 or 1..1.4..2`,
		"1,2":        `"1,2" is not a figure: write 1.2, 1..2 or 1..1.4..2`,
		"2..1":       `"2..1" does not rise: write the low end first`,
		"NaN":        `"NaN" does not rise: write the low end first`,
		"1..2..3..4": `"1..2..3..4" is not a figure: write 1.2, 1..2 or 1..1.4..2`,
	} {
		if _, err := span(text); err == nil || err.Error() != want {
			t.Errorf("%q: error %v, want %s", text, err, want)
		}
	}
}

func TestCells(t *testing.T) {
	for line, want := range map[string][]string{
		`a,b,c`: {"a", "b", "c"}, `,`: {"", ""}, `"a, b",c`: {"a, b", "c"}, `"say ""so""",x,`: {`say "so"`, "x", ""}, `"open`: {"open"},
	} {
		if got := cells(line); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", line, got, want)
		}
	}
}
