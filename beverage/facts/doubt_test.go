package facts

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Two steps by the slope are as good as the whole balance.
func TestMoverFindsThePH(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whey := rapid.Float64Range(0, 90).Draw(t, "whey")
		milk := rapid.Float64Range(0, 900).Draw(t, "milk")
		citric := rapid.Float64Range(0, 15).Draw(t, "citric acid")
		more := rapid.Float64Range(-0.02, 0.02).Draw(t, "acid more")
		f := factsOf(t, fmt.Sprintf("[[ingredient]]\nname = \"whey protein isolate\"\namount = \"%.3f g/L\"\n[[ingredient]]\nname = \"skim milk\"\namount = \"%.3f g/L\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"%.3f g/L\"\n[[ingredient]]\nname = \"sodium citrate\"\namount = \"1 g/L\"\n", whey, milk, citric))
		c := f.PH.Chemistry
		m, ok := c.middle()
		require.True(t, ok, "%v", c.Missing)
		at := c.settled().pH
		changed := m.with(ion{more}.perKg(1))
		whole, err := changed.pH()
		require.NoError(t, err)
		assert.InDelta(t, whole-at, moverAt(m, at).to(changed), 0.01+0.05*math.Abs(whole-at))
	})
}

// The water's alkalinity raises the pH of a thin drink, hardness lowers it where
// citrate binds it; water that is described pure does neither.
func TestWaterCounts(t *testing.T) {
	const thin = "[[ingredient]]\nname = \"citric acid\"\namount = \"0.4 g/L\"\n[[ingredient]]\nname = \"sodium citrate\"\namount = \"0.2 g/L\"\n"
	of := func(extra string) doubt {
		for _, d := range factsOf(t, thin+extra).PH.Chemistry.doubts {
			if d.cause == ofWater {
				return d
			}
		}
		return doubt{}
	}
	ordinary, pure := of(""), of(pureWater)
	assert.Greater(t, ordinary.high, 0.2)
	assert.Less(t, ordinary.low, -0.02)
	assert.Zero(t, pure.high)
	assert.Zero(t, pure.low)
	hard := of("[[ingredient]]\nname = \"water\"\namount = \"990 g/L\"\ncalcium = \"0.012 %\"\nmagnesium = \"0.003 %\"\nsodium = \"0.002 %\"\npotassium = \"0 %\"\nchloride = \"0 %\"\n")
	assert.Greater(t, hard.high, ordinary.high)
	s := supplyOf(&Recipe{Lines: factsOf(t, thin+"[[ingredient]]\nname = \"water\"\namount = \"990 g/L\"\ncalcium = \"0.008 %\"\nmagnesium = \"0 %\"\nsodium = \"0 %\"\npotassium = \"0 %\"\nchloride = \"0.0071 %\"\n").Recipe.Lines})
	assert.InDelta(t, 3.99e-3-2.0e-3, s.alkalinity, 2e-5) // 80 mg/L of calcium less 71 mg/L of chloride
	assert.InDelta(t, 2.0e-3, s.hardness, 1e-5)
}

const pureWater = "[[ingredient]]\nname = \"water\"\namount = \"900 g/L\"\ncalcium = \"0 %\"\nmagnesium = \"0 %\"\nsodium = \"0 %\"\npotassium = \"0 %\"\nchloride = \"0 %\"\n"

// CO2 of a bicarbonate leaves a drink that stands open, and the pH rises.
func TestBicarbonateGivesOffCO2(t *testing.T) {
	f := factsOf(t, pureWater+"[[ingredient]]\nname = \"sodium bicarbonate\"\namount = \"1 g/L\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"0.4 g/L\"\n")
	assert.Less(t, f.PH.Predicted.Mid, 6.6)
	assert.Greater(t, f.PH.Predicted.High, 8.0)
}

// CO2 as an ingredient is no part of the degassed drink.
func TestGasIsLeftOut(t *testing.T) {
	const still = "[[ingredient]]\nname = \"citric acid\"\namount = \"1 g/L\"\n[[ingredient]]\nname = \"sodium citrate\"\namount = \"2 g/L\"\n"
	assert.InDelta(t, factsOf(t, still).PH.Predicted.Mid, factsOf(t, still+"[[ingredient]]\nname = \"carbon dioxide\"\namount = \"6 g/L\"\n").PH.Predicted.Mid, 0.01)
}

// Wider tolerances and unstated figures never narrow the interval.
func TestDoubtWidens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		narrow := rapid.Float64Range(0, 10).Draw(t, "narrow")
		wide := narrow + rapid.Float64Range(0, 20).Draw(t, "wider")
		protein := rapid.SampledFrom([]string{"whey protein isolate", "whey protein isolate, acidified", "sodium caseinate", "micellar casein isolate", "pea protein isolate"}).Draw(t, "protein")
		of := func(tolerance float64) *Facts {
			return factsOf(t, fmt.Sprintf("[[ingredient]]\nname = %q\namount = \"40 g/L\"\namount_tolerance = \"%.6f %%\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"6 g/L\"\namount_tolerance = \"%.6f %%\"\n", protein, tolerance, tolerance))
		}
		a, b := of(narrow).PH.Predicted, of(wide).PH.Predicted
		assert.LessOrEqual(t, b.Low, a.Low+1e-4)
		assert.GreaterOrEqual(t, b.High, a.High-1e-4)
	})
}

// What has protein without a model is known by its own pH and acidity, and the
// margin is the wider one.
func TestProteinWithoutAModel(t *testing.T) {
	for _, name := range []string{"cocoa powder", "barley malt extract"} {
		f := factsOf(t, fmt.Sprintf("[[ingredient]]\nname = %q\namount = \"20 g/L\"\n", name))
		require.Empty(t, f.PH.Chemistry.Missing, name)
		assert.GreaterOrEqual(t, half(f.PH.Predicted), marginOf("unmodelled"), name)
	}
	f := factsOf(t, "[[ingredient]]\nname = \"lupin protein\"\nkind = \"protein\"\nprotein = \"80 %\"\nph = 6.8\namount = \"20 g/L\"\n")
	assert.Equal(t, []string{"lupin protein: no model of its protein, and its acidity is not known"}, f.PH.Chemistry.Missing)
}

func TestDataOfMarginsAndWater(t *testing.T) {
	rows, err := margins()
	require.NoError(t, err)
	sum := 0.0
	for _, v := range rows {
		sum += v
	}
	assert.Len(t, rows, 9)
	assert.InDelta(t, 62.42, sum, 1e-9)
	for _, r := range rowsOf(t, "data/model_error.csv") {
		assert.NotEmpty(t, r["reason"], r["name"])
		assert.GreaterOrEqual(t, number(t, r, "value"), number(t, r, "floor"), r["name"])
	}
	water, err := waters()
	require.NoError(t, err)
	assert.Equal(t, map[string]float64{"alkalinity": 2, "calcium": 1}, water)
	assert.Equal(t, unmodelledShift, marginOf("no such row"))
}
