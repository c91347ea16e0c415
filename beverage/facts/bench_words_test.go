package facts

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const clearWhey = `
[[ingredient]]
name = "whey protein isolate, acidified"
amount = "66 g/L"
[[ingredient]]
name = "phosphoric acid 85 %"
amount = "1.5 g/L"
`

// benchOf is trials of the clear drink: grams a litre of acid, and pH read.
func benchOf(pairs ...[2]float64) string {
	var b strings.Builder
	for _, p := range pairs {
		fmt.Fprintf(&b, "[[bench]]\namounts = { \"phosphoric acid 85 %%\" = \"%g g/L\" }\nph = %g\n", p[0], p[1])
	}
	return b.String()
}

// Trials that read what the recipe gives move nothing and narrow the interval;
// what was fitted stays where it was.
func TestTrialsThatAgreeNarrow(t *testing.T) {
	plain := factsOf(t, clearWhey)
	at := func(dose float64) [2]float64 {
		f := factsOf(t, strings.Replace(clearWhey, "1.5 g/L", fmt.Sprintf("%g g/L", dose), 1))
		return [2]float64{dose, f.PH.Predicted.Mid}
	}
	f := factsOf(t, clearWhey+benchOf(at(0.8), at(1.6), at(2.4)))
	require.NotNil(t, f.PH.Bench)
	assert.Empty(t, f.PH.Bench.Contradiction)
	assert.InDelta(t, plain.PH.Predicted.Mid, f.PH.Predicted.Mid, 0.02)
	assert.Less(t, half(f.PH.Predicted), 0.7*half(plain.PH.Predicted))
	assert.Equal(t, plain.PH.Predicted, f.PH.Bench.Before)
	for _, x := range f.PH.Bench.Trials {
		assert.InDelta(t, 0, x.Residual(), 0.02)
		assert.Empty(t, x.Why)
	}
	for _, x := range f.PH.Bench.Fitted {
		assert.InDelta(t, x.Before.Mid, x.After, 0.1*(x.Before.High-x.Before.Low), x.Figure)
	}
	assert.Empty(t, f.Conflicts())
}

// Trials that read higher than the recipe gives raise the prediction, and then
// everything that is worked out from it.
func TestTrialsMoveThePrediction(t *testing.T) {
	plain := factsOf(t, clearWhey)
	f := factsOf(t, clearWhey+benchOf([2]float64{0.8, 3.15}, [2]float64{1.6, 2.98}, [2]float64{2.4, 2.84}))
	assert.Empty(t, f.PH.Bench.Contradiction)
	assert.Greater(t, f.PH.Predicted.Mid, plain.PH.Predicted.Mid+0.1)
	titration, err := f.Titrate(25)
	require.NoError(t, err)
	assert.InDelta(t, f.PH.Predicted.Mid, titration.PH.Mid, 1e-6)
	assert.InDelta(t, f.PH.Predicted.Mid, titration.Equilibrium.PH, 1e-6)
	own := f.PH.Bench.Fitted[0]
	assert.Equal(t, "own pH", own.Figure)
	assert.Greater(t, own.After, own.Before.Mid)
	assert.LessOrEqual(t, own.After, own.Before.High+0.2)
}

// Readings that contradict each other, or what can be, are said and never narrow.
func TestTrialsThatContradictAreNotFollowed(t *testing.T) {
	plain := factsOf(t, clearWhey).PH.Predicted
	for name, c := range map[string]struct{ bench, says string }{
		"each other": {benchOf([2]float64{1.5, 2.6}, [2]float64{1.5, 3.05}), "reads pH"},
		"the recipe": {benchOf([2]float64{0.8, 5.1}, [2]float64{1.6, 5.0}), "the trials would have"},
	} {
		f := factsOf(t, clearWhey+c.bench)
		require.Contains(t, f.PH.Bench.Contradiction, c.says, name)
		assert.LessOrEqual(t, f.PH.Predicted.Low, plain.Low, name)
		assert.GreaterOrEqual(t, f.PH.Predicted.High, plain.High, name)
		assert.InDelta(t, plain.Mid, f.PH.Chemistry.settled().pH, 1e-9, name)
		conflicts := f.Conflicts()
		require.Len(t, conflicts, 1, name)
		assert.Equal(t, "bench", conflicts[0].What)
	}
}

func TestTrialsThatTellNothing(t *testing.T) {
	f := factsOf(t, clearWhey+"[[bench]]\namounts = { \"quillwort essence\" = \"1 g/L\" }\nph = 3.2\n")
	assert.Equal(t, f.PH.Bench.Before, f.PH.Predicted)
	assert.Equal(t, "the pH cannot be predicted: quillwort essence: not in the library and not described", f.PH.Bench.Trials[0].Why)
}

// A name of the library that means the same ingredient replaces its amount.
func TestTrialNamesMeanIngredients(t *testing.T) {
	f := factsOf(t, "[[ingredient]]\nname = \"acidified WPI\"\namount = \"66 g/L\"\n[[bench]]\namounts = { \"whey protein isolate, acidified\" = \"30 g/L\" }\nph = 3.2\n")
	assert.Empty(t, f.PH.Bench.Trials[0].Why)
	assert.NotEqual(t, f.PH.Bench.Trials[0].Before, f.PH.Bench.Before.Mid)
}

// A protein of other make-up than the recipe names takes up acid by another curve:
// after three trials the interval still holds it, and is narrower.
func TestTrialsOfAnotherProtein(t *testing.T) {
	of := func(protein string, acid float64, bench string) *Facts {
		return factsOf(t, fmt.Sprintf("[[ingredient]]\nname = %q\namount = \"50 g/L\"\n[[ingredient]]\nname = \"citric acid\"\namount = \"%g g/L\"\n%s", protein, acid, bench))
	}
	for _, named := range []string{"whey protein isolate", "native whey protein isolate"} {
		for _, really := range []string{"native whey protein isolate", "whey protein isolate, ion exchange", "whey protein concentrate 80", "alpha-lactalbumin-enriched whey protein", "pea protein isolate"} {
			bench := ""
			for _, dose := range []float64{7, 10, 14} {
				bench += fmt.Sprintf("[[bench]]\namounts = { \"citric acid\" = \"%g g/L\" }\nph = %.3f\n", dose, of(really, dose, "").PH.Predicted.Mid)
			}
			f := of(named, 12, bench)
			truth := of(really, 12, "").PH.Predicted.Mid
			assert.Equal(t, 1, holds(f.PH.Predicted, truth), "%s is %s: %v, truly %.2f", named, really, f.PH.Predicted, truth)
			if f.PH.Bench.Contradiction == "" {
				assert.Less(t, half(f.PH.Predicted), half(f.PH.Bench.Before), "%s is %s", named, really)
			}
		}
	}
}

// A plant that weighs worse learns as much from the trials, and no more.
func TestPlantToleranceIsNoTrialTolerance(t *testing.T) {
	trials := benchOf([2]float64{0.8, 3.15}, [2]float64{1.6, 2.98}, [2]float64{2.4, 2.84})
	sure := factsOf(t, clearWhey+trials)
	rough := factsOf(t, strings.ReplaceAll(clearWhey, "g/L\"\n", "g/L\"\namount_tolerance = \"20 %\"\n")+trials)
	assert.InDelta(t, sure.PH.Predicted.Mid, rough.PH.Predicted.Mid, 1e-9)
	assert.Less(t, rough.PH.Predicted.Low, sure.PH.Predicted.Low)
	assert.Greater(t, rough.PH.Predicted.High, sure.PH.Predicted.High)
}
