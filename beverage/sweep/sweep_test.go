package sweep_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

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
		"measured.ph":                       "\"measured.ph\" is no input to vary; write \"measured.ph=2.8..4.6\" or \"NAME OF INGREDIENT=20..120 g/L\"",
		"measured.ph=3":                     `measured.ph: "3" is no range; write two ends, such as 2.8..4.6 or "20..120 g/L"`,
		"measured.ph=2.8..15":               "measured.ph: 15 is outside 0 to 14; write a bare number from 0 to 14",
		"measured.ph=4.6..2.8":              "measured.ph: 4.6..2.8 does not rise; write the lower end first",
		"measured.ph=2,8..4,6":              `measured.ph: "ph = 2,8" is not TOML (expected newline); write ph = 2.8, with a point`,
		"measured.phh=2..3":                 `"measured.phh" is neither a key that can be varied nor an ingredient of the recipe; did you mean "measured.ph"?`,
		"ph=2..3":                           `"ph" is neither a key that can be varied nor an ingredient of the recipe; did you mean "measured.ph"?`,
		"package.type=1..2":                 `"package.type" is a key that cannot be varied; what can be varied is package.fill, package.fill_tolerance, package.brimful, package.pressure_rating, package.liquid_nitrogen, package.altitude`,
		"dose=1..2":                         `"dose" is neither a key that can be varied nor an ingredient of the recipe; what can be varied is drink.serving, drink.alcohol, measured.ph, measured.ph_tolerance, measured.water_activity, measured.brix, measured.density, measured.viscosity, carbonation.volumes, carbonation.loss_per_month, package.fill, package.fill_tolerance, package.brimful, package.pressure_rating, package.liquid_nitrogen, package.altitude, process.hold_temperature, process.hold_time, process.fill_temperature, process.pack_hold_time, process.pack_hold_temperature, process.initial_temperature, process.pressure, process.filter_pore, storage.temperature, storage.shelf_life`,
		"citric acdi=1..2 g/L":              `"citric acdi" is neither a key that can be varied nor an ingredient of the recipe; did you mean "citric acid"?`,
		"citric acid=1..2":                  `citric acid: "1" has no unit; write "1 g/L", "1 %" or "1 g/serving"`,
		"citric acid=1 g/L..2 %":            `citric acid: "1 g/L" and "2 %" are in two units; write both ends in one`,
		"citric acid=1..2 barg":             `citric acid: "1 barg" is a pressure; write it as "2.8 g/L", "0.9 %" or "12 g/serving"`,
		"package.pressure_rating=2..3 bara": `package.pressure_rating: "2 bara" is absolute; write the gauge pressure, such as "6.2 barg"`,
		"package.pressure_rating=2..3 bar":  `package.pressure_rating: "2 bar" is neither gauge nor absolute; write "2 barg" or "2 bara"`,
		"process.hold_time=1..2":            `process.hold_time: "1" has no unit; write "1 s" or "1 min"`,
		"storage.temperature=4..900 C":      `storage.temperature: "900 C" is out of range; write a value from -60 to 100 °C`,
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
		"pH":           {"measured.ph=3.2..4.4", "ph = 3.2\n", "ph = 4.4\n"},
		"volumes":      {"carbonation.volumes=2.2..3.4", "volumes = 2.2", "volumes = 3.4"},
		"fill":         {"package.fill=330..345 mL", `fill = "330 mL"`, `fill = "345 mL"`},
		"rating":       {"package.pressure_rating=2..3 barg", `"6.2 barg"`, `"3 barg"`},
		"rating, psig": {"package.pressure_rating=30..43.5113 psig", `"6.2 barg"`, `"43.5113 psig"`},
		"fill, in L":   {"package.fill=0.33..0.345 L", `fill = "330 mL"`, `fill = "345 mL"`},
		"hold":         {"process.hold_temperature=60..72 C", `"66 C"`, `"72 C"`},
		"hold, in F":   {"process.hold_temperature=140 F..161.6 F", `"66 C"`, `"72 C"`},
		"shelf life":   {"storage.shelf_life=3..12 months", `"9 months"`, `"12 months"`},
		"per serving":  {"caffeine=30..200 mg/serving", `"30 mg/serving"`, `"200 mg/serving"`},
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
