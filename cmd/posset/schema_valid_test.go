package main

import (
	"bytes"
	"encoding/json"
	"maps"
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

// What every command prints of every demo drink and record is what its schema
// says.
func TestOutputsFitTheirSchemas(t *testing.T) {
	all := compiled(t)
	t.Chdir("../../testdata/drinks")
	drinks, err := filepath.Glob("*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(drinks), 12)
	logs, err := filepath.Glob("logs/*.csv")
	require.NoError(t, err)
	require.NotEmpty(t, logs)
	runs := [][]string{{"verify"}, {"explain"}, {"explain", "log-fault"}, {"ingredients"}, {"ingredients", "citric acid"},
		{"carbonation", "--volumes", "2.6", "--temperature", "4C"}, {"lethality", logs[0], "--organism", "Alicyclobacillus acidoterrestris"},
		{"lethality", logs[0], "--target", "15 s at 72 C"}, {"lethality", logs[0], drinks[0]}, {"lethality", logs[0], "--role", "Can A=retort", "--target", "F0 6 min"},
		{"acid", drinks[1], "--target-ph", "2.8", "--with", "citric acid:malic acid 3:1"},
		{"match", drinks[1], "--lines", "../lines.toml"}, {"match", drinks[1], "--lines", "../lines.toml", "--run", "20000 L"},
		{"sweep", drinks[0], "--vary", "measured.ph=2.8..4.8", "--steps", "3"},
		{"sweep", drinks[0], "--vary", "measured.ph=2.8..4.8", "--vary", "whey protein isolate, acidified=20..120 g/L", "--steps", "2"},
		{"hold", "--bore", "47.5mm", "--length", "18m", "--flow", "5000 L/h", "--temperature", "138C", "--brix", "8", "--target", "F0 6 min"},
		{"heating", "logs/barley-tea-retort.csv", "--retort-temperature", "121.1C", "--initial-temperature", "20C", "--target", "F0 4 min"}}
	for _, d := range drinks {
		for _, c := range []string{"check", "acid", "protein", "carbonation", "routes", "brief"} {
			runs = append(runs, []string{c, d})
		}
		runs = append(runs, []string{"brief", d, "--disclose", "classes"})
	}
	for _, l := range logs {
		runs = append(runs, []string{"lethality", l, "--target", "F0 6 min"})
	}
	seen := map[string]bool{}
	for _, args := range runs {
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
