package assess

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPicturesOnlyWhereWanted(t *testing.T) {
	everyExample(t, func(t *testing.T, path string) {
		d := exampleDrink(t, path)
		without, err := Drink(context.Background(), d, Options{})
		require.NoError(t, err)
		with, err := Drink(context.Background(), d, Options{Pictures: true})
		require.NoError(t, err)
		if with.Protein == nil {
			return
		}
		assert.Nil(t, without.Protein.Picture)
		require.NotNil(t, with.Protein.Picture)
		h := with.Protein.Picture.Heat
		assert.True(t, h.Why != "" || len(h.Path) > 0 || len(h.Equal) > 0, "neither drawn nor said why not")
		with.Protein.Picture = nil
		assert.Equal(t, without, with)
	})
}

// A line of the chart goes through what is answered without one.
func TestGasChartAgreesWithTheAnswer(t *testing.T) {
	volumes := 2.6
	r, err := Gas(GasOptions{Options: Options{Pictures: true}, Volumes: &volumes, TempC: 10, SugarGPerL: 80})
	require.NoError(t, err)
	require.Equal(t, 2.6, r.Chart.Volumes[0])
	assert.InDelta(t, 10, r.Chart.TempsC[4], 1e-12)
	assert.InDelta(t, *r.GaugeKPa, r.Chart.GaugeKPa[0][4], 1e-9)
	for i := 1; i < len(r.Chart.TempsC); i++ {
		assert.Greater(t, r.Chart.GaugeKPa[0][i], r.Chart.GaugeKPa[0][i-1])
	}
	plain, err := Gas(GasOptions{Volumes: &volumes, TempC: 10})
	require.NoError(t, err)
	assert.Nil(t, plain.Chart)
}
