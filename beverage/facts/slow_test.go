package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
)

const chalky = "[[ingredient]]\nname = \"citric acid\"\namount = \"4 g/L\"\n[[ingredient]]\nname = \"calcium carbonate\"\namount = \"1 g/L\"\n"

// The interval of a prediction holds the day of filling, with nothing dissolved,
// and the end of life, with all of it.
func TestSlowBasesCountBothWays(t *testing.T) {
	f := factsOf(t, chalky)
	require.NotNil(t, f.PH.Slow)
	now := factsOf(t, "[[ingredient]]\nname = \"citric acid\"\namount = \"4 g/L\"\n").PH.Predicted
	assert.InDelta(t, now.Mid, f.PH.Slow.Now, 0.01)
	assert.InDelta(t, f.PH.Predicted.Mid, f.PH.Slow.End, 1e-9)
	assert.Greater(t, f.PH.Slow.End, f.PH.Slow.Now+0.3)
	assert.LessOrEqual(t, f.PH.Predicted.Low, now.Low)
	assert.Nil(t, factsOf(t, lemonade).PH.Slow)
}

// What may still dissolve is reckoned from the reading, not from the prediction,
// and an ingredient that nobody knows hides none of it.
func TestSlowBasesRaiseAReading(t *testing.T) {
	const reading = "[measured]\nph = 4.2\nph_temperature = \"25 C\"\n"
	known := factsOf(t, reading+chalky)
	fast := factsOf(t, reading+lemonade)
	assert.Zero(t, fast.PH.SlowShift)
	assert.Greater(t, known.PH.SlowShift, 0.2)
	assert.InDelta(t, fast.PH.Measured.High+known.PH.SlowShift, known.PH.Measured.High, 1e-9)
	unknown := factsOf(t, reading+chalky+"[[ingredient]]\nname = \"quillwort essence\"\namount = \"1 g/L\"\n")
	assert.GreaterOrEqual(t, unknown.PH.SlowShift, known.PH.SlowShift-0.01)
	assert.Equal(t, beverage.Undecided, unknown.Class)
	untold := factsOf(t, reading+"[[ingredient]]\nname = \"calcium carbonate\"\namount = \"1 g/serving\"\n")
	assert.Equal(t, 14.0, untold.PH.Measured.High)
}

// A trial says nothing of how much had dissolved when it was read, so it does not
// narrow what the slow base leaves open.
func TestTrialsOfSlowBases(t *testing.T) {
	const trials = "[[bench]]\namounts = { \"citric acid\" = \"5 g/L\" }\nph = 3.0\n[[bench]]\namounts = { \"citric acid\" = \"3 g/L\" }\nph = 3.5\n"
	plain, tried := factsOf(t, chalky), factsOf(t, chalky+trials)
	assert.LessOrEqual(t, tried.PH.Predicted.Low, plain.PH.Slow.Now)
	assert.GreaterOrEqual(t, tried.PH.Predicted.High, plain.PH.Predicted.Mid)
}

// A drink that hardly buffers takes up CO2 of the air: pure water comes to pH 5.6 in
// it, a rehydration drink of citrate stands between 7.0 and 8.8 (International
// Pharmacopoeia, recalled). A milk drink does not notice.
func TestAirLowersWhatHardlyBuffers(t *testing.T) {
	assert.InDelta(t, 5.6, factsOf(t, line("sucrose", "90 g/L")).PH.Predicted.Low, 0.1)
	salts := factsOf(t, line("sodium chloride", "2.6 g/L")+line("potassium chloride", "1.5 g/L")+line("trisodium citrate dihydrate", "2.9 g/L"))
	assert.Less(t, salts.PH.Predicted.Low, 8.0)
	assert.Greater(t, salts.PH.Predicted.High, 8.8)
	milk := factsOf(t, line("skim milk", "1033 g/L"))
	for _, w := range milk.Widths() {
		assert.NotContains(t, w.What, "open drink")
	}
}
