package facts

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/acid"
	"posset/beverage/ingredient"
	"posset/beverage/spec"
)

// skimMilk is a litre of skim milk of the library, with more beside it.
func skimMilk(t require.TestingT, more string) *Facts {
	return factsOf(t, `
[[ingredient]]
name = "skim milk"
amount = "1033 g/L"
`+more)
}

func factsOf(t require.TestingT, recipe string) *Facts {
	d, err := spec.Parse([]byte("[drink]\nname = \"trial\"\n"+recipe), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	f, err := Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	return f
}

// strongAcidMM is the strong acid that brings a drink to a pH, mmol/L.
func strongAcidMM(t *testing.T, f *Facts, pH float64) float64 {
	m, ok := f.PH.Chemistry.middle()
	require.True(t, ok)
	ion, err := balanceAt(m.at(pH), pH)
	require.NoError(t, err)
	mm := 1000 * ion.Molality * f.PH.Chemistry.WaterKgPerL
	if ion.Component == "sodium" {
		return -mm
	}
	return mm
}

// Milk's own pH is 6.5 to 6.7 at 25 °C and its ionic strength about 0.08 (Fox &
// McSweeney 1998, p. 450 and section 5.7).
func TestMilkAsItIs(t *testing.T) {
	f := skimMilk(t, "")
	assert.InDelta(t, 6.65, f.PH.Predicted.Mid, 0.1)
	assert.InDelta(t, 80, f.Ions.IonicMM.Mid, 8)
}

// 45 to 55 mmol/L of strong acid bring skim milk to pH 4.6, by the mean of the
// buffer index from 6.6 to 4.6; the greatest is 0.033 mol/L per pH, near pH 5.0
// to 5.1 (dairy chemistry lecture; Lucey et al. 1993, Milchwissenschaft 48:438).
func TestSkimMilkTakesUpAcidAsPublished(t *testing.T) {
	f := skimMilk(t, "")
	assert.InDelta(t, 50, strongAcidMM(t, f, 4.6), 5)
	greatest, at := 0.0, 0.0
	for pH := 6.6; pH > 4.7; pH -= 0.05 {
		if index := (strongAcidMM(t, f, pH-0.1) - strongAcidMM(t, f, pH+0.1)) / 0.2; index > greatest {
			greatest, at = index, pH
		}
	}
	assert.InDelta(t, 33.3, greatest, 6)
	assert.InDelta(t, 5.2, at, 0.3)
}

// Fresh milk takes 14 to 20 mmol/L of base to phenolphthalein, pH 8.3 (0.13 to
// 0.18 % as lactic acid; dairy handbooks).
func TestSkimMilkTakesUpBaseAsPublished(t *testing.T) {
	assert.InDelta(t, 17, -strongAcidMM(t, skimMilk(t, ""), 8.3), 3.5)
}

// 11.4 and 34.1 mmol/kg of CO2 lower the pH of milk by 0.4 and 0.7 (Ma, Barbano
// & Santos 2003, J. Dairy Sci. 86:1616, read at 4 °C).
func TestCarbonatedMilk(t *testing.T) {
	m, ok := skimMilk(t, "").PH.Chemistry.middle()
	require.True(t, ok)
	still, err := m.pH()
	require.NoError(t, err)
	for _, c := range [][2]float64{{0.0114, 0.4}, {0.0341, 0.7}} {
		pH, err := m.with("carbonic", c[0]).pH()
		require.NoError(t, err)
		assert.InDelta(t, c[1], still-pH, 0.1, "%g mol/kg", c[0])
	}
}

// The pH that a mixture settles at is the pH of what is dissolved at it, and more
// acid never raises it.
func TestMicellesSettle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		milk := rapid.Float64Range(1, 1000).Draw(t, "skim milk")
		casein := rapid.Float64Range(0.1, 120).Draw(t, "micellar casein")
		lactic := rapid.Float64Range(0, 20).Draw(t, "lactic acid")
		f := factsOf(t, fmt.Sprintf("[[ingredient]]\nname = \"skim milk\"\namount = \"%.4f g/L\"\n[[ingredient]]\nname = \"micellar casein isolate\"\namount = \"%.4f g/L\"\n[[ingredient]]\nname = \"lactic acid\"\namount = \"%.4f g/L\"\n", milk, casein, lactic))
		m, ok := f.PH.Chemistry.middle()
		if !ok {
			t.Fatalf("missing: %v", f.PH.Chemistry.Missing)
		}
		_, pH, err := m.settle(naturalPH)
		require.NoError(t, err)
		again, err := acid.PH(m.at(pH), roomC)
		require.NoError(t, err)
		assert.InDelta(t, pH, again, 0.003)
		sourer, err := m.with("chloride", rapid.Float64Range(0, 0.1).Draw(t, "acid")).pH()
		require.NoError(t, err)
		assert.LessOrEqual(t, sourer, pH+0.002)
	})
}

func BenchmarkPredictMilk(b *testing.B) {
	f := skimMilk(b, "[[ingredient]]\nname = \"citric acid\"\namount = \"4 g/L\"\n")
	for b.Loop() {
		f.PH.Chemistry.predict()
	}
}
