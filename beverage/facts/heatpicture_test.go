package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHeatPictureFollowsTheProcess(t *testing.T) {
	h := skimMilk(t, "[measured]\nph = 6.7\n"+retortedHold).HeatPicture()
	require.Empty(t, h.Why)
	last := h.Path[len(h.Path)-1]
	assert.InDelta(t, 121.1, last.TempC, 1e-9)
	for i := 1; i < len(h.Path); i++ {
		assert.GreaterOrEqual(t, h.Path[i].LethalityMin, h.Path[i-1].LethalityMin)
		assert.GreaterOrEqual(t, h.Path[i].Denatured.Mid, h.Path[i-1].Denatured.Mid)
	}
	assert.InDelta(t, last.LethalityMin, h.EqualMin, 1e-9)
	assert.Contains(t, h.Of, "an estimate, never credited")
}

// At equal lethality a hotter, shorter hold unfolds less: above 90 °C unfolding rises less
// with temperature than the lethal rate does.
func TestHotterAndShorterUnfoldsLess(t *testing.T) {
	h := skimMilk(t, "[measured]\nph = 6.7\n[process]\nroute = \"aseptic\"\ntarget = \"F0 5 min\"\n").HeatPicture()
	require.Empty(t, h.Why)
	require.Greater(t, len(h.Equal), 10)
	assert.Empty(t, h.Path)
	for i := 1; i < len(h.Equal); i++ {
		assert.Less(t, h.Equal[i].HoldS, h.Equal[i-1].HoldS)
		assert.LessOrEqual(t, h.Equal[i].Denatured.Mid, h.Equal[i-1].Denatured.Mid+1e-9)
	}
}

func TestHeatPictureSaysWhyNot(t *testing.T) {
	for more, want := range map[string]string{
		"[measured]\nph = 3.5\n" + retortedHold: "published rate constants are for milk near pH 6.7 and never hold below pH 4.0",
		"[measured]\nph = 6.7\n":                "neither a record, nor a hold temperature and time, nor a target in minutes is given",
	} {
		h := skimMilk(t, more).HeatPicture()
		assert.Equal(t, want, h.Why)
		assert.Empty(t, h.Path)
	}
	assert.Equal(t, noLabile, factsOf(t, "[[ingredient]]\nname = \"citric acid\"\namount = \"2 g/L\"\n[measured]\nph = 3\n").HeatPicture().Why)
}
