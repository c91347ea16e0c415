package facts

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"posset/beverage"
	"posset/beverage/law"
)

// The limit is on the silicone: a preparation counts by its strength, as pure where
// that is not said, and every antifoam of the drink adds to it.
func TestAntifoamCountsAsSilicone(t *testing.T) {
	strong := line("silicone antifoam", "30 mg/L") + "strength = \"30 %\"\n"
	for _, c := range []struct {
		recipe       string
		high         float64 // mg/L; NaN where it cannot be told
		unsaid, some bool
	}{
		{line("sucrose", "80 g/L"), 0, false, false},
		{strong, 30 * 0.3 * 1.02, false, true},
		{line("silicone antifoam", "30 mg/L"), 30 * 1.02, true, true},
		{line("simethicone emulsion", "10 mg/L"), 10 * 1.02, true, true},
		{line("our own defoamer", "5 mg/L") + "kind = \"aid\"\n", 5 * 1.02, true, true},
		{strong + line("dimethylpolysiloxane", "2 mg/L") + "strength = \"50 %\"\n", (9 + 1) * 1.02, false, true},
		{line("silicone antifoam", "0.01 g/serving"), math.NaN(), true, true},
	} {
		a, unsaid, some := factsOf(t, c.recipe).Antifoam()
		assert.Equal(t, []bool{c.unsaid, c.some}, []bool{unsaid, some}, c.recipe)
		if !c.some {
			continue
		}
		high, known := a.In(law.AdditiveLimit{ExpressedAs: law.AsAdded})
		assert.Equal(t, !math.IsNaN(c.high), known, c.recipe)
		if known {
			assert.InDelta(t, c.high, high, 0.01, c.recipe)
		}
	}
}

// The most that a drink may hold makes no less pressure than its middle, and what
// nobody weighed counts as heavy.
func TestHeaviestLiquidIsNeverLighter(t *testing.T) {
	for _, recipe := range []string{
		line("sucrose", "80 g/L"), line("whey protein isolate, acidified", "60 g/L"), line("sodium chloride", "3 g/L"),
		line("sucrose", "40 g/L") + line("inulin", "5 g/serving"),
	} {
		f := factsOf(t, recipe)
		mid, err := f.liquid().Pressure(2.5, 30)
		assert.NoError(t, err, recipe)
		high, err := f.heaviest().Pressure(2.5, 30)
		assert.NoError(t, err, recipe)
		assert.Greater(t, float64(high), float64(mid), recipe)
	}
	unweighed := factsOf(t, line("inulin", "5 g/serving")).heaviest()
	assert.Equal(t, float64(heavySolidsGPerL), unweighed.OtherGPerL)
	beside := factsOf(t, line("inulin", "5 g/serving")+line("maltodextrin DE 10", "300 g/L")).heaviest()
	assert.InDelta(t, mostSolidsGPerL, beside.SugarGPerL+beside.OtherGPerL, 1e-9)
}

// The salts of the recipe reach the gas model, mol per litre of drink.
func TestSaltOfTheRecipeCounts(t *testing.T) {
	ions := factsOf(t, line("sodium chloride", "8.766 g/L")).liquid().IonsMolPerL
	assert.InDelta(t, 0.15, ions["Na+"], 0.001)
	assert.InDelta(t, 0.15, ions["Cl-"], 0.001)
}

func TestGasLeaving(t *testing.T) {
	f := factsOf(t, line("sucrose", "1 g/L")+"[carbonation]\nvolumes = 2.5\n")
	assert.InDelta(t, 2.5-0.86, f.GasLeaving(20).Mid, 0.02) // water at 20 °C and 1 atm in all: 0.1688 g/100 g
	assert.False(t, factsOf(t, line("sucrose", "1 g/L")).GasLeaving(20).Known())
	f.Gas.Volumes = beverage.Say(0.5)
	assert.Zero(t, f.GasLeaving(4).Mid)
}
