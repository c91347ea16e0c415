package report

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"posset/beverage"
)

func input(file string) beverage.Input { return beverage.Input{File: file, SHA256: "00ff"} }

func someLogs() *beverage.LethalityResult {
	bad := "no column of temperatures"
	second := probeOne()
	second.Name, second.Outcome, second.Faults = "Can 2", said(beverage.Meets), nil
	second.RoleBasis = "assumed"
	second.CreditedMinutes, second.LethalityMinutes = known(6.2), known(6.9)
	return &beverage.LethalityResult{Schema: beverage.LethalitySchema, Tool: tool, Cautions: testCautions, TrefC: 121.1, ZC: 10, ToleranceC: 0.5,
		TargetMinutes: known(6), Target: "6 min", Logs: []beverage.LogResult{
			{File: "logs/run-1.csv", SHA256: "00ff", Outcome: said(beverage.CannotTell), Aim: &beverage.Aim{TrefC: 121.1, ZC: 10, Minutes: known(6)}, Retort: "3", Batch: "Q-0417", Probes: []beverage.ProbeResult{probeOne(), second}},
			{File: "logs/run-2.csv", SHA256: "00fe", Outcome: said(beverage.Meets), Probes: []beverage.ProbeResult{second}},
			{File: "logs/notes.csv", Error: &bad},
		}}
}

func someAcid() *beverage.AcidResult {
	return &beverage.AcidResult{Schema: beverage.AcidSchema, Tool: tool, Input: input("quince.toml"), Drink: "Quince clear protein water", TempC: 25,
		PH: known(3.31), PHLow: known(3.16), PHHigh: known(3.46), PHCarbonated: known(3.29), PHMeasured: known(3.25), IonicStrength: known(0.0312),
		TitratablePct: known(0.452), TitrationEndPH: 8.1, BufferCapacity: known(41.3), WaterActivity: known(0.991),
		Species: []beverage.SpeciesAmount{{Name: "H2PO4-", Molality: 0.0124}}, Curve: []beverage.CurvePoint{{PH: 3.31, Buffer: 41.3}, {PH: 8.1, BaseMMolPL: 70.6, Buffer: 6.2}},
		Sensitivity: []beverage.Sensitivity{{Ingredient: "citric acid", PHPerTenPct: -0.021}}, Dose: []beverage.DoseAmount{{Ingredient: "citric acid", GPerL: 2.84, InAll: 4.04, LotLow: known(2.4), LotHigh: known(3.3)}},
		PHSlowNow: known(3.12), PHSlowEnd: known(3.31), Widths: []beverage.Width{{What: "quince juice: own pH", Low: -0.12, High: 0.1}},
		Given:  []beverage.Carried{{Ingredient: "quince juice", KnownBy: "pH 3.30, 0.9 % as malic acid", What: "malic acid", MMolPerG: 0.088, MMolPerL: 17.6}},
		DosePH: known(3.06), DosePHLow: known(2.91), DosePHHigh: known(3.2), DoseLotLow: known(3.01), DoseLotHigh: known(3.11), DoseNote: "the measured pH counts as a trial of the recipe as it is",
		DoseTargetPH: known(3.2), AcidityAfterPct: known(0.73), AcidClass: quince().AcidClass, Missing: []string{"the calcium of quince juice concentrate is not known"},
		Findings: quince().Findings[1:2], Cautions: testCautions}
}

func someGas() *beverage.GasResult {
	in := input("quince.toml")
	return &beverage.GasResult{Schema: beverage.CarbonationSchema, Tool: tool, Input: &in, Drink: "Quince clear protein water", Volumes: known(1.6),
		GramsPerLitre: known(3.14), Pressure: quince().Package.Pressure,
		RatingKPa: known(620), Outcome: said(beverage.FallsShort), Convention: "a volume is one litre of CO2 at 0 °C and 1 atm per litre of drink",
		Findings: quince().Findings[:1], Cautions: testCautions}
}

func TestFlagsAreTitleAndDetail(t *testing.T) {
	got := flagItems([]beverage.ProteinFlag{{ID: "protein-gel", Level: beverage.Review, Text: "The heated drink may gel: whey: 48 g/L"}, {ID: "x", Text: "short"}})
	want := Items{{Mark: "review", ID: "protein-gel", Title: "The heated drink may gel", Text: "whey: 48 g/L"}, {Mark: "stop", ID: "x", Title: "short"}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func someRoutes() *beverage.RoutesResult {
	return &beverage.RoutesResult{Schema: beverage.RoutesSchema, Tool: tool, Input: input("quince.toml"), Drink: "Quince clear protein water", Class: quince().AcidClass,
		Routes: quince().Routes, Cautions: testCautions, Left: beverage.RoutesLeft{Order: "what fits comes first", Routes: []beverage.RankedRoute{
			{Route: beverage.Aseptic, Outcome: beverage.Fits, Heat: "140 °C for 4 s", HeatSource: "a text (seen)", Denatured: known(0.68), DenaturedLow: known(0.31), DenaturedHigh: known(0.83), Why: "by its usual heat alone"},
			{Route: beverage.SterileFiltration, Outcome: beverage.FitUnknown, Denatured: known(0), DenaturedLow: known(0), DenaturedHigh: known(0), Why: "no heat"},
			{Route: beverage.ColdFill, Outcome: beverage.FitUnknown, Denatured: known(0), DenaturedLow: known(0), DenaturedHigh: known(0), Why: "no heat"},
			{Route: beverage.HighPressure, Outcome: beverage.FitUnknown, Why: "cannot be told"}}}}
}

func someBrief() *beverage.Brief {
	return &beverage.Brief{Schema: beverage.BriefSchema, Tool: tool, Input: input("quince.toml"), Drink: quince().Drink, Standing: "A request for review, not a scheduled process.",
		Disclosure: "full", Allergens: []string{"milk"}, Figures: []beverage.BriefFigure{{What: "pH", Value: "3.25", Basis: "measured"}, {What: "viscosity", Basis: "not given"}},
		Formula: []beverage.FormulaLine{{Name: "whey protein isolate, acidified", Kind: beverage.KindProtein, GPerL: known(66)}, {Name: "flavour", Kind: beverage.KindFlavour}},
		Class:   quince().AcidClass, Process: []string{"tunnel pasteurization, 63 °C for 20 min"},
		Critical: []beverage.CriticalPoint{{What: "pH", Value: "3.25", Limit: "at most 4.6", Measured: "meter, 25 °C", Basis: "21 CFR 114.80(a)"}},
		Routes:   quince().Routes, Missing: []beverage.Gap{{What: "come-up time", Test: "heat-penetration run"}}, Plant: []string{"How is the coldest place of the tunnel known?"},
		CoPacker: []string{"Which can is run?"}, Authority: []string{"Is the powder judged by its own pH?"},
		Filings:  []beverage.FilingField{{Market: beverage.US, Field: "pH", Value: "3.25", Source: "FDA 2541e"}, {Market: beverage.US, Field: "come-up time", Missing: true}},
		Findings: quince().Findings, Cautions: testCautions}
}

func someChecks() *beverage.VerifyResult {
	return &beverage.VerifyResult{Schema: beverage.VerifySchema, Tool: tool, Out: 1, Checks: []beverage.Verified{
		{ID: "lethal-rate/one-z-below", Model: "thermal.lethal-rate", Condition: "111.1 C, Tref 121.1 C, z 10 C", Published: 0.1, Ours: 0.1, Allowed: 1e-12,
			Why: "definition of z", Source: "Bigelow et al. 1920", Basis: beverage.Memory, Holds: true},
		{ID: "acid/oxalate", Model: "acid.ph", Published: 1.679, Ours: 1.75, Difference: 0.071, Allowed: 0.02, Why: "the form's own claim", Source: "NIST", Basis: beverage.Seen},
	}}
}

func someFindings() *ExplainResult {
	return &ExplainResult{Schema: ExplainSchema, Tool: tool, Cautions: testCautions, Findings: []Explanation{
		{ID: "ph-above-limit", Level: beverage.Stop, Title: "pH may be above 4.6", Means: "Above 4.6 acid alone does not hold the drink.",
			Clear: "Lower the pH, or take a low-acid route.", Sources: []RuleSource{
				{ID: "us-acidified", Markets: []beverage.Market{beverage.US}, Source: "21 CFR 114.3(b) (2015 text)", Statement: "Finished equilibrium pH of 4.6 or below.", Basis: beverage.Seen, Argued: "whether a powder counts"},
				{ID: "trade", Source: "custom", Statement: "Keep 0.2 away from the line.", Basis: beverage.CommonPractice}}},
		{ID: "pack-vacuum", Level: beverage.Note, Title: "A vacuum forms"},
	}}
}

func someIngredients() *IngredientsResult {
	return &IngredientsResult{Schema: IngredientsSchema, Tool: tool, Cautions: testCautions, Problems: []string{"quince: protein 120 is outside 0 to 100"}, Ingredients: []IngredientEntry{
		{Name: "citric acid", Synonyms: []string{"anhydrous citric acid"}, ENumber: "330", Kind: beverage.KindAcid, Nature: "neither", Formula: "C6H8O7",
			Figures: []IngredientFigure{{Field: "strength_percent", Low: known(99.5), Typical: known(99.8), High: known(100), Source: "pharmacopoeia", Basis: beverage.Memory, Note: "dried"},
				{Field: "spores", Text: "none likely", Source: "custom", Basis: beverage.CommonPractice}}, Unknown: []string{"brix"}},
		{Name: "quince"},
	}}
}

func oneFinding() *ExplainResult {
	r := someFindings()
	r.Findings = r.Findings[:1]
	return r
}

func oneIngredient() *IngredientsResult {
	r := someIngredients()
	r.Ingredients, r.Problems = r.Ingredients[:1], nil
	return r
}

// every is each kind of result with its document.
func every() map[string]struct {
	value any
	doc   Doc
} {
	return map[string]struct {
		value any
		doc   Doc
	}{
		"lethality":   {someLogs(), Lethality(someLogs(), Metric)},
		"acid":        {someAcid(), Acid(someAcid(), Metric)},
		"carbonation": {someGas(), Carbonation(someGas(), Metric)},
		"protein":     {someProtein(), Protein(someProtein(), Metric)},
		"routes":      {someRoutes(), Routes(someRoutes(), Metric)},
		"brief":       {someBrief(), Brief(someBrief(), Metric)},
		"gas":         {gasDrawn(), Carbonation(gasDrawn(), Metric)},
		"verify":      {someChecks(), Verify(someChecks(), Metric)},
		"findings":    {someFindings(), Explain(someFindings(), Metric)},
		"finding":     {oneFinding(), Explain(oneFinding(), Metric)},
		"ingredients": {someIngredients(), Ingredients(someIngredients(), Metric)},
		"ingredient":  {oneIngredient(), Ingredients(oneIngredient(), Metric)},
	}
}

func TestResultGoldens(t *testing.T) {
	for name, r := range every() {
		golden(t, name+".txt", text(t, Style{}, r.doc))
		golden(t, name+".csv", sheet(t, r.doc))
	}
}

func TestEveryResultInEveryForm(t *testing.T) {
	for name, r := range every() {
		forms := map[string]string{"text": text(t, Style{}, r.doc), "csv": sheet(t, r.doc), "html": page1(t, r.doc), "json": jsonText(t, r.value)}
		for form, s := range forms {
			if w := neverSaid.FindString(s); w != "" {
				t.Errorf("%s as %s says %q", name, form, w)
			}
			if name != "verify" && !strings.Contains(s, "A process authority decides") {
				t.Errorf("%s as %s carries no caution", name, form)
			}
		}
	}
}

func TestNoResultIsWiderThanItsTerminal(t *testing.T) {
	for name, r := range every() {
		for _, w := range []int{100, 50} {
			for _, l := range strings.Split(text(t, Style{Width: w}, r.doc), "\n") {
				if width(l) > w {
					t.Errorf("%s at %d columns: %q", name, w, l)
				}
			}
		}
	}
}

func TestNoRowIsRagged(t *testing.T) {
	for name, r := range every() {
		for i, row := range r.doc.Sheet.Rows {
			if len(row) != len(r.doc.Sheet.Columns) {
				t.Errorf("%s, row %d: %d cells under %d headings", name, i, len(row), len(r.doc.Sheet.Columns))
			}
		}
		for _, s := range r.doc.Sections {
			for _, b := range s.Blocks {
				if tab, ok := b.(Table); ok {
					for i, row := range tab.Rows {
						if len(row) != len(tab.Columns) {
							t.Errorf("%s, %s, row %d: %d cells under %d headings", name, s.Title, i, len(row), len(tab.Columns))
						}
					}
				}
			}
		}
	}
}

func TestAnEmptyResultStillShows(t *testing.T) {
	for name, d := range map[string]Doc{
		"lethality": Lethality(&beverage.LethalityResult{}, US), "acid": Acid(&beverage.AcidResult{}, US), "carbonation": Carbonation(&beverage.GasResult{}, US),
		"protein": Protein(&beverage.ProteinResult{}, US), "routes": Routes(&beverage.RoutesResult{}, US), "brief": Brief(&beverage.Brief{}, US), "verify": Verify(&beverage.VerifyResult{}, US),
	} {
		if s := text(t, Style{}, d); strings.TrimSpace(s) == "" {
			t.Errorf("%s shows nothing", name)
		}
	}
}
