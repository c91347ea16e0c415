package heatpen

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// numbers reads the columns of a check file, its header line left out.
func numbers(t *testing.T, path string, rows int, columns ...int) [][]float64 {
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Len(t, lines, rows+1)
	var out [][]float64
	for _, line := range lines[1:] {
		var vals []float64
		for _, c := range columns {
			v := math.NaN()
			if line[c] != "" {
				v, err = strconv.ParseFloat(line[c], 64)
				require.NoError(t, err)
			}
			vals = append(vals, v)
		}
		out = append(out, vals)
	}
	return out
}

// TestExponentialIntegrals: Abramowitz and Stegun 1964, table 5.1 and 5.2.
func TestExponentialIntegrals(t *testing.T) {
	for x, want := range map[float64]float64{
		0.01: 4.037929576538114, 0.5: 0.5597735947761608, 1: 0.21938393439552028, 2: 0.04890051070806112, 10: 4.156968929685324e-06,
	} {
		assert.InEpsilon(t, want, e1(x), 1e-13, "E1(%g)", x)
	}
	for x, want := range map[float64]float64{
		0.5: 0.4542199048631736, 1: 1.8951178163559368, 10: 2492.2289762418777, 50: 1.0585636897131690e20,
	} {
		assert.InEpsilon(t, want, ei(x), 1e-13, "Ei(%g)", x)
	}
	assert.True(t, math.IsInf(e1(0), 1))
	assert.True(t, math.IsNaN(e1(-1)))
	assert.True(t, math.IsNaN(ei(0)))
	assert.InEpsilon(t, ei(39.999999), ei(40.000001), 1e-5) // both series meet
}

// TestComputedPairs holds the model against pairs worked out elsewhere from the
// same equations (E1 relation, Ball's cooling), in both directions.
func TestComputedPairs(t *testing.T) {
	for _, p := range numbers(t, "testdata/computed_pairs.csv", 40, 1, 2, 3) {
		table := PrintedTable(10, p[2])
		if math.IsNaN(p[2]) {
			table.CoolingShare = 0
		}
		assert.InEpsilon(t, p[1], table.G(p[0]), 5e-5, "g at fh/U %g", p[0]) // half the last of five digits
		assert.InEpsilon(t, p[0], 1/table.UOverFh(p[1]), 2e-4, "fh/U at g %g", p[1])
	}
}

// TestPrintedPairs: at every printed pair the counted lethality is no more than
// the table's, so that no process comes out shorter than by the table, and the
// model at its word counts more than the table, by less than 9 %.
func TestPrintedPairs(t *testing.T) {
	const dropF, zF, rounding = 180, 18, 0.0005 // log g has three decimals
	for _, p := range numbers(t, "testdata/printed_pairs.csv", 24, 0, 1) {
		safe := PrintedTable(zF/1.8, dropF/1.8)
		safe.CoolingShare = SafeCoolingShare
		logG := math.Log10(safe.G(p[0]) * 1.8)
		assert.LessOrEqual(t, logG, p[1]+rounding, "fh/U %g", p[0])
		assert.InDelta(t, p[1], logG, 0.06, "fh/U %g", p[0])

		word := PrintedTable(zF/1.8, dropF/1.8)
		more := word.UOverFh(math.Pow(10, p[1])/1.8)*p[0] - 1
		assert.Greater(t, more, 0., "fh/U %g", p[0])
		assert.Less(t, more, 0.09, "fh/U %g", p[0])
	}
}
