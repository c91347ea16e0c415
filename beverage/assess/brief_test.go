package assess

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/law"
	"posset/beverage/spec"
)

// examples are the drinks that raise, or nearly raise, each finding.
const examples = "../../testdata/rules"

func exampleDrink(t *testing.T, path string) *beverage.Drink {
	t.Helper()
	d, err := spec.Read(filepath.Join(examples, path), spec.Options{AllowOutside: true})
	require.NoError(t, err)
	return d
}

func briefFor(t *testing.T, path, disclose string) *beverage.Brief {
	t.Helper()
	b, err := MakeBrief(context.Background(), exampleDrink(t, path), disclose, Options{Version: "test"})
	require.NoError(t, err)
	return b
}

// everyExample calls of for each example of a rule.
func everyExample(t *testing.T, of func(t *testing.T, path string)) {
	paths, err := filepath.Glob(filepath.Join(examples, "*", "fires.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, p := range paths {
		rel, err := filepath.Rel(examples, p)
		require.NoError(t, err)
		t.Run(rel, func(t *testing.T) {
			t.Parallel()
			of(t, rel)
		})
	}
}

var praise = regexp.MustCompile(`(?i)\b(safe|safely|approved|compliant)\b`)

func TestBriefIsWholeForEveryExample(t *testing.T) {
	everyExample(t, func(t *testing.T, path string) {
		b := briefFor(t, path, "full")
		assert.Equal(t, standing, b.Standing)
		assert.Equal(t, Cautions(), b.Cautions)
		assert.NotEmpty(t, b.Figures)
		assert.NotEmpty(t, b.Process)
		assert.NotEmpty(t, b.Critical)
		assert.NotEmpty(t, b.Missing)
		assert.NotEmpty(t, b.Plant)
		assert.NotEmpty(t, b.CoPacker)
		assert.NotEmpty(t, b.Authority)
		assert.NotEmpty(t, b.Filings)
		assert.Len(t, b.Routes, len(beverage.Routes))
		require.NotNil(t, b.Assessment)
		assert.Equal(t, b.Assessment.Findings, b.Findings)
		said := slices.Concat(b.Process, b.Plant, b.CoPacker, b.Authority)
		for _, g := range b.Missing {
			said = append(said, g.What, g.Test)
		}
		for _, p := range b.Critical {
			said = append(said, p.What, string(p.Value), p.Limit, p.Measured)
		}
		for _, line := range said {
			assert.NotRegexp(t, praise, line)
		}
	})
}

// What each kind of process must ask for, and what it must not.
func TestBriefAsksForTheRightTests(t *testing.T) {
	for path, c := range map[string]struct{ gap, plant, factor string }{
		"log-missing/silent.toml":                      {"how the slowest pack heats in the co-packer's own retort", "Which retort is it, and what heats: steam, water spray, immersion, steam and air?", "come-up and venting"},
		"aseptic-needs-filing/fires.toml":              {"how fast the fastest part of the drink runs through the tube", "Is the treated side of the regenerator above the raw side at all times, and what shows it?", "hold of the fastest particle"},
		"acidified-needs-scheduled-process/fires.toml": {"how cold the cap, the headspace and the wall of the closed pack become", "How are cap and headspace heated: by turning over, for how long, and what of packs caught in a stop?", "coldest place of the closed pack"},
		"carbonated-exclusion-review/fires.toml":       {"what the cold spot of the pack gets in the tunnel", "Which pack stands the pressure of the hottest zone, and how many have burst?", "highest pressure in the closed pack"},
		"high-pressure-refrigerated/fires.toml":        {"that the press reduces the pertinent pathogen in this drink", "How is the pack shown tight after the press?", "pressure, hold and temperature in the vessel"},
	} {
		b := briefFor(t, path, "full")
		assert.True(t, slices.ContainsFunc(b.Missing, func(g beverage.Gap) bool { return g.What == c.gap }), "%s: gap", path)
		assert.Contains(t, b.Plant, c.plant, path)
		assert.True(t, slices.ContainsFunc(b.Critical, func(p beverage.CriticalPoint) bool { return p.What == c.factor }), "%s: factor", path)
		if path != "log-missing/silent.toml" {
			assert.NotContains(t, b.Plant, "Which retort is it, and what heats: steam, water spray, immersion, steam and air?", path)
		}
	}
}

func TestStatedLimitTakesTheFactorsPlace(t *testing.T) {
	b := briefFor(t, "critical-limit-missed/fires.toml", "full")
	i := slices.IndexFunc(b.Critical, func(p beverage.CriticalPoint) bool { return p.What == "equilibrium pH of the finished drink" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "at most 3.2, as the spec states", b.Critical[i].Limit)
	assert.Equal(t, "read 3.35, 3.30 to 3.40 with all doubt", string(b.Critical[i].Value))
	assert.Equal(t, "measured", b.Critical[i].Basis)
}

func TestPredictionIsToldAndStillMissing(t *testing.T) {
	b := briefFor(t, "ph-predicted-only/fires.toml", "full")
	assert.Equal(t, "predicted", b.Figures[0].Basis)
	assert.True(t, strings.HasSuffix(string(b.Figures[0].Value), "by the recipe, not measured"), b.Figures[0].Value)
	assert.True(t, slices.ContainsFunc(b.Missing, func(g beverage.Gap) bool { return g.What == "the equilibrium pH of the finished drink, measured" }))
}

// A form's fields stand in the order in which the form asks, each with what
// answers it or marked missing.
func TestFilingsFollowTheForm(t *testing.T) {
	b := briefFor(t, "acidified-needs-scheduled-process/fires.toml", "full")
	var asked []string
	for _, f := range b.Filings {
		if f.Form == "2541e" && !strings.HasPrefix(f.Field, "duty: ") {
			asked = append(asked, string(f.Section)+": "+f.Field)
			assert.Equal(t, f.Value == "", f.Missing, f.Field)
			assert.NotEmpty(t, f.From, f.Field)
		}
	}
	var form []string
	for _, f := range law.Form("2541e") {
		form = append(form, f.Section+": "+f.Field)
	}
	assert.Equal(t, form, asked)
}

func TestFilingsByMarketAndClass(t *testing.T) {
	forms := func(path string) []string {
		var list []string
		for _, f := range briefFor(t, path, "full").Filings {
			if f.Form != "" {
				list = appendOnce(list, string(f.Form))
			}
		}
		return list
	}
	assert.Equal(t, []string{"2541", "2541e"}, forms("process-needs-filing/fires.toml"))
	assert.Empty(t, forms("process-needs-filing/silent.toml"), "no process is filed in the EU")
	assert.Equal(t, []string{"2541", "2541d"}, forms("log-missing/silent.toml"))
	for _, f := range briefFor(t, "low-acid-ambient-no-sterilization/fires.toml", "full").Filings {
		assert.NotEqual(t, "90 °C", string(f.Value), "the hold of a flash pasteurizer is no retort temperature")
	}
	assert.Equal(t, []string{"2541", "2541g"}, forms("aseptic-needs-filing/fires.toml"))
	assert.Equal(t, []string{"2541", "2541d", "2541g", "2541e"}, forms("ph-above-limit/fires.toml"), "undecided: every form that could apply")
	assert.Empty(t, forms("refrigerated-low-acid/fires.toml"), "sold cold")
}

func TestBriefOfNothingAsksForEverything(t *testing.T) {
	b, err := MakeBrief(context.Background(), &beverage.Drink{Markets: []beverage.Market{beverage.US}}, "full", Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"not known of 0 of 0 ingredients: ask the supplier"}, b.Allergens)
	assert.Equal(t, "No route is proposed.", b.Process[0])
	for _, key := range []string{"drink.base", "drink.serving", "package.type", "process.route", "storage.distribution"} {
		assert.True(t, slices.ContainsFunc(b.Missing, func(g beverage.Gap) bool { return strings.Contains(g.What, "("+key+")") }), key)
	}
}

func TestUnreadableRecordIsAnError(t *testing.T) {
	d := exampleDrink(t, "log-missing/silent.toml")
	d.Process.Records[0].File = "../logs/none.csv"
	_, err := MakeBrief(context.Background(), d, "full", Options{})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "logs/none.csv: cannot be opened")
}

func TestPlantIsNeverAnsweredHere(t *testing.T) {
	f, err := facts.Of(context.Background(), exampleDrink(t, "log-missing/silent.toml"), ingredient.Default())
	require.NoError(t, err)
	assert.Equal(t, answer{from: askPlant}, answerTo(f, "plant"))
	assert.Equal(t, answer{from: nobodyKnow}, answerTo(f, "no.such_key"))
	assert.Equal(t, "22 min", answerTo(f, "process.hold_time").text)
	assert.Equal(t, "121.8 °C", answerTo(f, "process.hold_temperature").text)
	assert.Equal(t, "F0 6 min", answerTo(f, "process.target").text)
}

func BenchmarkBrief(b *testing.B) {
	data, err := os.ReadFile("testdata/sparkling-whey.toml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d, err := spec.Parse(data, "sparkling-whey.toml", ".", spec.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := MakeBrief(context.Background(), d, "full", Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func TestZonesAnswerForTheHold(t *testing.T) {
	d := exampleDrink(t, "carbonated-exclusion-review/fires.toml")
	d.Process.HoldTempC, d.Process.HoldS = beverage.Given[float64]{}, beverage.Given[float64]{}
	d.Process.Zones = []beverage.Zone{{TempC: 40, TimeS: 300}, {TempC: 63, TimeS: 720}}
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	assert.Equal(t, "hottest zone 63 °C", answerTo(f, "process.hold_temperature").text)
	assert.Equal(t, "zones: 40 °C for 5 min, 63 °C for 12 min", answerTo(f, "process.hold_time").text)
}

// Whatever a spec says, the brief can be written at every disclosure.
func TestBriefOfAnySpec(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawSpec(t).text("")
		d, err := spec.Parse([]byte(text), "trial.toml", ".", spec.Options{})
		if err != nil {
			t.Skip("not a usable spec")
		}
		how := rapid.SampledFrom([]string{"full", "classes", "none"}).Draw(t, "disclose")
		b, err := MakeBrief(context.Background(), d, how, Options{})
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if _, err := json.Marshal(b); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if len(b.Missing) == 0 || len(b.Critical) == 0 || len(b.Authority) == 0 {
			t.Fatalf("nothing is asked\n%s", text)
		}
	})
}
