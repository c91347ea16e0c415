package assess

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/spec"
)

func sideOf(t *testing.T, file string) Side {
	t.Helper()
	d, w, err := spec.ReadWritten(file, spec.Options{})
	require.NoError(t, err)
	return Side{d, w}
}

func textSide(t *testing.T, text string) Side {
	t.Helper()
	file := filepath.Join(t.TempDir(), "drink.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return sideOf(t, file)
}

func compare(t *testing.T, a, b Side) *Comparison {
	t.Helper()
	c, err := Compare(context.Background(), a, b, Options{Version: "test"})
	require.NoError(t, err)
	return c
}

const compareDrink = `[drink]
name = "Quince clear protein water"
serving = "330 mL"
base = "water"
[[ingredient]]
name = "whey protein isolate, acidified"
amount = "66 g/L"
[[ingredient]]
name = "citric acid"
amount = "1 g/L"
[measured]
ph = 3.2
ph_tolerance = 0.05
ph_temperature = "25 C"
ph_equilibrated = "24 h"
[package]
type = "glass bottle"
fill = "330 mL"
brimful = "348 mL"
headspace_gas = "air"
[process]
route = "hot fill"
fill_temperature = "88 C"
pack_hold_time = "3 min"
pack_hold_temperature = "84 C"
[storage]
distribution = "ambient"
temperature = "30 C"
shelf_life = "9 months"
`

func TestCompareKeys(t *testing.T) {
	before := textSide(t, compareDrink)
	for name, c := range map[string]struct {
		pairs []string
		want  []KeyChange
	}{
		"nothing":                   {nil, []KeyChange{}},
		"another unit is no change": {[]string{`"330 mL"`, `"0.33 L"`, `"88 C"`, `"190.4 F"`, "ph = 3.2\n", "ph = 3.20\n", `"24 h"`, `"1 days"`}, []KeyChange{}},
		"changed":                   {[]string{"ph = 3.2\n", "ph = 4.4\n"}, []KeyChange{{Key: "measured.ph", Change: "changed", Before: "3.2", After: "4.4", BeforeLine: 12, AfterLine: 12}}},
		"removed":                   {[]string{"ph_temperature = \"25 C\"\n", ""}, []KeyChange{{Key: "measured.ph_temperature", Change: "removed", Before: "25 C", BeforeLine: 14}}},
		"added":                     {[]string{"headspace_gas", "pressure_rating = \"2 barg\"\nheadspace_gas"}, []KeyChange{{Key: "package.pressure_rating", Change: "added", After: "2 barg", AfterLine: 20}}},
		"an ingredient": {[]string{"\"citric acid\"\namount = \"1 g/L\"", "\"malic acid\"\namount = \"1 g/L\""}, []KeyChange{
			{Key: "ingredient.name", Item: "citric acid", Change: "removed", Before: "citric acid", BeforeLine: 9},
			{Key: "ingredient.amount", Item: "citric acid", Change: "removed", Before: "1 g/L", BeforeLine: 10},
			{Key: "ingredient.name", Item: "malic acid", Change: "added", After: "malic acid", AfterLine: 9},
			{Key: "ingredient.amount", Item: "malic acid", Change: "added", After: "1 g/L", AfterLine: 10}}},
		"the order of the recipe is no change": {[]string{"whey protein isolate, acidified", "citric acid", "citric acid", "whey protein isolate, acidified", "66 g/L", "1 g/L", "1 g/L", "66 g/L"}, []KeyChange{}},
	} {
		got := compare(t, before, textSide(t, strings.NewReplacer(c.pairs...).Replace(compareDrink)))
		require.Equal(t, c.want, got.Keys, name)
	}
}

func TestCompareAssessment(t *testing.T) {
	c := compare(t, textSide(t, compareDrink), textSide(t, strings.NewReplacer("ph = 3.2\n", "ph = 6.8\n").Replace(compareDrink)))
	require.Contains(t, c.Answers, AnswerChange{"class", "acidified", "low-acid"})
	require.Equal(t, beverage.Acidified, c.Before.Class)
	require.Equal(t, beverage.LowAcid, c.After.Class)
	require.Equal(t, 0, c.Before.Stops)
	require.Positive(t, c.After.Stops)
	require.Contains(t, c.Routes, AnswerChange{"hot fill", "fits", "does not fit"})
	require.Contains(t, gainedIDs(c), "low-acid-ambient-no-sterilization")
	var ph *FigureChange
	for i := range c.Figures {
		if c.Figures[i].What == "ph" {
			ph = &c.Figures[i]
		}
	}
	require.NotNil(t, ph)
	require.Equal(t, [2]float64{3.2, 6.8}, [2]float64{*ph.Before, *ph.After})
}

func gainedIDs(c *Comparison) (ids []string) {
	for _, f := range c.Findings.Gained {
		ids = append(ids, f.ID)
	}
	return ids
}

// A drink does not differ from itself, and two drinks differ the same way from
// both sides.
func TestCompareIsEven(t *testing.T) {
	files, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for i, file := range files {
		a, b := sideOf(t, file), sideOf(t, files[(i+1)%len(files)])
		same := compare(t, a, a)
		require.Empty(t, same.Keys)
		require.Empty(t, same.Answers)
		require.Empty(t, same.Figures)
		require.Empty(t, same.Routes)
		require.Empty(t, same.Findings.Gained)
		require.Empty(t, same.Findings.Lost)
		require.Empty(t, same.Findings.Changed)
		there, back := compare(t, a, b), compare(t, b, a)
		require.ElementsMatch(t, there.Findings.Gained, back.Findings.Lost, file)
		require.ElementsMatch(t, there.Findings.Lost, back.Findings.Gained, file)
		require.Len(t, back.Findings.Changed, len(there.Findings.Changed), file)
		require.Len(t, back.Keys, len(there.Keys), file)
		require.Len(t, back.Figures, len(there.Figures), file)
		require.Equal(t, there.After, back.Before)
		for _, k := range there.Keys {
			turned := map[string]string{KeyAdded: KeyRemoved, KeyRemoved: KeyAdded, KeyChanged: KeyChanged}[k.Change]
			require.Contains(t, back.Keys, KeyChange{k.Key, k.Item, turned, k.After, k.Before, k.AfterLine, k.BeforeLine}, file)
		}
	}
}
