package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage/ingredient"
)

func conflictTexts(f *Facts) (texts []string) {
	for _, c := range f.Conflicts() {
		texts = append(texts, c.Text)
	}
	return texts
}

const lemonade = "[[ingredient]]\nname = \"citric acid\"\namount = \"4 g/L\"\n[[ingredient]]\nname = \"sucrose\"\namount = \"80 g/L\"\n"

// 4 g/L of citric acid in 1.03 kg is 0.39 %.
func TestAcidityAgainstRecipe(t *testing.T) {
	for measured, want := range map[string][]string{
		"0.39 % as citric acid": nil,
		"0.41 % as malic acid":  nil,
		"0.30 % as citric acid": {"a titratable acidity of 0.3 % as citric acid is measured, the recipe gives 0.364 to 0.409 %"},
		"0.60 % as citric acid": {"a titratable acidity of 0.6 % as citric acid is measured, the recipe gives 0.364 to 0.409 %"},
	} {
		assert.Equal(t, want, conflictTexts(factsOf(t, lemonade+"[measured]\ntitratable_acidity = \""+measured+"\"\n")), measured)
	}
}

// At pH 2 there is 10 mmol/L of free acid, which is 0.064 % as citric acid.
func TestAcidityAgainstPH(t *testing.T) {
	f := factsOf(t, "[measured]\nph = 2.0\nph_tolerance = 0.02\nph_temperature = \"25 C\"\nbrix = 0.1\ntitratable_acidity = \"0.02 % as citric acid\"\n")
	assert.Equal(t, []string{"pH 2.00 has more free acid than a titratable acidity of 0.02 % as citric acid"}, conflictTexts(f))
}

// A carbonated sample titrates its gas too.
func TestAcidityOfGas(t *testing.T) {
	const gassy = "[carbonation]\nvolumes = 3\n[measured]\ntitratable_acidity = \"0.60 % as citric acid\"\n"
	assert.Empty(t, factsOf(t, lemonade+gassy).Conflicts())
	assert.Len(t, factsOf(t, lemonade+gassy+"ph_degassed = true\nph = 2.5\n").Conflicts(), 1)
}

// CO2 of a bicarbonate may have left a still drink before it was titrated, and chalk
// may not have dissolved: neither reading is called implausible.
func TestAcidityOfCarbonates(t *testing.T) {
	for _, salt := range []string{line("potassium bicarbonate", "2 g/L"), line("calcium carbonate", "1 g/L")} {
		f := factsOf(t, pureWater+lemonade+salt)
		titrated := f.titrated()
		require.True(t, titrated.Known())
		m, _ := f.PH.Chemistry.middle()
		gone, err := m.inAir().baseFrom(f.PH.Predicted.Mid)
		require.NoError(t, err)
		assert.LessOrEqual(t, titrated.Low, gone*f.PH.Chemistry.WaterKgPerL, salt)
	}
}

func TestWaterActivityAgainstSolids(t *testing.T) {
	const syrup = "[[ingredient]]\nname = \"sucrose\"\namount = \"850 g/L\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"4 g/L\"\n"
	for aw, want := range map[string]int{"0.99": 1, "0.86": 0, "0.7": 1} {
		assert.Len(t, factsOf(t, syrup+"[measured]\nwater_activity = "+aw+"\n").Conflicts(), want, aw)
	}
}

func TestAcidityAsEachAcid(t *testing.T) {
	titration, err := factsOf(t, pureWater+lemonade).Titrate(25)
	require.NoError(t, err)
	citric := titration.Acidity.As("citric")
	require.NotNil(t, citric)
	for name, grams := range map[string]float64{"malic": 134.087 / 2, "tartaric": 150.086 / 2, "lactic": 90.078, "phosphoric": 97.994 / 2, "acetic": 60.052, "gluconic": 196.155, "succinic": 118.088 / 2, "adipic": 146.142 / 2} {
		as := titration.Acidity.As(name)
		require.NotNil(t, as, name)
		assert.InDelta(t, *citric*grams/(192.123/3), *as, 1e-9, name)
	}
	assert.Nil(t, titration.Acidity.As("carbonic"))
}

// Undissociated benzoic acid by its constant, 4.20, at the pH that decides.
func TestUndissociated(t *testing.T) {
	f := factsOf(t, "[measured]\nph = 3.5\nph_temperature = \"25 C\"\n[[ingredient]]\nname = \"sodium benzoate\"\namount = \"180 mg/L\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"2 g/L\"\n")
	i := f.Undissociated("benzoic")
	const acid = 180 * 122.12 / 144.11
	assert.InDelta(t, 0.83*acid, i.Mid, 0.02*acid)
	assert.InDelta(t, 0.79*acid, i.Low, 0.02*acid)
	assert.False(t, f.Undissociated("sorbic").Known())
}

// The pH of a phosphate drink falls as it is heated; gas lowers it further.
func TestPHAtProcessTemperature(t *testing.T) {
	f := factsOf(t, "[carbonation]\nvolumes = 2\n[[ingredient]]\nname = \"monopotassium phosphate\"\namount = \"3 g/L\"\n[[ingredient]]\nname = \"dipotassium phosphate\"\namount = \"4 g/L\"\n")
	still, gassy := f.AtProcess(60)
	require.NotNil(t, still)
	require.NotNil(t, gassy)
	assert.InDelta(t, f.PH.Predicted.Mid, *still, 0.15)
	assert.Less(t, *gassy, *still-0.3)
	still, gassy = f.AtProcess(140)
	assert.Nil(t, still)
	assert.Nil(t, gassy)
}

// Another lot of a neutral protein wants another dose, on either side.
func TestLotsMoveTheDose(t *testing.T) {
	f := factsOf(t, "[[ingredient]]\nname = \"whey protein isolate\"\namount = \"50 g/L\"\n")
	acid := factsOf(t, "[[ingredient]]\nname = \"citric acid\"\namount = \"1 g/L\"\n").Recipe.Lines[:1]
	d, err := f.DoseTo(ingredient.Default(), Dosing{PH: 3.3, TempC: 25, Acids: acid, Parts: []float64{1}})
	require.NoError(t, err)
	require.NotNil(t, d.Lots)
	assert.Less(t, d.Lots[0][0], d.GPerL[0])
	assert.Greater(t, d.Lots[1][0], d.GPerL[0])
	assert.Less(t, d.Lots[1][0]-d.Lots[0][0], 0.2*d.GPerL[0])
	plain, err := factsOf(t, "[[ingredient]]\nname = \"sodium citrate\"\namount = \"1 g/L\"\n").DoseTo(ingredient.Default(), Dosing{PH: 3.3, TempC: 25, Acids: acid, Parts: []float64{1}})
	require.NoError(t, err)
	assert.Nil(t, plain.Lots)
}
