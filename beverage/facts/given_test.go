package facts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What was given makes the figures right: the powder's own solution has its pH,
// the juice its pH and its acidity, and both are told in the drink's own amounts.
func TestWhatWasGivenIsTold(t *testing.T) {
	f := factsOf(t, line("whey protein isolate, acidified", "50 g/L")+line("apple juice", "200 g/L")+line("citric acid", "2 g/L"))
	list := f.Given()
	require.Len(t, list, 3)
	powder, acid, cation := list[0], list[1], list[2]
	assert.Equal(t, "strong acid, as chloride", powder.What)
	assert.True(t, strings.HasPrefix(powder.KnownBy, "pH 3.20 at 10 %"), powder.KnownBy)
	assert.InDelta(t, 50*powder.MMolPerG, powder.MMolPerL, 1e-9)
	assert.Equal(t, "malic acid", acid.What)
	assert.Equal(t, "cation, as potassium", cation.What)
	assert.Contains(t, cation.KnownBy, "as malic acid")
	juice := factsOf(t, line("apple juice", "1039 g/L"))
	assert.InDelta(t, juice.Recipe.Lines[0].OwnPH.Mid, juice.PH.Predicted.Mid, 0.01)
	titration, err := juice.Titrate(25)
	require.NoError(t, err)
	assert.InDelta(t, juice.Recipe.Lines[0].Acidity.Mid, *titration.Acidity.As("malic"), 0.03*juice.Recipe.Lines[0].Acidity.Mid)
}

// Each thing in doubt is told by what it does alone; as squares they make up the
// interval, and trials that narrow it leave none to tell.
func TestWhatMakesTheIntervalWide(t *testing.T) {
	f := factsOf(t, clearWhey)
	list := f.Widths()
	require.NotEmpty(t, list)
	up, down, last := 0.0, 0.0, 100.0
	for _, w := range list {
		up, down = up+square(w.High), down+square(w.Low)
		assert.LessOrEqual(t, w.High-w.Low, last)
		last = w.High - w.Low
	}
	p := f.PH.Predicted
	assert.InDelta(t, square(p.High-p.Mid), up, 1e-3)
	assert.InDelta(t, square(p.Mid-p.Low), down, 1e-3)
	assert.Empty(t, factsOf(t, clearWhey+benchOf([2]float64{0.8, 3.05})).Widths())
	chalk := factsOf(t, chalky).Widths()
	assert.Equal(t, "slow bases that have not dissolved yet", chalk[0].What)
}
