package thermal

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestIndicesAreWhole(t *testing.T) {
	list, err := readIndices(indicesCSV)
	require.NoError(t, err)
	require.Len(t, list, 5)
	var tref, z, unit float64
	for _, i := range list {
		tref, z, unit = tref+i.Reference.TrefC, z+i.Reference.ZC, unit+i.UnitS
		assert.Contains(t, []string{"seen", "memory"}, i.Basis, i.Name)
	}
	assert.InDelta(t, 551.1, tref, 1e-9)
	assert.InDelta(t, 91.9, z, 1e-9)
	assert.InDelta(t, 220.6, unit, 1e-9)
}

func TestNamedBasis(t *testing.T) {
	for name, want := range map[string]Reference{
		"F0": F0, "f0": F0, "PU": PU, "C0 cook value": {100, 33}, "cook value": {100, 33}, "B*": {135, 10.5}, "C*": {135, 31.4},
	} {
		got, ok := NamedBasis(name)
		assert.True(t, ok, name)
		assert.Equal(t, want, got, name)
	}
	_, ok := NamedBasis("F")
	assert.False(t, ok)
}

// TestIndexValues: constant temperatures in closed form, from the definitions.
func TestIndexValues(t *testing.T) {
	for _, c := range []struct {
		index   string
		tC      float64
		minutes float64
		want    float64
	}{
		{"F0", 140, 4. / 60, 5.174980778}, {"PU", 62, 10, 19.30697729}, {"B*", 140, 4. / 60, 1.185575166},
		{"C*", 140, 4. / 60, 0.1892325409}, {"cook value", 121.1, 30, 130.772129},
		{"B*", 125, 20. / 60, 0.220965}, {"C*", 125, 20. / 60, 0.314963}, {"B*", 135, 10. / 60, 10 / 10.1}, {"C*", 135, 10. / 60, 10 / 30.5},
	} {
		i, ok := FindIndex(c.index)
		require.True(t, ok)
		assert.InEpsilon(t, c.want, i.Of(i.Reference.Piece(c.minutes, c.tC, c.tC)), 2e-5, "%s at %g °C", c.index, c.tC)
	}
}
