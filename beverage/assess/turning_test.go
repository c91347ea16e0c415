package assess

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/thermal/logfile"
)

// What is told without looking at the readings is never less than what one of
// them is worth.
func TestNoReadingIsWorthMoreThanIsTold(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		file, reader := soundLog(t, dir)
		log, err := logfile.ReadFile(context.Background(), file, reader.opt)
		require.NoError(t, err)
		result, err := reader.Read(context.Background(), file)
		require.NoError(t, err)
		h, ok := reader.hingeOf(log, &result)
		require.True(t, ok)
		w, opt := reader.witness(log, nil), reader.opt
		opt.History = w.add
		_, err = logfile.ReadFile(context.Background(), file, opt)
		require.NoError(t, err)
		assert.LessOrEqual(t, w.runs[0].TopMinutes, h.mostOfOne())
	})
}

// A run that meets its target by less than one reading is told to hang on it.
func TestARunThatHangsOnOneReading(t *testing.T) {
	file := filepath.Join(t.TempDir(), "run.csv")
	require.NoError(t, os.WriteFile(file, []byte("Time (min),Can product (C)\n0,60\n1,90\n2,112\n3,119\n4,121.6\n5,121.6\n6,121.6\n7,118\n8,95\n9,60\n"), 0o600))
	read := func(minutes float64) map[string]beverage.Turning {
		target := beverage.Target{Text: "F0", Kind: beverage.TargetMinutes, Minutes: minutes, TrefC: 121.1, ZC: 10}
		reader, err := NewLogReader(LogOptions{TrefC: 121.1, ZC: 10, ToleranceC: 0.5, Target: &target})
		require.NoError(t, err)
		r, err := reader.Read(context.Background(), file)
		require.NoError(t, err)
		by := map[string]beverage.Turning{}
		for _, x := range r.Turning {
			by[x.What] = x
		}
		return by
	}
	assert.Equal(t, beverage.Turning{What: "reading", Text: "of Can product most hangs on the reading at 300 s: 2 min with the pieces on both sides of it; without them the target is not met", Turns: true}, read(3)["reading"])
	assert.Equal(t, beverage.Turning{What: "reading", Text: "no single reading of Can product is worth more than 3 min"}, read(0.1)["reading"])
	assert.True(t, read(3.6)["sensor tolerance"].Turns)
	assert.False(t, read(0.1)["sensor tolerance"].Turns, "no thermometer is so far out")
	assert.Equal(t, "not even a tolerance of 0 meets the target: the readings are 2.72 C° too low", read(8)["sensor tolerance"].Text)
}

func TestParseBasis(t *testing.T) {
	for text, want := range map[string]string{"pu": "PU", "cook value": "C0 cook value", "b*": "B*", " 93.3 C,  z 8.9 C ": "93.3 C, z 8.9 C", "200 F, z 16 F": "200 F, z 16 F"} {
		b, err := ParseBasis(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, b.Name)
	}
	b, err := ParseBasis("200 F, z 16 F")
	require.NoError(t, err)
	assert.InDelta(t, 93.3333, b.Ref.TrefC, 1e-4)
	assert.InDelta(t, 8.8889, b.Ref.ZC, 1e-4)
	_, err = ParseBasis("93.3 C")
	assert.EqualError(t, err, `"93.3 C" is no basis; write F0, PU, C0, B*, C*, an organism of posset help organisms, or "93.3 C, z 8.9 C"`)
}

func TestACreditIsToldByNoMoreThanItIs(t *testing.T) {
	for v, want := range map[float64]string{5.9999: "5.999", 6: "6", 0: "0", 0.00123456: "0.001234", 123456: "1.234e+05", math.NaN(): "0"} {
		assert.Equal(t, want, roundedDown(v))
	}
}
