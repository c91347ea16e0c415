package main

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"posset/beverage"
)

// sources are the Go files of a package, without its tests.
func sources(t *testing.T, dir string) (files []string) {
	all, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(t, err)
	for _, f := range all {
		if !strings.HasSuffix(f, "_test.go") {
			files = append(files, f)
		}
	}
	return files
}

// compiled are the published schemas by id.
func compiled(t *testing.T) map[string]*jsonschema.Schema {
	c := jsonschema.NewCompiler()
	all := map[string]*jsonschema.Schema{}
	for id := range published {
		s, err := c.Compile(schemaFile(id))
		require.NoError(t, err)
		all[id] = s
	}
	return all
}

// withTrials is a drink whose developer has read the pH of two trials, and that
// is preserved by acids.
const withTrials = `[drink]
name = "Rhubarb trial"
serving = "330 mL"
base = "water"
[[ingredient]]
name = "whey protein isolate, acidified"
amount = "40 g/L"
[[ingredient]]
name = "citric acid"
amount = "2 g/L"
[[ingredient]]
name = "potassium sorbate"
amount = "200 mg/L"
[[ingredient]]
name = "sodium benzoate"
amount = "100 mg/L"
[[bench]]
amounts = { "citric acid" = "2 g/L" }
ph = 3.2
[[bench]]
amounts = { "citric acid" = "4 g/L" }
ph = 3.05
`

// What every command prints of every demo drink and record, and check of every
// drink that raises a finding, is what its schema says.
func TestOutputsFitTheirSchemas(t *testing.T) {
	all := compiled(t)
	own := t.TempDir()
	trials, evidence := filepath.Join(own, "trials.toml"), filepath.Join(own, "evidence.csv")
	require.NoError(t, os.WriteFile(trials, []byte(withTrials), 0o644))
	t.Chdir("../../testdata/drinks")
	seen := map[string]bool{}
	for _, args := range append(specRuns(t, trials), logRuns(t, evidence)...) {
		value := output(t, args)
		id, _ := value["schema"].(string)
		require.NotNil(t, all[id], "%v prints schema %q", args, id)
		seen[id] = true
		if err := all[id].Validate(value); err != nil {
			t.Errorf("posset %s: %v", strings.Join(args, " "), err)
		}
	}
	require.Equal(t, slices.Sorted(maps.Keys(published)), slices.Sorted(maps.Keys(seen)))
}

// specRuns are commands that read a spec, or no file at all.
func specRuns(t *testing.T, trials string) [][]string {
	drinks := filesAt(t, "*.toml", 12)
	still, sparkling := drinks[0], drinks[1]
	runs := [][]string{{"verify"}, {"explain"}, {"explain", "log-fault"}, {"ingredients"}, {"ingredients", "citric acid"},
		{"carbonation", "--volumes", "2.6", "--temperature", "4C"},
		{"acid", sparkling, "--target-ph", "2.8", "--with", "citric acid:malic acid 3:1"},
		{"match", sparkling, "--lines", "../lines.toml"}, {"match", sparkling, "--lines", "../lines.toml", "--run", "20000 L"},
		{"sweep", still, "--vary", "measured.ph=2.8..4.8", "--steps", "3"},
		{"sweep", still, "--vary", "measured.ph=2.8..4.8", "--vary", "whey protein isolate, acidified=20..120 g/L", "--steps", "2"},
		{"hold", "--bore", "47.5mm", "--length", "18m", "--flow", "5000 L/h", "--temperature", "138C", "--brix", "8", "--target", "F0 6 min"},
		{"hold", "--bore", "38mm", "--flow", "3000 L/h", "--temperature", "72.5C", "--target", "15 s at 72 C"},
		{"acid", trials}, {"compare", still, trials}, {"compare", drinks[6], drinks[7]}}
	for _, d := range drinks {
		for _, c := range []string{"check", "acid", "protein", "carbonation", "routes", "brief"} {
			runs = append(runs, []string{c, d})
		}
		runs = append(runs, []string{"brief", d, "--disclose", "classes"})
	}
	for _, d := range filesAt(t, "../rules/*/fires.toml", 80) {
		runs = append(runs, []string{"check", d, "--allow-outside"})
	}
	return runs
}

// logRuns are commands that read records.
func logRuns(t *testing.T, evidence string) [][]string {
	logs := append(filesAt(t, "logs/*.csv", 4), filesAt(t, "../rules/logs/*.csv", 4)...)
	tea := "logs/barley-tea-retort.csv"
	runs := [][]string{{"lethality", tea, "--organism", "Alicyclobacillus acidoterrestris"}, {"lethality", tea, "--target", "15 s at 72 C"},
		{"lethality", tea, "no-such.csv"}, {"lethality", tea, "--role", "Can A=retort", "--target", "F0 6 min"},
		{"lethality", tea, "--target", "F0 6 min", "--limit", "retort temperature >= 122 C", "--evidence", evidence},
		{"heating", tea, "--retort-temperature", "121.1C", "--initial-temperature", "20C", "--target", "F0 4 min"}}
	for _, l := range logs {
		runs = append(runs, []string{"lethality", l, "--target", "F0 6 min"})
	}
	return runs
}

func filesAt(t *testing.T, pattern string, atLeast int) []string {
	files, err := filepath.Glob(pattern)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), atLeast, pattern)
	return files
}

// output is what a run prints as JSON.
func output(t *testing.T, args []string) map[string]any {
	var out, errs bytes.Buffer
	run(append(args, "--format", "json"), strings.NewReader(""), &out, &errs)
	value, err := jsonschema.UnmarshalJSON(&out)
	require.NoError(t, err, "%v: %s", args, &errs)
	return value.(map[string]any)
}

// A schema that takes everything would hold nothing: each of these is refused.
func TestSchemasRefuseWhatNoResultMaySay(t *testing.T) {
	s := compiled(t)[beverage.AssessmentSchema]
	t.Chdir("../../testdata/drinks")
	sound := output(t, []string{"check", "01-clear-whey-still.toml"})
	require.NoError(t, s.Validate(sound))
	finding := func(v map[string]any) map[string]any { return v["findings"].([]any)[0].(map[string]any) }
	for name, spoil := range map[string]func(map[string]any){
		"another schema":   func(v map[string]any) { v["schema"] = "posset/acid/1" },
		"a part missing":   func(v map[string]any) { delete(v, "cautions") },
		"a part more":      func(v map[string]any) { v["verdict"] = "yes" },
		"an outcome more":  func(v map[string]any) { v["package"].(map[string]any)["outcome"] = "passes" },
		"a level more":     func(v map[string]any) { finding(v)["level"] = "ok" },
		"a pH in words":    func(v map[string]any) { v["acid_class"].(map[string]any)["ph"] = "3.1" },
		"an unknown class": func(v map[string]any) { v["acid_class"].(map[string]any)["class"] = nil },
		"no list":          func(v map[string]any) { v["routes"] = nil },
		"an unknown part":  func(v map[string]any) { finding(v)["severity"] = json.Number("1") },
		"a market more":    func(v map[string]any) { finding(v)["markets"] = []any{"JP"} },
	} {
		spoilt := output(t, []string{"check", "01-clear-whey-still.toml"})
		spoil(spoilt)
		if s.Validate(spoilt) == nil {
			t.Errorf("the schema takes %s", name)
		}
	}
}
