package facts

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/facts/checkdata"
	"posset/beverage/ingredient"
	"posset/beverage/spec"
)

// world is one way in which everything that is in doubt may be.
type world struct {
	r         *rand.Rand
	maker     map[knob]float64 // of each figure, in standard deviations
	lots      [2]map[knob]float64
	constants float64
	misses95  float64 // what the model may miss, half of a 95 % interval
	misses    []miss
}

// miss is a bump of the model's error over pH.
type miss struct{ at, by float64 }

func newWorld(r *rand.Rand, c *Chemistry) *world {
	w := &world{r: r, maker: map[knob]float64{}, constants: r.NormFloat64(), misses95: modelMisses(c.doubts)}
	for i := range w.lots {
		w.lots[i] = map[knob]float64{}
	}
	for _, k := range newFit(c, nil).knobs {
		w.maker[k] = r.NormFloat64()
		for i := range w.lots {
			w.lots[i][k] = r.NormFloat64()
		}
	}
	for pH := 0.0; pH < 14; pH += 0.25 {
		w.misses = append(w.misses, miss{pH, r.NormFloat64()})
	}
	return w
}

// sd is standard deviations in halves of a 95 % interval.
const sd = 1 / 1.96

// pH is what a recipe comes to in this world with a lot; noise is what weighing
// and reading add.
func (w *world) pH(t *testing.T, c *Chemistry, lot int) float64 {
	f := newFit(c, nil)
	err := f.put(c, func(k int) float64 {
		x := f.knobs[k]
		z := math.Sqrt(x.shared)*w.maker[x] + math.Sqrt(1-x.shared)*w.lots[lot][x]
		return sd * math.Max(-2.5, math.Min(2.5, z))
	})
	require.NoError(t, err)
	s := c.settled()
	d := c.constants(s.pH)
	return s.pH + sd*(w.constants*d.signed()+w.misses95*w.missAt(s.pH))
}

// missAt is the model's error at a pH, of unit variance, alike over the reach.
func (w *world) missAt(pH float64) float64 {
	sum, norm := 0.0, 0.0
	for _, m := range w.misses {
		x := math.Exp(-square((pH - m.at) / marginOf("reach")))
		sum, norm = sum+x*m.by, norm+x*x
	}
	return sum / math.Sqrt(norm)
}

// trialDrink is a drink with an acid at a dose, in pure water, weighed well.
func trialDrink(t *testing.T, base string, baseGPerL float64, acid string, dose float64) *beverage.Drink {
	recipe := fmt.Sprintf("%s = %g g/L; %s = %g g/L", base, baseGPerL, acid, dose)
	d, err := spec.Parse([]byte("[drink]\nname = \"trial\"\n"+checkdata.Recipe(recipe, "0.01", "pure")), "trial.toml", ".", spec.Options{})
	require.NoError(t, err)
	return d
}

func amountOf(name string, gPerL float64) []beverage.Ingredient {
	a := beverage.Amount{Value: gPerL, Per: beverage.GramsPerLitre}
	return []beverage.Ingredient{{Name: name, Amount: beverage.Say(a), TolerancePercent: 2}}
}

// trials are readings at doses in a world, with one lot and with the errors of
// weighing and reading.
func (w *world) trials(t *testing.T, d *beverage.Drink, acid string, doses []float64) []beverage.Bench {
	var list []beverage.Bench
	for _, dose := range doses {
		weighed, _ := changed(d, amountOf(acid, dose*(1+0.02*sd*w.r.NormFloat64())), ingredient.Default())
		r := recipeOf(weighed, ingredient.Default())
		read := w.pH(t, r.chemistry, 0) + sd*marginOf("trial")*w.r.NormFloat64()
		list = append(list, beverage.Bench{Amounts: amountOf(acid, dose), PH: beverage.Say(read)})
	}
	return list
}

// With trials that are simulated, noise and another lot included, the interval
// still holds the drink 95 times of 100, and it is narrower than without them.
func TestTrialsNarrowWhatTheyTellAndNoMore(t *testing.T) {
	lib := ingredient.Default()
	for _, c := range []struct {
		base  string
		gPerL float64
		acid  string
		dose  float64
		doses []float64
		most  float64 // of the width before

		worlds int
	}{
		{"whey protein isolate, acidified", 66, "phosphoric acid 85 %", 1.5, []float64{0.5, 1, 2, 3}, 0.6, 200},
		{"whey protein isolate", 60, "citric acid", 12, []float64{8, 11, 14}, 0.5, 40},
		{"skim milk", 500, "lactic acid 88 %", 6, []float64{3, 5, 7}, 0.9, 40},
		{"apple juice", 300, "malic acid", 2, []float64{1, 3}, 0.5, 200},
		{"sodium citrate", 1, "citric acid", 2, []float64{1, 2, 3}, 1, 40},
	} {
		d := trialDrink(t, c.base, c.gPerL, c.acid, c.dose)
		r := rand.New(rand.NewPCG(1, 7))
		in, inBefore, width, before, wrong := 0, 0, 0.0, 0.0, 0
		for range c.worlds {
			own := recipeOf(d, lib).chemistry
			own.predict()
			w := newWorld(r, own)
			trial := *d
			trial.Bench = w.trials(t, d, c.acid, c.doses)
			truth := w.pH(t, own, 1)
			recipe := recipeOf(&trial, lib)
			pH := phOf(&trial, &recipe, lib)
			in += holds(pH.Predicted, truth)
			inBefore += holds(pH.Bench.Before, truth)
			if pH.Bench.Contradiction != "" {
				wrong++
			}
			width += half(pH.Predicted) / float64(c.worlds)
			before += half(pH.Bench.Before) / float64(c.worlds)
		}
		t.Logf("%-32s half width %.3f to %.3f, covered %d and %d of %d, called contradictory %d", c.base, before, width, inBefore, in, c.worlds, wrong)
		assert.GreaterOrEqual(t, in, c.worlds*95/100, c.base)
		assert.LessOrEqual(t, width, c.most*before, c.base)
		assert.LessOrEqual(t, wrong, c.worlds/40, c.base)
	}
}

func half(i beverage.Interval) float64 { return (i.High - i.Low) / 2 }

func holds(i beverage.Interval, pH float64) int {
	if pH >= i.Low && pH <= i.High {
		return 1
	}
	return 0
}
