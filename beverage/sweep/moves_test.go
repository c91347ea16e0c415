package sweep_test

import (
	"context"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/spec"
	"posset/beverage/sweep"
)

// A reading holds for the recipe it was taken of: with an ingredient varied the
// pH is predicted at every point, also at the recipe's own amount.
func TestReadingsDoNotHoldForAnotherRecipe(t *testing.T) {
	r := run(t, drinkOf(t, quince), 5, "citric acid=0..20 g/L")
	require.Equal(t, []string{"measured.ph, measured.brix: read in the recipe as it is written, so left out where citric acid is varied; what can be predicted is predicted"}, r.Notes)
	for i, p := range r.Points {
		require.Equal(t, beverage.Predicted, p.PHBasis)
		if i > 0 {
			require.Less(t, *p.PH, *r.Points[i-1].PH)
		}
	}
}

// With the pH varied beside it, the pH is what it is set to.
func TestTwoInputs(t *testing.T) {
	r := run(t, drinkOf(t, quince), 13, "measured.ph=3.0..5.4", "whey protein isolate, acidified=20..120 g/L")
	require.Len(t, r.Points, 169)
	require.Equal(t, []float64{3.0, 20}, r.Points[0].At)
	require.Equal(t, []float64{3.0, 120}, r.Points[12].At)
	require.Equal(t, []float64{5.4, 120}, r.Points[168].At)
	for _, p := range r.Points {
		require.Equal(t, beverage.Measured, p.PHBasis)
		require.InDelta(t, p.At[0], *p.PH, 1e-9)
	}
	require.Equal(t, "class", r.Changes[0].What)
	require.Equal(t, &sweep.OtherSpan{Key: "whey protein isolate, acidified", Low: 20, High: 120}, r.Changes[0].With)
}

// The drink that was handed in is as it was.
func TestTheDrinkIsNotTouched(t *testing.T) {
	d, same := drinkOf(t, quince), drinkOf(t, quince)
	run(t, d, 3, "carbonation.volumes=1..4", "citric acid=0..20 g/L")
	require.Equal(t, same, d)
	still := drinkOf(t, replaceOne(t, quince, "[carbonation]\nvolumes = 2.2\n", ""))
	run(t, still, 3, "carbonation.volumes=1..4")
	require.Nil(t, still.Carbonation)
}

// A still drink stays still, whatever else is varied.
func TestAStillDrinkStaysStill(t *testing.T) {
	still := drinkOf(t, replaceOne(t, quince, "[carbonation]\nvolumes = 2.2\n", ""))
	for _, vary := range []string{"citric acid=0..20 g/L", "measured.ph=3..4", "package.fill=300..330 mL"} {
		for _, p := range run(t, still, 3, vary).Points {
			for _, id := range slices.Concat(p.Stops, p.Reviews, p.Notes) {
				require.NotContains(t, id, "carbonat", vary)
			}
		}
	}
}

func TestBounds(t *testing.T) {
	d := drinkOf(t, quince)
	ph, err := sweep.Parse(d, "measured.ph=3..4")
	require.NoError(t, err)
	acid, err := sweep.Parse(d, "citric acid=1..2 g/L")
	require.NoError(t, err)
	for want, c := range map[string]struct {
		varied []sweep.Varied
		steps  int
	}{
		"a sweep takes one input or two that differ":                                        {nil, 3},
		"1 is no number of steps; write one from 2 to 1001":                                 {[]sweep.Varied{ph}, 1},
		"1002 is no number of steps; write one from 2 to 1001":                              {[]sweep.Varied{ph}, 1002},
		"500 steps of 2 inputs are 250000 points, and the most is 20000; write fewer steps": {[]sweep.Varied{ph, acid}, 500},
	} {
		_, err := sweep.Run(context.Background(), d, c.varied, sweep.Options{Steps: c.steps})
		require.EqualError(t, err, want)
	}
	_, err = sweep.Run(context.Background(), d, []sweep.Varied{ph, ph}, sweep.Options{Steps: 3})
	require.EqualError(t, err, "a sweep takes one input or two that differ")
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err = sweep.Run(ctx, d, []sweep.Varied{ph}, sweep.Options{Steps: 100})
	require.ErrorIs(t, err, context.Canceled)
}

var favour = map[beverage.Class]int{beverage.LowAcid: 0, beverage.Undecided: 1, beverage.Acidified: 2, beverage.Acid: 3}

// Whatever the drink, a higher pH never makes the class more favourable.
func TestClassNeverGetsBetterWithPH(t *testing.T) {
	files, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var drinks []*beverage.Drink
	for _, f := range files {
		d, err := spec.Read(f, spec.Options{})
		require.NoError(t, err)
		drinks = append(drinks, d)
	}
	rapid.Check(t, func(t *rapid.T) {
		d := drinks[rapid.IntRange(0, len(drinks)-1).Draw(t, "drink")]
		low := rapid.Float64Range(1.5, 7).Draw(t, "from")
		v, err := sweep.Parse(d, "measured.ph="+decimal(low)+".."+decimal(low+rapid.Float64Range(0.05, 4).Draw(t, "width")))
		if err != nil {
			t.Fatal(err)
		}
		r, err := sweep.Run(context.Background(), d, []sweep.Varied{v}, sweep.Options{Steps: 7})
		if err != nil {
			t.Fatal(err)
		}
		for i := 1; i < len(r.Points); i++ {
			if a, b := r.Points[i-1], r.Points[i]; favour[b.Class] > favour[a.Class] {
				t.Fatalf("%s: %v at pH %v, %v at %v", d.Name, a.Class, a.At, b.Class, b.At)
			}
		}
	})
}

// Everything that differs between two neighbouring points is told, and nothing
// that does not.
func TestEveryChangeIsTold(t *testing.T) {
	r := run(t, drinkOf(t, quince), 31, "carbonation.volumes=0.5..4.5")
	var told, seen int
	for _, c := range r.Changes {
		if c.What == "class" || c.What == "package-pressure" {
			told++
		}
		require.NotEqual(t, c.From, c.To)
	}
	for i := 1; i < len(r.Points); i++ {
		a, b := r.Points[i-1], r.Points[i]
		if a.Class != b.Class {
			seen++
		}
		if slices.Contains(a.Stops, "package-pressure") != slices.Contains(b.Stops, "package-pressure") {
			seen++
		}
	}
	require.Equal(t, seen, told)
	require.Positive(t, seen)
}

// A pack that is liquid-full has no gas pressure, and none is told of it.
func TestALiquidFullPackHasNoPressure(t *testing.T) {
	r := run(t, drinkOf(t, quince), 2, "package.fill=330..348 mL")
	require.NotNil(t, r.Points[0].GaugeKPaHigh)
	require.False(t, r.Points[0].LiquidFull)
	require.Nil(t, r.Points[1].GaugeKPaHigh)
	require.True(t, r.Points[1].LiquidFull)
}

// BenchmarkThousandPoints is a sweep of 1,000 points of a carbonated whey drink.
func BenchmarkThousandPoints(b *testing.B) {
	d := drinkOf(b, quince)
	for b.Loop() {
		run(b, d, 1000, "measured.ph=2.8..4.6")
	}
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', 4, 64) }
