package assess

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
)

// On a sound record the rows, added up by hand from what is printed in them,
// come to the credit.
func TestEvidenceAddsUpToTheCredit(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		file, reader := soundLog(t, dir)
		result, err := reader.Read(context.Background(), file)
		require.NoError(t, err)
		var sum, lastC, lastS float64
		n := 0
		require.NoError(t, reader.Evidence(context.Background(), file, &result, func(r beverage.EvidenceRow) error {
			if n++; n > 1 {
				sum += byHand(r.TimeS-lastS, lastC, r.LoweredC)
			}
			lastC, lastS = r.LoweredC, r.TimeS
			assert.InDelta(t, sum, r.SumMin, 1e-9*math.Max(1, sum))
			return nil
		}))
		require.Empty(t, result.Probes[0].Faults)
		assert.InDelta(t, *result.Probes[0].CreditedMinutes, sum, 1e-9*math.Max(1, sum))
		assert.Equal(t, result.Probes[0].Samples, result.Evidence.Rows)
	})
}

// byHand is the exact piece on F0, from the formula as it is printed.
func byHand(dt, a, b float64) float64 {
	l0, l1 := math.Pow(10, (a-121.1)/10), math.Pow(10, (b-121.1)/10)
	if math.Abs(b-a) < 1e-6 {
		return dt / 60 * (l0 + l1) / 2
	}
	return dt / 60 * (l1 - l0) / (math.Ln10 / 10 * (b - a))
}

func soundLog(t *rapid.T, dir string) (string, *LogReader) {
	n, top := rapid.IntRange(20, 60).Draw(t, "readings"), rapid.Float64Range(110, 125).Draw(t, "top")
	var b strings.Builder
	b.WriteString("Time (s),Can product (C)\n")
	for i := range n {
		fmt.Fprintf(&b, "%d,%.2f\n", 30*i, 40+(top-40)*math.Sin(math.Pi*float64(i)/float64(n)))
	}
	file := filepath.Join(dir, "run.csv")
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
	target := beverage.Target{Text: "F0 3 min", Kind: beverage.TargetMinutes, Minutes: 3, TrefC: 121.1, ZC: 10}
	reader, err := NewLogReader(LogOptions{TrefC: 121.1, ZC: 10, ToleranceC: 0.5, Target: &target})
	require.NoError(t, err)
	return file, reader
}

// The tolerance that is told to turn the answer does turn it.
func TestTheToleranceThatTurnsTheAnswer(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		file, reader := soundLog(t, dir)
		result, err := reader.Read(context.Background(), file)
		require.NoError(t, err)
		at := 0.5 + 10*math.Log10(*result.Probes[0].CreditedMinutes/3)
		if at < 0.01 {
			t.Skip("no tolerance meets the target")
		}
		for _, side := range []float64{-1e-6, 1e-6} {
			o := reader.opt
			o.ToleranceC = at + side
			other := *reader
			other.opt = o
			r, err := other.Read(context.Background(), file)
			require.NoError(t, err)
			assert.Equal(t, side < 0, *r.Outcome == beverage.Meets)
		}
	})
}

func TestEvidenceOfARecordThatChanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		file, reader := soundLog(t, os.TempDir())
		defer os.Remove(file)
		result, err := reader.Read(context.Background(), file)
		require.NoError(t, err)
		full := errors.New("the disk is full")
		assert.ErrorIs(t, reader.Evidence(context.Background(), file, &result, func(beverage.EvidenceRow) error { return full }), full)
		result.SHA256 = "another"
		err = reader.Evidence(context.Background(), file, &result, func(beverage.EvidenceRow) error { return nil })
		assert.EqualError(t, err, file+": changed while it was read; read it again when nothing writes to it")
		assert.Nil(t, result.Evidence)
	})
}
