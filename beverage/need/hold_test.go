package need_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/need"
	"posset/beverage/spec"
)

func needOf(t *testing.T, ph, distribution string, r beverage.Route) need.Need {
	text := "[drink]\nname = \"Barley trial\"\nbase = \"water\"\n[[ingredient]]\nname = \"whey protein isolate\"\namount = \"30 g/L\"\n[measured]\nph = " + ph +
		"\nph_tolerance = 0.05\nph_temperature = \"25 C\"\n[storage]\ndistribution = \"" + distribution + "\"\n"
	d, err := spec.Parse([]byte(text), "drink.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	return need.For(f.WithRoute(r))
}

func TestHold(t *testing.T) {
	for name, c := range map[string]struct {
		n      need.Need
		tC     float64
		want   float64
		told   bool
		within float64
	}{
		"F0 of 3 at its own temperature":         {needOf(t, "6.8", "ambient", beverage.RetortRoute), 121.1, 180, true, 1e-9},
		"F0 of 3, ten degrees hotter":            {needOf(t, "6.8", "ambient", beverage.Aseptic), 131.1, 18, true, 1e-9},
		"hot fill at pH 3.3 to 4.1, at 71.1":     {needOf(t, "3.5", "ambient", beverage.HotFill), 71.1, 72, true, 1e-9}, // 1.2 min: FDA draft guidance, Acidified Foods (2010), table 7
		"hot fill, colder than any line":         {needOf(t, "3.5", "ambient", beverage.HotFill), 55, math.Inf(1), true, 0},
		"tunnel of an acidified drink":           {needOf(t, "4.3", "ambient", beverage.Tunnel), 71.1, 336, true, 1e-9},           // 5.6 min, the same table
		"ultra-pasteurized":                      {needOf(t, "6.8", "refrigerated", beverage.ExtendedShelfLife), 138, 2, true, 0}, // 21 CFR 131.3(c)
		"ultra-pasteurized, too cool":            {needOf(t, "6.8", "refrigerated", beverage.ExtendedShelfLife), 137, math.Inf(1), true, 0},
		"no pasteurization for ambient low-acid": {needOf(t, "6.8", "ambient", beverage.Flash), 95, math.Inf(1), false, 0},
		"high pressure has no figure":            {needOf(t, "3.5", "refrigerated", beverage.HighPressure), 95, math.Inf(1), false, 0},
		"cold fill has none":                     {needOf(t, "3.5", "ambient", beverage.ColdFill), 95, math.Inf(1), false, 0},
	} {
		got, told := c.n.HoldS(c.tC)
		if told != c.told || !(got == c.want || math.Abs(got-c.want) <= c.within) {
			t.Errorf("%s: %v s (told %v), want %v (%v): %s", name, got, told, c.want, c.told, c.n.Text)
		}
	}
}

// Milk has the short-time line of each of its markets; sugar raises the American one.
func TestMilkLines(t *testing.T) {
	of := func(base, more, markets string) need.Need {
		text := "[drink]\nname = \"Barley milk\"\nbase = \"" + base + "\"\n[[ingredient]]\nname = \"skim milk\"\namount = \"900 g/L\"\n" + more +
			"[measured]\nph = 6.7\n[process]\nroute = \"flash pasteurization\"\n[storage]\ndistribution = \"refrigerated\"\n[market]\njurisdiction = " + markets + "\n"
		d, err := spec.Parse([]byte(text), "drink.toml", ".", spec.Options{})
		require.NoError(t, err)
		f, err := facts.Of(context.Background(), d, ingredient.Default())
		require.NoError(t, err)
		return need.For(f)
	}
	const spores = "; and against non-proteolytic Clostridium botulinum 90 °C for 10 min or its equal, or a life of at most 10 days at 8 °C"
	require.Equal(t, "the heat that the law asks of milk, or its equal: US 72 C for 15 s; EU 72 C for 15 s"+spores, of("milk", "", `["US", "EU"]`).Text)
	sweet := "[[ingredient]]\nname = \"sucrose\"\namount = \"40 g/L\"\n"
	require.Equal(t, "the heat that the law asks of milk, or its equal: US 75 C for 15 s; ANZ 72 C for 15 s"+spores, of("milk", sweet, `["US", "ANZ"]`).Text)
	require.Equal(t, "5 log of the pertinent pathogen"+spores, of("milk", "", `"CA"`).Text, "the Canadian section has no pair")
}
