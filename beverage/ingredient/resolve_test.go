package ingredient

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func say[T any](v T) beverage.Given[T] { return beverage.Say(v) }

func line(name string, d beverage.Description) beverage.Ingredient {
	return beverage.Ingredient{Name: name, Described: d}
}

func resolveOne(name string, d beverage.Description, own ...beverage.Ingredient) Resolved {
	return Default().Resolve([]beverage.Ingredient{line(name, d)}, own)[0]
}

func acidity(pct float64, as string) beverage.Given[beverage.Acidity] {
	return say(beverage.Acidity{Percent: pct, As: as})
}

// TestDescribed: what an ingredient outside the library needs to be counted.
func TestDescribed(t *testing.T) {
	for name, c := range map[string]struct {
		d    beverage.Description
		want bool
	}{
		"oolong tea extract": {beverage.Description{Kind: say(beverage.KindExtract), PH: say(5.9), Acidity: acidity(0.1, "citric acid"), Brix: say(50.0), AcidFood: say(false)}, true},
		"quince puree":       {beverage.Description{Kind: say(beverage.KindJuice), PH: say(3.1), Acidity: acidity(6.5, "citric acid"), Brix: say(65.0)}, true},
		"rowan berry juice":  {beverage.Description{Kind: say(beverage.KindJuice), PH: say(3.1)}, false},
		"lupin protein":      {beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(85.0)}, true},
		"hemp protein":       {beverage.Description{Kind: say(beverage.KindProtein)}, false},
		"tonic acid blend":   {beverage.Description{Kind: say(beverage.KindAcid)}, false},
		"marine mineral mix": {beverage.Description{Kind: say(beverage.KindMineral), CalciumPercent: say(30.0)}, true},
		"mystery mineral":    {beverage.Description{Kind: say(beverage.KindMineral)}, false},
		"rosehip flavour":    {beverage.Description{Kind: say(beverage.KindFlavour)}, true},
		"calcium sorbate":    {beverage.Description{Kind: say(beverage.KindPreservative)}, true},
		"shelf-life booster": {beverage.Description{Kind: say(beverage.KindPreservative)}, false},
		"goat milk":          {beverage.Description{Kind: say(beverage.KindOther), PH: say(6.6)}, true},
		"sloe something":     {beverage.Description{}, false},
		"sloe syrup":         {beverage.Description{PH: say(3.0), Acidity: acidity(1, "malic acid")}, false},
	} {
		r := resolveOne(name, c.d)
		if r.Found || r.Described != c.want || r.Name != name {
			t.Errorf("%s: found %v, described %v, named %q; want described %v", name, r.Found, r.Described, r.Name, c.want)
		}
		if r.Described && len(r.Near) > 0 {
			t.Errorf("%s: described, yet near names %q", name, r.Near)
		}
	}
	if r := resolveOne("quince pureé", beverage.Description{}); len(r.Near) == 0 {
		t.Error("an unknown ingredient gets no near names")
	}
}

// TestDescribedTakesWhatItsKindTells: figures and duties that nobody gave.
func TestDescribedTakesWhatItsKindTells(t *testing.T) {
	quince := resolveOne("quince puree", beverage.Description{Kind: say(beverage.KindJuice), PH: say(3.1), Acidity: acidity(1.1, "malic acid"), Brix: say(12.0)})
	if p := quince.Protein; !p.Known() || p.High < 1 || p.High > 2 || quince.ProteinID != "" || !quince.Juice || !quince.AscorbateSource {
		t.Errorf("quince puree: protein %v of %q, juice %v, vitamin C %v", p, quince.ProteinID, quince.Juice, quince.AscorbateSource)
	}
	if quince.Nature != NatureUnknown || quince.MainAcid != "malic" || quince.AcidityAs != "malic" {
		t.Errorf("quince puree: nature %v, acid %q as %q", quince.Nature, quince.MainAcid, quince.AcidityAs)
	}
	thick := resolveOne("quince paste", beverage.Description{Kind: say(beverage.KindJuice), PH: say(3.1), Acidity: acidity(6, "malic acid"), Brix: say(60.0)})
	if thick.Protein.High < 4*quince.Protein.High {
		t.Errorf("a concentrate of 60 Brix holds up to %.2f %% protein, juice %.2f", thick.Protein.High, quince.Protein.High)
	}
	milk := resolveOne("ewe's milk", beverage.Description{Kind: say(beverage.KindOther), PH: say(6.6), Acidity: acidity(0.18, "lactic acid")})
	if p := milk.Protein; !p.Known() || p.Low > 3.1 || p.High < 3.5 || milk.ProteinID != "milk protein" || !milk.MilkProduct {
		t.Errorf("milk: protein %v of %q", p, milk.ProteinID)
	}
	if oat := resolveOne("hazelnut milk", beverage.Description{Kind: say(beverage.KindOther), PH: say(6.6), Acidity: acidity(0.1, "lactic acid")}); oat.MilkProduct || oat.Protein.Known() {
		t.Error("a plant milk counts as milk")
	}
	own := resolveOne("milk", beverage.Description{Kind: say(beverage.KindOther), PH: say(6.7)})
	if !own.Found || own.Name != "whole milk" || !own.Protein.Known() {
		t.Errorf("milk described as other stays %q", own.Name)
	}
	oolong := resolveOne("oolong tea extract", beverage.Description{Kind: say(beverage.KindExtract), PH: say(5.9), Acidity: acidity(0.1, "citric acid"), AcidFood: say(false)})
	if oolong.Nature != LowAcidFood || !oolong.Tea || !oolong.CaffeineSource {
		t.Errorf("oolong: nature %v, tea %v, caffeine %v", oolong.Nature, oolong.Tea, oolong.CaffeineSource)
	}
	if beet := resolveOne("parsnip juice", beverage.Description{Kind: say(beverage.KindJuice), PH: say(5.6), Acidity: acidity(0.1, "citric acid"), AcidFood: say(true)}); beet.Nature != LowAcidFood {
		t.Errorf("a juice of pH 5.6 counts as %v", beet.Nature)
	}
	lupin := resolveOne("lupin protein", beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(85.0), PH: say(3.4)})
	if lupin.ProteinID != ProteinUnknown || lupin.Nature != LowAcidFood || !lupin.PreAcidified {
		t.Errorf("lupin: %q, %v, pre-acidified %v", lupin.ProteinID, lupin.Nature, lupin.PreAcidified)
	}
	if oj := resolveOne("orange juice", beverage.Description{ProteinPercent: say(0.8)}); oj.ProteinID != "" || oj.Protein.Mid != 0.8 {
		t.Errorf("a juice's protein figure makes it a protein of composition %q", oj.ProteinID)
	}
	if shake := resolveOne("shake base", beverage.Description{Kind: say(beverage.KindOther), PH: say(6.8), ProteinPercent: say(20.0)}); shake.ProteinID != ProteinUnknown || !shake.Described {
		t.Errorf("a base with protein: %q", shake.ProteinID)
	}
	whey := resolveOne("our whey", beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(85.0), ProteinSourceOfKind: say("whey")})
	if whey.ProteinID != "whey concentrate" || !whey.MilkProduct {
		t.Errorf("our whey: %q, milk %v", whey.ProteinID, whey.MilkProduct)
	}
	mix := resolveOne("marine mineral", beverage.Description{Kind: say(beverage.KindMineral), CalciumPercent: say(30.0), PhosphorusPercent: say(1.0)})
	if c, p := mix.AsSold("calcium"), mix.AsSold("phosphoric"); !near(c.Mid, 0.3/40.078, 1e-9) || !near(p.Mid, 0.01/30.974, 1e-6) {
		t.Errorf("marine mineral: calcium %v, phosphate %v mol/g", c, p)
	}
	dairy := resolveOne("dairy calcium", beverage.Description{CalciumPercent: say(27.0)})
	if c := dairy.AsSold("calcium"); !near(c.Mid, 0.27/40.078, 1e-9) || len(dairy.Overrides) > 0 {
		t.Errorf("dairy calcium of 27 %%: %v mol/g", c)
	}
	if s := resolveOne("sodium dehydrobenzoate mix", beverage.Description{Kind: say(beverage.KindPreservative)}); s.Preservative != "benzoate" || s.ActiveFraction != 1 {
		t.Errorf("described benzoate: %q, %g", s.Preservative, s.ActiveFraction)
	}
}

// TestOverridesThatHelpDoNotCount: the stricter value stands, and the
// contradiction is kept for a finding.
func TestOverridesThatHelpDoNotCount(t *testing.T) {
	place := beverage.Place{File: "quince.toml", Line: 9, Key: "ingredient.protein"}
	for _, c := range []struct {
		name, field string
		d           beverage.Description
		stands      func(Resolved) bool
	}{
		{"whey protein isolate", "acid_food", beverage.Description{AcidFood: say(true)}, func(r Resolved) bool { return r.Nature == LowAcidFood }},
		{"carrot juice", "acid_food", beverage.Description{AcidFood: say(true)}, func(r Resolved) bool { return r.Nature == LowAcidFood }},
		{"whey protein isolate", "protein_percent", beverage.Description{ProteinPercent: beverage.Given[float64]{V: 20, Known: true, Place: place}}, func(r Resolved) bool { return r.Protein.Low > 80 }},
		{"micellar casein isolate", "calcium_percent", beverage.Description{CalciumPercent: say(0.1)}, func(r Resolved) bool { return r.Calcium.Low > 1.5 }},
		{"carrot juice", "ph", beverage.Description{PH: say(4.0)}, func(r Resolved) bool { return r.OwnPH.Low > 5 }},
		{"apple juice", "titratable_acidity_percent", beverage.Description{Acidity: acidity(3, "malic acid")}, func(r Resolved) bool { return r.Acidity.High < 1 && r.AcidityAs == "malic" }},
		{"phosphoric acid 75 %", "strength_percent", beverage.Description{StrengthPercent: say(85.0)}, func(r Resolved) bool { return r.StrengthPercent.High == 75 }},
		{"coffee extract", "caffeine_percent", beverage.Description{CaffeinePercent: say(0.01)}, func(r Resolved) bool { return r.Caffeine.Low >= 0.3 }},
		{"green tea extract", "polyphenols_percent", beverage.Description{PolyphenolsPercent: say(1.0)}, func(r Resolved) bool { return r.Polyphenols.Low >= 30 }},
		{"whole milk", "milk_product", beverage.Description{MilkProduct: say(false)}, func(r Resolved) bool { return r.MilkProduct }},
		{"collagen peptides", "kind", beverage.Description{Kind: say(beverage.KindFlavour)}, func(r Resolved) bool { return r.Kind == beverage.KindProtein }},
		{"potassium sorbate", "kind", beverage.Description{Kind: say(beverage.KindSalt)}, func(r Resolved) bool { return r.Kind == beverage.KindPreservative }},
		{"whey protein hydrolysate", "degree_of_hydrolysis_percent", beverage.Description{HydrolysisPercent: say(60.0)}, func(r Resolved) bool { return r.HydrolysisPercent.High < 30 }},
	} {
		r := resolveOne(c.name, c.d)
		if len(r.Overrides) != 1 || r.Overrides[0].Field != c.field || !r.Overrides[0].HelpsDrink {
			t.Errorf("%s: overrides %+v, want one of %s that helps", c.name, r.Overrides, c.field)
		}
		if !c.stands(r) {
			t.Errorf("%s: %s: the stricter value does not stand", c.name, c.field)
		}
		if c.field == "protein_percent" && (r.Overrides[0].Place != place || r.Overrides[0].Library != "84.1 to 92" || r.Overrides[0].Given != "20") {
			t.Errorf("%+v", r.Overrides[0])
		}
	}
}

// TestOverridesThatDoNotHelpCount: what is inside the library's range, stricter
// than it, or beside the point is taken.
func TestOverridesThatDoNotHelpCount(t *testing.T) {
	for _, c := range []struct {
		name     string
		d        beverage.Description
		contrary bool // outside what the library has
		holds    func(Resolved) bool
	}{
		{"whey protein isolate, acidified", beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(89.0)}, false, func(r Resolved) bool { return r.Protein == beverage.Point(89, beverage.Stated) }},
		{"whole milk", beverage.Description{Kind: say(beverage.KindOther), PH: say(6.7), Acidity: acidity(0.15, "lactic acid"), ProteinPercent: say(3.4), AcidFood: say(false)}, false, func(r Resolved) bool { return r.Protein.Mid == 3.4 && r.Nature == LowAcidFood }},
		{"coffee extract", beverage.Description{Kind: say(beverage.KindExtract), PH: say(5.2), Acidity: acidity(0.9, "citric acid"), Brix: say(40.0), AcidFood: say(false)}, false, func(r Resolved) bool { return r.OwnPH.Mid == 5.2 && r.Brix.Mid == 40 }},
		{"carrot juice", beverage.Description{PH: say(6.2), Acidity: acidity(0.12, "citric acid"), AcidFood: say(false)}, false, func(r Resolved) bool {
			return r.Acidity.Mid == 0.12 && r.AcidityAs == "citric" && r.MainAcid == "malic"
		}},
		{"apple juice", beverage.Description{AcidFood: say(false)}, true, func(r Resolved) bool { return r.Nature == LowAcidFood }},
		{"citric acid", beverage.Description{AcidFood: say(false)}, true, func(r Resolved) bool { return r.Nature == LowAcidFood }},
		{"micellar casein isolate", beverage.Description{CalciumPercent: say(4.0)}, true, func(r Resolved) bool { return r.Calcium.Mid == 4 }},
		{"sucrose", beverage.Description{AcidFood: say(true)}, true, func(r Resolved) bool { return r.Nature == NeitherFood }},
		{"beta-lactoglobulin isolate", beverage.Description{PH: say(3.6)}, false, func(r Resolved) bool { return r.PreAcidified }},
		{"beta-lactoglobulin isolate", beverage.Description{}, false, func(r Resolved) bool { return !r.PreAcidified }},
		{"caffeine", beverage.Description{Kind: say(beverage.KindExtract)}, true, func(r Resolved) bool { return r.Kind == beverage.KindActive }},
		{"phosphoric acid", beverage.Description{StrengthPercent: say(85.0)}, false, func(r Resolved) bool {
			return r.StrengthPercent == beverage.Point(85, beverage.Stated) && near(r.Phosphorus.Low, 26.87, 0.01) && r.Phosphorus.Low == r.Phosphorus.High
		}},
		{"phosphoric acid", beverage.Description{}, false, func(r Resolved) bool {
			return r.StrengthPercent.Low == 75 && r.StrengthPercent.Mid == 100 && r.StrengthPercent.High == 100
		}},
	} {
		r := resolveOne(c.name, c.d)
		if !r.Found || !r.Described || (len(r.Overrides) > 0) != c.contrary || !c.holds(r) {
			t.Errorf("%s: found %v, described %v, overrides %+v, protein %v, nature %v", c.name, r.Found, r.Described, r.Overrides, r.Protein, r.Nature)
		}
		for _, o := range r.Overrides {
			if o.HelpsDrink {
				t.Errorf("%s: %s counts as a help", c.name, o.Field)
			}
		}
	}
}

// TestOwnFiles: a description in an own file stands between library and spec.
func TestOwnFiles(t *testing.T) {
	own := []beverage.Ingredient{
		line("House Peptides", beverage.Description{Kind: say(beverage.KindProtein), ProteinPercent: say(91.0), ProteinSourceOfKind: say("collagen"), CalciumPercent: say(0.2)}),
		line("whey protein isolate", beverage.Description{SodiumPercent: say(0.3), CalciumPercent: say(0.05)}),
		line("house sugar", beverage.Description{}),
	}
	house := resolveOne("house peptides", beverage.Description{CalciumPercent: say(0.1), ProteinPercent: say(95.0)}, own...)
	if !house.Found || !house.Described || house.ProteinID != "collagen" || house.Protein.Mid != 95 || house.Calcium.Mid != 0.2 {
		t.Errorf("house peptides: %v %v %q protein %v calcium %v", house.Found, house.Described, house.ProteinID, house.Protein, house.Calcium)
	}
	if o := house.Overrides; len(o) != 2 || o[0].HelpsDrink || o[0].Field != "protein_percent" || !o[1].HelpsDrink || o[1].Field != "calcium_percent" {
		t.Errorf("house peptides: overrides %+v", o)
	}
	wpi := resolveOne("WPI", beverage.Description{}, own...)
	if wpi.Sodium.Basis != beverage.Library {
		t.Error("an own file's name is not the synonym it was not written as")
	}
	wpi = resolveOne("Whey Protein Isolates", beverage.Description{}, own...)
	if wpi.Sodium != beverage.Point(0.3, beverage.Stated) || wpi.Calcium.Low < 0.2 || len(wpi.Overrides) != 1 || !wpi.Overrides[0].HelpsDrink {
		t.Errorf("whey protein isolate of an own file: sodium %v, calcium %v, %+v", wpi.Sodium, wpi.Calcium, wpi.Overrides)
	}
	if sugar := resolveOne("house sugar", beverage.Description{}, own...); !sugar.Found || sugar.Described {
		t.Errorf("an own entry without kind: found %v, described %v", sugar.Found, sugar.Described)
	}
}

// TestNoDescriptionFlattersTheDrink: whatever a spec says of an ingredient of the
// library, none of the figures that protect the drinker gets better.
func TestNoDescriptionFlattersTheDrink(t *testing.T) {
	all := Default().All()
	rapid.Check(t, func(t *rapid.T) {
		e := all[rapid.IntRange(0, len(all)-1).Draw(t, "entry")]
		pct := func(name string) beverage.Given[float64] {
			return beverage.Given[float64]{V: rapid.Float64Range(0, 100).Draw(t, name), Known: rapid.Bool().Draw(t, name+" known")}
		}
		d := beverage.Description{
			Kind:           beverage.Given[beverage.Kind]{V: rapid.SampledFrom(beverage.Kinds).Draw(t, "kind"), Known: rapid.Bool().Draw(t, "kind known")},
			PH:             beverage.Given[float64]{V: rapid.Float64Range(0, 14).Draw(t, "ph"), Known: rapid.Bool().Draw(t, "ph known")},
			AcidFood:       beverage.Given[bool]{V: rapid.Bool().Draw(t, "acid food"), Known: rapid.Bool().Draw(t, "acid food known")},
			MilkProduct:    beverage.Given[bool]{V: rapid.Bool().Draw(t, "milk"), Known: rapid.Bool().Draw(t, "milk known")},
			ProteinPercent: pct("protein"), CalciumPercent: pct("calcium"), CaffeinePercent: pct("caffeine"),
			PolyphenolsPercent: pct("polyphenols"), StrengthPercent: pct("strength"), HydrolysisPercent: pct("hydrolysis"), SugarsPercent: pct("sugars"),
		}
		r := resolveOne(e.Name, d)
		diluted := d.StrengthPercent.Known && e.Formula != ""
		if r.Nature > e.Nature || e.MilkProduct && !r.MilkProduct || e.ProteinID != "" && r.ProteinID == "" {
			t.Fatalf("%s: %v became %v", e.Name, e.Nature, r.Nature)
		}
		for _, f := range fields {
			was, is := *f.of(&e), *f.of(&r.Entry)
			if !was.Known() || diluted && f.name != "strength_percent" {
				continue
			}
			if f.helps == lower && is.Low < was.Low || f.helps == higher && is.High > was.High {
				t.Fatalf("%s: %s went from %v to %v", e.Name, f.name, was, is)
			}
		}
	})
}

// TestTenRecipes enters ten drinks as a newcomer would write them, by the names
// on bags and invoices: every line is found.
func TestTenRecipes(t *testing.T) {
	for drink, recipe := range map[string]string{
		"clear whey, rhubarb":   "clear WPI; rhubarb juice; phosphoric acid 85%; sucralose; natural flavour; water",
		"quince hydrolysate":    "eWPH; quince juice; citric acid anhydrous; malic acid; potassium sorbate; Reb M; CO2",
		"casein latte":          "MCC; instant coffee; skim milk powder; DKP; cellulose gel; sucralose; kappa-carrageenan; caffeine anhydrous",
		"barley collagen tea":   "collagen; black tea extract; barley malt extract; lemon juice concentrate 400 GPL; ascorbic acid; erythritol",
		"pea cocoa":             "pea protein isolate; cocoa powder; sunflower oil; soy lecithin; gellan; DKP; cane sugar; sea salt; antifoam",
		"sea buckthorn soda":    "seabuckthorn juice; HFCS 55; citric acid; sodium benzoate; E385; E150d; carbonated water",
		"electrolyte water":     "sodium citrate dihydrate; potassium chloride; magnesium citrate; calcium lactate pentahydrate; citric acid; dextrose; ace-K; natural flavouring",
		"oat shake":             "oat milk; MPC 80; maltodextrin DE 10; tricalcium phosphate; TSC; locust bean gum; vitamin B1; vegetable oil",
		"acid milk with pectin": "whole milk; high methoxyl pectin; table sugar; lactic acid 88%; GDL; apple juice concentrate 70 Brix",
		"energy drink":          "table sugar; taurine; caffeine; guarana extract; L-carnitine; glycine; niacinamide; pyridoxine HCl; trisodium citrate dihydrate; E 330; K-sorbate; CO2",
	} {
		for _, name := range strings.Split(recipe, "; ") {
			if r := resolveOne(name, beverage.Description{}); !r.Found || !r.Described {
				t.Errorf("%s: %q is not found; near: %q", drink, name, r.Near)
			}
		}
	}
}
