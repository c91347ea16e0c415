package assess

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/spec"
)

// line is one key of a random spec: the table it stands in, and whether the law
// on removed keys speaks of it. Whole items (ingredients, readings, targets) and
// keys with a default are no such keys.
type line struct {
	table, key, value string
	removable         bool
}

// randomSpec draws a spec over every table that decides something.
type randomSpec struct {
	lines       []line
	ingredients []string
}

func oneOf(t *rapid.T, label string, values ...string) string {
	return rapid.SampledFrom(values).Draw(t, label)
}

// maybe adds a key with one of the values, or leaves it out.
func (r *randomSpec) maybe(t *rapid.T, table, key string, removable bool, values ...string) {
	if v := oneOf(t, table+"."+key, append([]string{""}, values...)...); v != "" {
		r.lines = append(r.lines, line{table, key, v, removable})
	}
}

var randomIngredients = []string{
	`name = "whey protein isolate, acidified"` + "\n" + `amount = "66 g/L"`,
	`name = "whey protein isolate"` + "\n" + `amount = "8 g/L"`,
	`name = "micellar casein isolate"` + "\n" + `amount = "60 g/L"`,
	`name = "skim milk"` + "\n" + `amount = "500 g/L"`,
	`name = "citric acid"` + "\n" + `amount = "3 g/L"`,
	`name = "phosphoric acid"` + "\n" + `amount = "0.8 g/L"`,
	`name = "sucrose"` + "\n" + `amount = "60 g/L"`,
	`name = "sodium benzoate"` + "\n" + `amount = "180 mg/L"`,
	`name = "potassium sorbate"` + "\n" + `amount = "300 mg/L"`,
	`name = "ascorbic acid"` + "\n" + `amount = "200 mg/L"`,
	`name = "caffeine"` + "\n" + `amount = "300 mg/L"`,
	`name = "calcium carbonate"` + "\n" + `amount = "0.8 g/L"`,
	`name = "sodium caseinate"` + "\n" + `amount = "25 g/L"`,
	`name = "soy protein isolate"` + "\n" + `amount = "40 g/L"`,
	`name = "collagen peptides"` + "\n" + `amount = "20 g/L"`,
	`name = "beta-lactoglobulin isolate"` + "\n" + `amount = "78 g/L"`,
	`name = "whey protein hydrolysate"` + "\n" + `amount = "30 g/L"`,
	`name = "pectin, high methoxyl"` + "\n" + `amount = "3.1 g/L"`,
	`name = "xanthan gum"` + "\n" + `amount = "0.9 g/L"`,
	`name = "calcium lactate"` + "\n" + `amount = "0.5 g/L"`,
	`name = "green tea extract"` + "\n" + `amount = "2 g/L"`,
	`name = "lactose monohydrate"` + "\n" + `amount = "20 g/L"`,
	`name = "apple juice"` + "\n" + `amount = "300 g/L"`,
	`name = "carrot juice"` + "\n" + `amount = "300 g/L"`,
	`name = "barley leaf infusion"` + "\n" + `amount = "20 g/L"` + "\n" + `kind = "extract"` + "\n" + `ph = 5.8` + "\n" + `titratable_acidity = "0.1 % as citric acid"` + "\n" + `acid_food = false`,
	`name = "quillwort essence"` + "\n" + `amount = "1 g/L"`,
}

func drawSpec(t *rapid.T) randomSpec {
	r := randomSpec{}
	n := rapid.IntRange(0, 5).Draw(t, "ingredients")
	for range n {
		r.ingredients = append(r.ingredients, rapid.SampledFrom(randomIngredients).Draw(t, "ingredient"))
	}
	r.lines = append(r.lines, line{"drink", "name", `"Barley trial"`, false})
	r.maybe(t, "drink", "serving", true, `"330 mL"`)
	r.maybe(t, "drink", "alcohol", false, `"0.2 %"`, `"4 %"`)
	r.maybe(t, "drink", "base", true, `"water"`, `"juice"`, `"tea"`, `"milk"`, `"plant"`, `"fermented"`)
	r.maybe(t, "measured", "ph", false, "2.9", "3.4", "3.9", "4.2", "4.5", "4.7", "5.5", "6.8")
	if r.has("measured", "ph") {
		r.maybe(t, "measured", "ph_tolerance", false, "0.02", "0.2", "0.5")
		r.maybe(t, "measured", "ph_method", false, `"meter"`, `"paper"`)
		r.maybe(t, "measured", "ph_temperature", true, `"25 C"`, `"5 C"`)
		r.maybe(t, "measured", "ph_equilibrated", true, `"24 h"`, `"1 h"`)
		r.maybe(t, "measured", "ph_degassed", true, "true", "false")
	}
	r.maybe(t, "measured", "water_activity", false, "0.99", "0.84")
	r.maybe(t, "carbonation", "volumes", false, "2.2", "3.8")
	r.maybe(t, "package", "type", true, `"can"`, `"PET bottle"`, `"heat-set PET bottle"`, `"glass bottle"`, `"carton"`, `"HDPE bottle"`)
	r.maybe(t, "package", "fill", true, `"330 mL"`)
	r.maybe(t, "package", "brimful", true, `"336 mL"`, `"352 mL"`)
	r.maybe(t, "package", "pressure_rating", true, `"0.3 barg"`, `"4 barg"`, `"6.2 barg"`)
	r.maybe(t, "package", "headspace_gas", true, `"nitrogen"`, `"air"`, `"CO2"`)
	r.maybe(t, "process", "route", true, `"hot fill"`, `"tunnel pasteurization"`, `"flash pasteurization"`, `"extended shelf life"`, `"aseptic"`, `"retort"`, `"high pressure"`, `"cold fill"`, `"sterile filtration"`, `"none"`)
	r.maybe(t, "process", "hold_temperature", true, `"63 C"`, `"90 C"`, `"121 C"`, `"139 C"`)
	r.maybe(t, "process", "hold_time", true, `"4 s"`, `"15 min"`)
	r.maybe(t, "process", "fill_temperature", true, `"4 C"`, `"68 C"`, `"86 C"`, `"95 C"`)
	r.maybe(t, "process", "pack_hold_time", true, `"10 s"`, `"3 min"`)
	r.maybe(t, "process", "pack_hold_temperature", true, `"55 C"`, `"84 C"`)
	r.maybe(t, "process", "pressure", true, `"100 MPa"`, `"600 MPa"`)
	r.maybe(t, "process", "filter_pore", true, `"0.2 µm"`, `"1.4 µm"`)
	r.maybe(t, "process", "target", false, `"F0 2 min"`, `"F0 6 min"`, `"15 PU"`, `"15 s at 72 C"`, `"5 log Salmonella enterica"`)
	if r.has("process", "target") {
		r.maybe(t, "process", "log", true, `"testdata/strong.csv"`, `"testdata/border.csv"`)
	}
	r.maybe(t, "storage", "distribution", true, `"ambient"`, `"refrigerated"`, `"frozen"`)
	r.maybe(t, "storage", "temperature", true, `"4 C"`, `"12 C"`, `"30 C"`, `"50 C"`)
	r.maybe(t, "storage", "shelf_life", true, `"8 days"`, `"9 months"`)
	r.maybe(t, "market", "jurisdiction", false, `"US"`, `["US", "EU", "UK"]`)
	return r
}

func (r randomSpec) has(table, key string) bool {
	return slices.ContainsFunc(r.lines, func(l line) bool { return l.table == table && l.key == key })
}

// without returns the spec with line i left out.
func (r randomSpec) without(i int) randomSpec {
	r.lines = slices.Delete(slices.Clone(r.lines), i, i+1)
	return r
}

// set returns the spec with a key added or replaced.
func (r randomSpec) set(table, key, value string) randomSpec {
	r.lines = slices.DeleteFunc(slices.Clone(r.lines), func(l line) bool { return l.table == table && l.key == key })
	r.lines = append(r.lines, line{table, key, value, false})
	return r
}

func (r randomSpec) text(ingredientExtra string) string {
	var b strings.Builder
	for _, table := range []string{"drink", "measured", "carbonation", "package", "process", "storage", "market"} {
		open := false
		for _, l := range r.lines {
			if l.table != table {
				continue
			}
			if !open {
				fmt.Fprintf(&b, "[%s]\n", table)
				open = true
			}
			fmt.Fprintf(&b, "%s = %s\n", l.key, l.value)
		}
	}
	for _, i := range r.ingredients {
		fmt.Fprintf(&b, "[[ingredient]]\n%s\n%s\n", i, ingredientExtra)
	}
	return b.String()
}

// assessed reads and assesses a spec; ok is false where it is no usable input.
func assessed(t *rapid.T, text string) (*beverage.Assessment, bool) {
	d, err := spec.Parse([]byte(text), "trial.toml", ".", spec.Options{})
	if err != nil {
		return nil, false
	}
	a, err := Drink(context.Background(), d, Options{})
	if err != nil {
		t.Fatalf("assess: %v\n%s", err, text)
	}
	return a, true
}

// favour orders classes from the worst.
var favour = map[beverage.Class]int{beverage.LowAcid: 0, beverage.Undecided: 1, beverage.Acidified: 2, beverage.Acid: 3, beverage.Outside: 4}

// routeOrder orders what is said of a route, and of a target, from the worst.
var routeOrder = map[beverage.Fit]int{beverage.DoesNotFit: 0, beverage.FitUnknown: 1, beverage.Fits: 2}

var deliveredOrder = map[beverage.Outcome]int{beverage.FallsShort: 0, beverage.CannotTell: 1, beverage.Meets: 2}

// says names, for a key that may go, the findings one of which then says that it
// is missing: the twin of whatever went with it.
var says = map[string][]string{
	"drink.base":                    {"base-unknown"},
	"measured.ph_temperature":       {"ph-reading-incomplete"},
	"measured.ph_degassed":          {"ph-reading-incomplete"},
	"package.type":                  {"package-unknown"},
	"package.fill":                  {"package-rating-missing"},
	"package.brimful":               {"package-rating-missing"},
	"package.pressure_rating":       {"package-rating-missing"},
	"package.headspace_gas":         {"headspace-gas-unknown"},
	"process.route":                 {"process-missing"},
	"process.hold_temperature":      {"log-disagrees-with-spec", "protein-denatures", "package-rating-missing"},
	"process.hold_time":             {"protein-denatures"},
	"process.fill_temperature":      {"hot-fill-too-cool", "hot-fill-package", "package-rating-missing"},
	"process.pack_hold_time":        {"hot-fill-short-hold"},
	"process.pack_hold_temperature": {"hot-fill-short-hold"},
	"process.log":                   {"log-missing"},
	"storage.distribution":          {"storage-unknown"},
	"storage.temperature":           {"storage-unknown"},
}

// Law 2: a key removed never makes the class more favourable and never takes
// away a stop or a review without the finding that says what is missing.
func TestRemovedKeyNeverHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawSpec(t)
		with, ok := assessed(t, r.text(""))
		if !ok {
			t.Skip("not a usable spec")
		}
		for i, l := range r.lines {
			if !l.removable {
				continue
			}
			without, ok := assessed(t, r.without(i).text(""))
			if !ok {
				continue
			}
			if favour[without.AcidClass.Class] > favour[with.AcidClass.Class] {
				t.Fatalf("without %s.%s the class goes from %v to %v\n%s", l.table, l.key, with.AcidClass.Class, without.AcidClass.Class, r.text(""))
			}
			if id := lost(with, without, says[l.table+"."+l.key]); id != "" {
				t.Fatalf("without %s.%s the finding %s is gone and nothing says what is missing\n%s", l.table, l.key, id, r.text(""))
			}
		}
	})
}

// lost names a stop or review of with that without no longer has, where none of
// the twins says what is missing.
func lost(with, without *beverage.Assessment, twins []string) string {
	now := map[string]beverage.Level{}
	for _, f := range without.Findings {
		if l, ok := now[f.ID]; !ok || f.Level < l {
			now[f.ID] = f.Level
		}
	}
	said := slices.ContainsFunc(twins, func(id string) bool { _, ok := now[id]; return ok })
	for _, f := range with.Findings {
		if said || f.Level == beverage.Note {
			continue
		}
		if l, ok := now[f.ID]; ok && l <= beverage.Review {
			continue
		}
		return f.ID
	}
	return ""
}

// Law 3: a wider tolerance never turns an outcome, a route or the exit status
// to the better.
func TestWiderToleranceNeverHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawSpec(t)
		lo := rapid.Float64Range(0, 1).Draw(t, "narrow")
		hi := lo + rapid.Float64Range(0, 1.5).Draw(t, "wider")
		narrow, wide := r, r
		ingredient := [2]string{}
		switch oneOf(t, "tolerance", "ph", "fill", "amount") {
		case "ph":
			if !r.has("measured", "ph") {
				t.Skip("no pH")
			}
			narrow, wide = r.set("measured", "ph_tolerance", fmt.Sprint(lo)), r.set("measured", "ph_tolerance", fmt.Sprint(hi))
		case "fill":
			narrow, wide = r.set("package", "fill_tolerance", fmt.Sprintf(`"%g mL"`, 3*lo)), r.set("package", "fill_tolerance", fmt.Sprintf(`"%g mL"`, 3*hi))
		case "amount":
			ingredient = [2]string{fmt.Sprintf(`amount_tolerance = "%g %%"`, 10*lo), fmt.Sprintf(`amount_tolerance = "%g %%"`, 10*hi)}
		}
		a, ok1 := assessed(t, narrow.text(ingredient[0]))
		b, ok2 := assessed(t, wide.text(ingredient[1]))
		if !ok1 || !ok2 {
			t.Skip("not a usable spec")
		}
		if ExitStatus(b, false) < ExitStatus(a, false) {
			t.Fatalf("exit status falls from %d to %d\n%s", ExitStatus(a, false), ExitStatus(b, false), wide.text(ingredient[1]))
		}
		for i := range a.Routes {
			if routeOrder[b.Routes[i].Outcome] > routeOrder[a.Routes[i].Outcome] {
				t.Fatalf("%s goes from %v to %v\n%s", a.Routes[i].Route, a.Routes[i].Outcome, b.Routes[i].Outcome, wide.text(ingredient[1]))
			}
		}
		if a.Package != nil && b.Package != nil && deliveredOrder[b.Package.Outcome] > deliveredOrder[a.Package.Outcome] {
			t.Fatalf("pack pressure goes from %v to %v\n%s", a.Package.Outcome, b.Package.Outcome, wide.text(ingredient[1]))
		}
	})
}
