package copacker_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/copacker"
	"posset/beverage/spec"
)

const soundDrink = `[drink]
name = "Quince clear protein water"
serving = "330 mL"
base = "water"
[[ingredient]]
name = "whey protein isolate, acidified"
amount = "66 g/L"
[measured]
ph = 3.2
ph_tolerance = 0.05
ph_temperature = "25 C"
ph_equilibrated = "24 h"
[package]
type = "heat-set PET bottle"
fill = "330 mL"
brimful = "348 mL"
headspace_gas = "nitrogen"
[process]
route = "hot fill"
hold_temperature = "92 C"
hold_time = "30 s"
fill_temperature = "88 C"
pack_hold_time = "2 min"
pack_hold_temperature = "84 C"
[storage]
distribution = "ambient"
temperature = "30 C"
shelf_life = "9 months"
[market]
jurisdiction = "US"
`

const soundLine = `[[line]]
name = "Bottles"
plant = "Oxlip Bottling"
markets = "US"
distribution = "ambient"
registrations = ["US food", "US acidified"]
dairy_licence = true
allergens = "milk"
minimum_run = "10000 L"
headspace_gas = "nitrogen"
[[line.process]]
route = "hot fill"
classes = ["acid", "acidified"]
hold_temperature = { at_least = "75 C", at_most = "98 C" }
hold_time = { at_least = "15 s", at_most = "60 s" }
fill_temperature = { at_least = "80 C", at_most = "92 C" }
pack_hold_time = { at_least = "1 min", at_most = "5 min" }
[[line.pack]]
type = "heat-set PET bottle"
fill = { at_least = "250 mL", at_most = "1000 mL" }
`

func match(t *testing.T, drinkText, lineText string, o copacker.Options) copacker.LineResult {
	t.Helper()
	d, err := spec.Parse([]byte(drinkText), "quince.toml", ".", spec.Options{})
	require.NoError(t, err)
	file, err := copacker.Parse([]byte(lineText), "lines.toml")
	require.NoError(t, err)
	r, err := copacker.Match(context.Background(), d, file, o)
	require.NoError(t, err)
	require.Len(t, r.Lines, 1)
	return r.Lines[0]
}

func TestNothingMissing(t *testing.T) {
	l := match(t, soundDrink, soundLine, copacker.Options{})
	require.Empty(t, l.Missing)
	require.True(t, l.NothingMissing)
	require.Equal(t, beverage.HotFill, l.By)
	require.Equal(t, []string{"makes 10000 L at least; no run was asked for"}, l.Notes)
}

// missing is one case: what is changed in the line or in the drink, and the one
// thing that is missing then.
type missing struct {
	line, drink []string // old, new
	run         float64  // litres; 0: none is asked for
	side        copacker.Side
	key, at     string
	text        string
	finding     string
}

func TestOneThingMissing(t *testing.T) {
	for name, c := range map[string]missing{
		"market": {line: []string{`markets = "US"`, `markets = ["EU", "CA"]`}, side: copacker.OfLine, key: "line.markets", at: "lines.toml:4",
			text: "the drink is for US, and the line packs for EU, CA"},
		"no market": {line: []string{"markets = \"US\"\n", ""}, side: copacker.OfLine, key: "line.markets", at: "lines.toml:1",
			text: "the drink is for US, and the line does not say for which markets it packs"},
		"distribution": {line: []string{`distribution = "ambient"`, `distribution = "frozen"`}, side: copacker.OfLine, key: "line.distribution", at: "lines.toml:5",
			text: "ambient is asked, and the line stores and ships frozen"},
		"no distribution of the drink": {drink: []string{"distribution = \"ambient\"\n", ""}, side: copacker.OfSpec, key: "storage.distribution", at: "quince.toml",
			text: "the spec does not say how the drink is kept and shipped"},
		"registration": {line: []string{`, "US acidified"`, ""}, side: copacker.OfLine, key: "line.registrations", at: "lines.toml:6",
			text: `"US acidified" is not said of the plant: register the plant within 10 days of first packing (21 CFR 108.25(c)(1), (c)(2) (2015 text))`},
		"dairy": {line: []string{"dairy_licence = true", "dairy_licence = false"}, side: copacker.OfLine, key: "line.dairy_licence", at: "lines.toml:7",
			text: "milk or milk protein is in the drink (for its licence see US: Grade A Pasteurized Milk Ordinance, sections 3 and 11 (recalled, high)), and the line has none"},
		"allergen": {line: []string{`allergens = "milk"`, `allergens = "none"`}, side: copacker.OfLine, key: "line.allergens", at: "lines.toml:8",
			text: "milk is in the drink, and the line handles none"},
		"unknown ingredient": {drink: []string{"[measured]", "[[ingredient]]\nname = \"quillwort essence\"\namount = \"1 g/L\"\nkind = \"flavour\"\nacid_food = false\n[measured]"}, side: copacker.OfRequest, key: "--allergens",
			text: "the allergens of quillwort essence are not known: ask its supplier, then say them with --allergens, or none"},
		"run": {run: 4000, side: copacker.OfLine, key: "line.minimum_run", at: "lines.toml:9", text: "a run of 4000 L is asked, and the line makes 10000 L at least"},
		"no run told": {run: 4000, line: []string{"minimum_run = \"10000 L\"\n", ""}, side: copacker.OfLine, key: "line.minimum_run", at: "lines.toml:1",
			text: "a run of 4000 L is asked, and the line does not say its least"},
		"headspace": {line: []string{`headspace_gas = "nitrogen"`, `headspace_gas = "air"`}, side: copacker.OfLine, key: "line.headspace_gas", at: "lines.toml:10",
			text: "nitrogen in the headspace is asked, and the line puts air there"},
		"particles": {drink: []string{`base = "water"`, "base = \"water\"\nparticles = \"pulp\""}, line: []string{`headspace_gas =`, "particles = \"none\"\nheadspace_gas ="}, side: copacker.OfLine, key: "line.particles", at: "lines.toml:10",
			text: "pulp is in the drink, and the coarsest that the line can run is none"},
		"viscosity": {drink: []string{"ph = 3.2", "ph = 3.2\nviscosity = \"80 mPa·s\""}, line: []string{`headspace_gas =`, "viscosity_at_most = \"50 mPa·s\"\nheadspace_gas ="}, side: copacker.OfLine, key: "line.viscosity_at_most", at: "lines.toml:10",
			text: "the drink has 80 mPa·s, and the line runs up to 50 mPa·s"},
		"class": {line: []string{`["acid", "acidified"]`, `"acid"`}, side: copacker.OfLine, key: "line.process.classes", at: "lines.toml:13",
			text: "the drink counts as acidified, and the line's hot fill is set up for acid"},
		"too hot": {line: []string{`at_most = "92 C"`, `at_most = "85 C"`}, side: copacker.OfLine, key: "line.process.fill_temperature.at_most", at: "lines.toml:16",
			text: "fill temperature of 88 °C is asked, and the line goes up to 85 °C"},
		"too cool": {line: []string{`at_least = "80 C"`, `at_least = "90 C"`}, side: copacker.OfLine, key: "line.process.fill_temperature.at_least", at: "lines.toml:16",
			text: "fill temperature of 88 °C is asked, and the line starts at 90 °C"},
		"no end": {line: []string{`, at_most = "60 s"`, ""}, side: copacker.OfLine, key: "line.process.hold_time.at_most", at: "lines.toml:15",
			text: "hold time of 30 s is asked, and the line does not say how far up it goes"},
		"no range": {line: []string{"pack_hold_time = { at_least = \"1 min\", at_most = \"5 min\" }\n", ""}, side: copacker.OfLine, key: "line.process.pack_hold_time", at: "lines.toml:11",
			text: "pack hold time of 2 min is asked, and the line does not say what it can do"},
		"heat that the spec does not state": {drink: []string{"pack_hold_time = \"2 min\"\n", ""}, line: []string{`at_least = "1 min", at_most = "5 min"`, `at_least = "0 s", at_most = "0.5 s"`}, // 0.85 s at 92 °C
			side: copacker.OfLine, key: "line.process.pack_hold_time.at_most", at: "lines.toml:17",
			text: "F of 1.2 min at 71.1 °C, z 10.8 C°, in the coldest place of the closed pack (5 log of pathogens, up to pH 4.1); commercial fills are at 82 °C, held 60 to 180 s is asked, and the line reaches 92 °C for 0.5 s"},
		"fill": {line: []string{`at_least = "250 mL"`, `at_least = "500 mL"`}, side: copacker.OfLine, key: "line.pack.fill.at_least", at: "lines.toml:20",
			text: "fill of 330 mL is asked, and the line starts at 500 mL"},
		"nitrogen": {drink: []string{"[process]", "liquid_nitrogen = \"0.05 g\"\n[process]"}, side: copacker.OfLine, key: "line.nitrogen_dosing", at: "lines.toml:1",
			text: "liquid nitrogen of 0.05 g a pack is asked, and the line does not say that it can dose it"},
		"flow of a scheduled process": {drink: []string{"[storage]", "[[process.critical]]\nwhat = \"flow\"\nat_most = \"6000 L/h\"\n[storage]"}, line: []string{"[[line.pack]]", "flow = { at_least = \"8000 L/h\", at_most = \"9000 L/h\" }\n[[line.pack]]"},
			side: copacker.OfLine, key: "line.process.flow.at_least", at: "lines.toml:18", text: "a flow of at most 6000 L/h is asked, and the line starts at 8000 L/h"},
	} {
		t.Run(name, func(t *testing.T) {
			o := copacker.Options{}
			if c.run > 0 {
				mL := 1000 * c.run
				o.RunML = &mL
			}
			l := match(t, replaced(soundDrink, c.drink), replaced(soundLine, c.line), o)
			var found *copacker.Missing
			for i := range l.Missing {
				if l.Missing[i].Key == c.key {
					found = &l.Missing[i]
				}
			}
			require.NotNil(t, found, "%+v", l.Missing)
			require.Equal(t, c.text, found.Text)
			require.Equal(t, c.side, found.Side)
			require.Equal(t, c.at, string(found.At))
			require.Equal(t, c.finding, string(found.Finding))
			require.False(t, l.NothingMissing)
		})
	}
}

func replaced(text string, pairs []string) string { return strings.NewReplacer(pairs...).Replace(text) }

// What the spec says of its own process is asked of that route alone; of another
// one, what published figures ask of it.
func TestAnotherRouteIsHeldAgainstItsNeed(t *testing.T) {
	drink := replaced(soundDrink, []string{"route = \"hot fill\"\n", "", `type = "heat-set PET bottle"`, `type = "glass bottle"`})
	tunnel := `[[line]]
name = "Bottles"
plant = "Oxlip Bottling"
markets = "US"
distribution = "ambient"
registrations = ["US food", "US acidified"]
dairy_licence = true
allergens = "milk"
headspace_gas = "nitrogen"
[[line.process]]
route = "tunnel pasteurization"
classes = "acidified"
hold_temperature = { at_least = "50 C", at_most = "66 C" }
hold_time = { at_least = "1 min", at_most = "MOST" }
[[line.pack]]
type = "glass bottle"
fill = { at_least = "330 mL", at_most = "330 mL" }
`
	// F 1.2 min at 71.1 °C, z 10.83 C° takes 3.6 min at 66 °C.
	short := match(t, drink, strings.Replace(tunnel, "MOST", "3 min", 1), copacker.Options{})
	require.Len(t, short.Missing, 1, "%+v", short.Missing)
	require.Equal(t, "line.process.hold_time.at_most", short.Missing[0].Key)
	require.Equal(t, "F of 1.2 min at 71.1 °C, z 10.8 C° (5 log of pathogens, up to pH 4.1) is asked, and the line reaches 66 °C for 3 min", short.Missing[0].Text)
	long := match(t, drink, strings.Replace(tunnel, "MOST", "4 min", 1), copacker.Options{})
	require.True(t, long.NothingMissing, "%+v", long.Missing)
}

// A route that the rules rule out for the drink is told with the finding.
func TestARuledOutRouteNamesItsFinding(t *testing.T) {
	l := match(t, replaced(soundDrink, []string{`type = "heat-set PET bottle"`, `type = "PET bottle"`}), replaced(soundLine, []string{`type = "heat-set PET bottle"`, `type = "PET bottle"`}), copacker.Options{})
	require.Equal(t, beverage.DoesNotFit, l.Outcome)
	require.Len(t, l.Missing, 1)
	require.Equal(t, copacker.Missing{What: "route", Side: copacker.OfSpec, Key: "package.type", At: "quince.toml:14", Finding: "hot-fill-package", Text: l.Missing[0].Text}, l.Missing[0])
}

// An undecided class asks for everything that a low-acid drink asks for.
func TestAnUndecidedClassCountsAsLowAcid(t *testing.T) {
	l := match(t, replaced(soundDrink, []string{"ph = 3.2\n", "ph = 4.6\n"}), soundLine, copacker.Options{})
	var words []string
	for _, m := range l.Missing {
		words = append(words, m.Text)
	}
	require.Contains(t, words, "the drink counts as low-acid, for its class is undecided, and the line's hot fill is set up for acid, acidified")
}

// The process that misses least speaks for the line, and what is told of one is
// never lost: the others stand beside it.
func TestTheBestProcessSpeaks(t *testing.T) {
	two := strings.Replace(soundLine, "[[line.process]]", "[[line.process]]\nroute = \"cold fill\"\n[[line.process]]", 1)
	l := match(t, soundDrink, two, copacker.Options{})
	require.True(t, l.NothingMissing)
	require.Equal(t, beverage.HotFill, l.By)
	require.Len(t, l.Others, 1)
	require.Equal(t, beverage.ColdFill, l.Others[0].Route)
	require.Equal(t, "line.process.route", l.Others[0].Missing[0].Key)
}

func TestALineWithoutAProcess(t *testing.T) {
	bare := soundLine[:strings.Index(soundLine, "[[line.process]]")] + soundLine[strings.Index(soundLine, "[[line.pack]]"):]
	l := match(t, soundDrink, bare, copacker.Options{})
	require.Equal(t, beverage.Route(""), l.By)
	require.Len(t, l.Missing, 1)
	require.Equal(t, "line.process", l.Missing[0].Key)
}

func TestAllergensSaidBesideTheSpec(t *testing.T) {
	drink := replaced(soundDrink, []string{"[measured]", "[[ingredient]]\nname = \"quillwort essence\"\namount = \"1 g/L\"\nkind = \"flavour\"\nacid_food = false\n[measured]"})
	require.True(t, match(t, drink, soundLine, copacker.Options{Allergens: []string{"none"}}).NothingMissing)
	l := match(t, drink, soundLine, copacker.Options{Allergens: []string{"celery"}})
	require.Len(t, l.Missing, 1)
	require.Equal(t, "celery is in the drink, and the line handles milk", l.Missing[0].Text)
}

func TestWhatIsHandledBesideIsNoted(t *testing.T) {
	l := match(t, soundDrink, replaced(soundLine, []string{`allergens = "milk"`, `allergens = ["milk", "soy", "egg"]`}), copacker.Options{})
	require.True(t, l.NothingMissing)
	require.Equal(t, "handles soy, egg beside what the drink holds: ask how the line is cleared, and look at the label", l.Notes[0])
}
