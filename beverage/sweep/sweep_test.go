package sweep_test

import (
	"context"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/spec"
	"posset/beverage/sweep"
)

const quince = `[drink]
name = "Quince clear protein water"
serving = "330 mL"
base = "water"
[[ingredient]]
name = "whey protein isolate, acidified"
amount = "66 g/L"
[[ingredient]]
name = "citric acid"
amount = "1 g/L"
[[ingredient]]
name = "caffeine"
amount = "30 mg/serving"
[measured]
ph = 3.2
ph_tolerance = 0.05
ph_temperature = "25 C"
ph_equilibrated = "24 h"
brix = 6.5
[carbonation]
volumes = 2.2
[package]
type = "can"
fill = "330 mL"
brimful = "352 mL"
pressure_rating = "6.2 barg"
headspace_gas = "CO2"
[process]
route = "tunnel pasteurization"
hold_temperature = "66 C"
hold_time = "15 min"
fill_temperature = "4 C"
[storage]
distribution = "ambient"
temperature = "30 C"
shelf_life = "9 months"
[market]
jurisdiction = "US"
`

func drinkOf(t require.TestingT, text string) *beverage.Drink {
	d, err := spec.Parse([]byte(text), "quince.toml", ".", spec.Options{})
	require.NoError(t, err)
	return d
}

func run(t require.TestingT, d *beverage.Drink, steps int, vary ...string) *sweep.Result {
	var varied []sweep.Varied
	for _, text := range vary {
		v, err := sweep.Parse(d, text)
		require.NoError(t, err)
		varied = append(varied, v)
	}
	r, err := sweep.Run(context.Background(), d, varied, sweep.Options{Steps: steps})
	require.NoError(t, err)
	return r
}

func TestWhatCannotBeVaried(t *testing.T) {
	d := drinkOf(t, quince)
	for text, want := range map[string]string{
		"measured.ph":                  "\"measured.ph\" is no input to vary; write \"measured.ph=2.8..4.6\" or \"NAME OF INGREDIENT=20..120 g/L\"",
		"measured.ph=3":                `measured.ph: "3" is no range; write two ends, such as 2.8..4.6 or "20..120 g/L"`,
		"measured.ph=2.8..15":          "measured.ph: 15 is outside 0 to 14; write a bare number from 0 to 14",
		"measured.ph=4.6..2.8":         "measured.ph: 4.6..2.8 does not rise; write the lower end first",
		"measured.ph=2,8..4,6":         `measured.ph: "ph = 2,8" is not TOML (expected newline); write ph = 2.8, with a point`,
		"measured.phh=2..3":            `"measured.phh" is neither a key that can be varied nor an ingredient of the recipe; did you mean "measured.ph"?`,
		"ph=2..3":                      `"ph" is neither a key that can be varied nor an ingredient of the recipe; did you mean "measured.ph"?`,
		"package.type=1..2":            `"package.type" is a key that cannot be varied; what can be varied is package.fill, package.fill_tolerance, package.brimful, package.liquid_nitrogen, package.altitude`,
		"dose=1..2":                    `"dose" is neither a key that can be varied nor an ingredient of the recipe; what can be varied is drink.serving, drink.alcohol, measured.ph, measured.ph_tolerance, measured.water_activity, measured.brix, measured.density, measured.viscosity, carbonation.volumes, carbonation.loss_per_month, package.fill, package.fill_tolerance, package.brimful, package.liquid_nitrogen, package.altitude, process.hold_temperature, process.hold_time, process.fill_temperature, process.pack_hold_time, process.pack_hold_temperature, process.initial_temperature, process.pressure, process.filter_pore, storage.temperature, storage.shelf_life`,
		"citric acdi=1..2 g/L":         `"citric acdi" is neither a key that can be varied nor an ingredient of the recipe; did you mean "citric acid"?`,
		"citric acid=1..2":             `citric acid: "1" has no unit; write "1 g/L", "1 %" or "1 g/serving"`,
		"citric acid=1 g/L..2 %":       `citric acid: "1 g/L" and "2 %" are in two units; write both ends in one`,
		"citric acid=1..2 barg":        `citric acid: "1 barg" is a pressure; write it as "2.8 g/L", "0.9 %" or "12 g/serving"`,
		"process.hold_time=1..2":       `process.hold_time: "1" has no unit; write "1 s" or "1 min"`,
		"storage.temperature=4..900 C": `storage.temperature: "900 C" is out of range; write a value from -60 to 100 °C`,
	} {
		_, err := sweep.Parse(d, text)
		if err == nil || err.Error() != want {
			t.Errorf("%s:\n got %v\nwant %s", text, err, want)
		}
	}
}

func TestTwiceInTheRecipe(t *testing.T) {
	d := drinkOf(t, quince+"[[ingredient]]\nname = \"citric acid\"\namount = \"1 g/L\"\n")
	_, err := sweep.Parse(d, "citric acid=1..2 g/L")
	require.EqualError(t, err, `"citric acid" stands twice in the recipe, so which is meant is unclear; write it once`)
}

// The class goes from acidified to undecided to low-acid as the pH rises through
// 4.6, and the change is told where it lies.
func TestChangesAreTold(t *testing.T) {
	r := run(t, drinkOf(t, quince), 61, "measured.ph=2.0..8.0")
	var class []sweep.Change
	for _, c := range r.Changes {
		if c.What == "class" {
			class = append(class, c)
		}
	}
	require.Len(t, class, 2)
	require.Equal(t, [2]string{"acidified", "undecided"}, [2]string{class[0].From, class[0].To})
	require.InDelta(t, 4.5, class[0].Low, 0.11)
	require.InDelta(t, 0.1, class[0].High-class[0].Low, 1e-9)
	require.Equal(t, [2]string{"undecided", "low-acid"}, [2]string{class[1].From, class[1].To})
	require.Equal(t, "class", r.Changes[0].What)
	require.Nil(t, class[0].With)
	require.Len(t, r.Points, 61)
	require.Equal(t, []float64{2.0}, r.Points[0].At)
	require.Equal(t, []float64{8.0}, r.Points[60].At)
}

// A point of a sweep is the assessment of a spec that says the same.
func TestAPointIsAnAssessment(t *testing.T) {
	for name, c := range map[string]struct{ vary, old, is string }{
		"pH":          {"measured.ph=3.2..4.4", "ph = 3.2\n", "ph = 4.4\n"},
		"volumes":     {"carbonation.volumes=2.2..3.4", "volumes = 2.2", "volumes = 3.4"},
		"fill":        {"package.fill=330..345 mL", `fill = "330 mL"`, `fill = "345 mL"`},
		"fill, in L":  {"package.fill=0.33..0.345 L", `fill = "330 mL"`, `fill = "345 mL"`},
		"hold":        {"process.hold_temperature=60..72 C", `"66 C"`, `"72 C"`},
		"hold, in F":  {"process.hold_temperature=140 F..161.6 F", `"66 C"`, `"72 C"`},
		"shelf life":  {"storage.shelf_life=3..12 months", `"9 months"`, `"12 months"`},
		"per serving": {"caffeine=30..200 mg/serving", `"30 mg/serving"`, `"200 mg/serving"`},
	} {
		r := run(t, drinkOf(t, quince), 3, c.vary)
		last := r.Points[2]
		text := replaceOne(t, quince, c.old, c.is)
		if name == "per serving" {
			text = replaceOne(t, replaceOne(t, text, "ph = 3.2\n", ""), "brix = 6.5\n", "")
		}
		a, err := assess.Drink(context.Background(), drinkOf(t, text), assess.Options{})
		require.NoError(t, err)
		require.Equal(t, a.AcidClass.Class, last.Class, name)
		require.Equal(t, a.AcidClass.PHHigh, last.PHHigh, name)
		require.Equal(t, levels(a.Findings, beverage.Stop), last.Stops, name)
		require.Equal(t, levels(a.Findings, beverage.Review), last.Reviews, name)
		for i, x := range a.Routes {
			require.Equal(t, x.Outcome, last.Routes[i].Outcome, "%s: %s", name, x.Route)
		}
	}
}

func replaceOne(t *testing.T, text, old, is string) string {
	i := strings.Index(text, old)
	require.GreaterOrEqual(t, i, 0, old)
	return text[:i] + is + text[i+len(old):]
}

// levels are the ids of findings whose highest level this is.
func levels(fs []beverage.Finding, level beverage.Level) []string {
	list := []string{}
	for _, f := range fs {
		top := f.Level
		for _, g := range fs {
			if g.ID == f.ID {
				top = min(top, g.Level)
			}
		}
		if top == level && !slices.Contains(list, f.ID) {
			list = append(list, f.ID)
		}
	}
	return list
}

// A reading holds for the recipe it was taken of: with an ingredient varied the
// pH is predicted at every point, also at the recipe's own amount.
func TestReadingsDoNotHoldForAnotherRecipe(t *testing.T) {
	r := run(t, drinkOf(t, quince), 5, "citric acid=0..20 g/L")
	require.Equal(t, []string{"measured.ph, measured.brix: read in the recipe as it is written, so left out where citric acid is varied; what can be predicted is predicted"}, r.Notes)
	for i, p := range r.Points {
		require.Equal(t, beverage.Predicted, p.PHBasis)
		if i > 0 {
			require.Less(t, *p.PH, *r.Points[i-1].PH)
		}
	}
}

// With the pH varied beside it, the pH is what it is set to.
func TestTwoInputs(t *testing.T) {
	r := run(t, drinkOf(t, quince), 13, "measured.ph=3.0..5.4", "whey protein isolate, acidified=20..120 g/L")
	require.Len(t, r.Points, 169)
	require.Equal(t, []float64{3.0, 20}, r.Points[0].At)
	require.Equal(t, []float64{3.0, 120}, r.Points[12].At)
	require.Equal(t, []float64{5.4, 120}, r.Points[168].At)
	for _, p := range r.Points {
		require.Equal(t, beverage.Measured, p.PHBasis)
		require.InDelta(t, p.At[0], *p.PH, 1e-9)
	}
	require.Equal(t, "class", r.Changes[0].What)
	require.Equal(t, &sweep.OtherSpan{Key: "whey protein isolate, acidified", Low: 20, High: 120}, r.Changes[0].With)
}

// The drink that was handed in is as it was.
func TestTheDrinkIsNotTouched(t *testing.T) {
	d, same := drinkOf(t, quince), drinkOf(t, quince)
	run(t, d, 3, "carbonation.volumes=1..4", "citric acid=0..20 g/L")
	require.Equal(t, same, d)
	still := drinkOf(t, replaceOne(t, quince, "[carbonation]\nvolumes = 2.2\n", ""))
	run(t, still, 3, "carbonation.volumes=1..4")
	require.Nil(t, still.Carbonation)
}

// A still drink stays still, whatever else is varied.
func TestAStillDrinkStaysStill(t *testing.T) {
	still := drinkOf(t, replaceOne(t, quince, "[carbonation]\nvolumes = 2.2\n", ""))
	for _, vary := range []string{"citric acid=0..20 g/L", "measured.ph=3..4", "package.fill=300..330 mL"} {
		for _, p := range run(t, still, 3, vary).Points {
			for _, id := range slices.Concat(p.Stops, p.Reviews, p.Notes) {
				require.NotContains(t, id, "carbonat", vary)
			}
		}
	}
}

func TestBounds(t *testing.T) {
	d := drinkOf(t, quince)
	ph, err := sweep.Parse(d, "measured.ph=3..4")
	require.NoError(t, err)
	acid, err := sweep.Parse(d, "citric acid=1..2 g/L")
	require.NoError(t, err)
	for want, c := range map[string]struct {
		varied []sweep.Varied
		steps  int
	}{
		"a sweep takes one input or two that differ":                                        {nil, 3},
		"1 is no number of steps; write one from 2 to 1001":                                 {[]sweep.Varied{ph}, 1},
		"1002 is no number of steps; write one from 2 to 1001":                              {[]sweep.Varied{ph}, 1002},
		"500 steps of 2 inputs are 250000 points, and the most is 20000; write fewer steps": {[]sweep.Varied{ph, acid}, 500},
	} {
		_, err := sweep.Run(context.Background(), d, c.varied, sweep.Options{Steps: c.steps})
		require.EqualError(t, err, want)
	}
	_, err = sweep.Run(context.Background(), d, []sweep.Varied{ph, ph}, sweep.Options{Steps: 3})
	require.EqualError(t, err, "a sweep takes one input or two that differ")
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err = sweep.Run(ctx, d, []sweep.Varied{ph}, sweep.Options{Steps: 100})
	require.ErrorIs(t, err, context.Canceled)
}

var favour = map[beverage.Class]int{beverage.LowAcid: 0, beverage.Undecided: 1, beverage.Acidified: 2, beverage.Acid: 3}

// Whatever the drink, a higher pH never makes the class more favourable.
func TestClassNeverGetsBetterWithPH(t *testing.T) {
	files, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var drinks []*beverage.Drink
	for _, f := range files {
		d, err := spec.Read(f, spec.Options{})
		require.NoError(t, err)
		drinks = append(drinks, d)
	}
	rapid.Check(t, func(t *rapid.T) {
		d := drinks[rapid.IntRange(0, len(drinks)-1).Draw(t, "drink")]
		low := rapid.Float64Range(1.5, 7).Draw(t, "from")
		v, err := sweep.Parse(d, "measured.ph="+decimal(low)+".."+decimal(low+rapid.Float64Range(0.05, 4).Draw(t, "width")))
		if err != nil {
			t.Fatal(err)
		}
		r, err := sweep.Run(context.Background(), d, []sweep.Varied{v}, sweep.Options{Steps: 7})
		if err != nil {
			t.Fatal(err)
		}
		for i := 1; i < len(r.Points); i++ {
			if a, b := r.Points[i-1], r.Points[i]; favour[b.Class] > favour[a.Class] {
				t.Fatalf("%s: %v at pH %v, %v at %v", d.Name, a.Class, a.At, b.Class, b.At)
			}
		}
	})
}

// Everything that differs between two neighbouring points is told, and nothing
// that does not.
func TestEveryChangeIsTold(t *testing.T) {
	r := run(t, drinkOf(t, quince), 31, "carbonation.volumes=0.5..4.5")
	var told, seen int
	for _, c := range r.Changes {
		if c.What == "class" || c.What == "package-pressure" {
			told++
		}
		require.NotEqual(t, c.From, c.To)
	}
	for i := 1; i < len(r.Points); i++ {
		a, b := r.Points[i-1], r.Points[i]
		if a.Class != b.Class {
			seen++
		}
		if slices.Contains(a.Stops, "package-pressure") != slices.Contains(b.Stops, "package-pressure") {
			seen++
		}
	}
	require.Equal(t, seen, told)
	require.Positive(t, seen)
}

// BenchmarkThousandPoints is a sweep of 1,000 points of a carbonated whey drink.
func BenchmarkThousandPoints(b *testing.B) {
	d := drinkOf(b, quince)
	for b.Loop() {
		run(b, d, 1000, "measured.ph=2.8..4.6")
	}
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', 4, 64) }
