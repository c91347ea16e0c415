package facts

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/ingredient"
)

// dosing asks for acids of the library, in equal parts unless more are given.
func dosing(pH float64, parts []float64, names ...string) Dosing {
	ask := Dosing{PH: pH, TempC: 25, Parts: parts}
	for _, n := range names {
		x := ingredient.Default().Resolve([]beverage.Ingredient{{Name: n}}, nil)[0]
		ask.Acids = append(ask.Acids, Line{Resolved: &x})
		if parts == nil {
			ask.Parts = append(ask.Parts, 1)
		}
	}
	return ask
}

func line(name, amount string) string {
	return fmt.Sprintf("[[ingredient]]\nname = %q\namount = %q\n", name, amount)
}

var doseDrinks = map[string]struct {
	recipe string
	ask    Dosing
}{
	"clear whey":           {line("whey protein isolate, acidified", "60 g/L"), dosing(2.9, nil, "malic acid")},
	"neutral whey":         {line("whey protein isolate", "50 g/L") + line("citric acid", "6 g/L"), dosing(3.4, nil, "citric acid")},
	"a blend":              {line("whey protein isolate", "50 g/L"), dosing(3.6, []float64{3, 1}, "citric acid", "malic acid")},
	"strength not told":    {line("collagen peptides", "40 g/L"), dosing(3.5, nil, "phosphoric acid")},
	"casein across 4.6":    {line("micellar casein isolate", "60 g/L"), dosing(4.2, nil, "lactic acid 88 %")},
	"juice":                {line("apple juice", "400 g/L"), dosing(3.3, nil, "citric acid")},
	"soda":                 {line("sucrose", "90 g/L") + line("trisodium citrate dihydrate", "0.4 g/L"), dosing(3.0, nil, "tartaric acid")},
	"up, by base":          {line("citric acid", "3 g/L"), dosing(4.2, nil, "trisodium citrate dihydrate")},
	"with trials":          {clearWhey + benchOf([2]float64{0.8, 3.15}, [2]float64{1.6, 2.98}, [2]float64{2.4, 2.84}), dosing(2.8, nil, "citric acid")},
	"slow base beside":     {line("whey protein isolate, acidified", "60 g/L") + line("calcium carbonate", "1 g/L"), dosing(3.2, nil, "citric acid")},
	"carbonate in a juice": {line("orange juice", "500 g/L") + line("potassium bicarbonate", "0.5 g/L"), dosing(3.4, nil, "lemon juice concentrate")},
}

// The dosed drink, predicted anew, has its upper end at what was asked for: never
// above, and no more below than a dose can be told.
func TestDoseBringsTheUpperEndToTheTarget(t *testing.T) {
	for name, c := range doseDrinks {
		f := factsOf(t, c.recipe)
		d, err := f.DoseTo(ingredient.Default(), c.ask)
		require.NoError(t, err, name)
		assert.LessOrEqual(t, d.PH.High, c.ask.PH, name)
		assert.GreaterOrEqual(t, d.PH.High, c.ask.PH-closePH, name)
		if len(f.Drink.Bench) > 0 {
			continue // trials state the recipe without the dose
		}
		dosed := c.recipe
		for i, g := range d.GPerL {
			if d.InAll[i] > g {
				dosed = line("whey protein isolate", "50 g/L")
			}
			dosed += line(c.ask.Acids[i].Name, fmt.Sprintf("%.6f g/L", d.InAll[i]))
		}
		again := factsOf(t, dosed)
		assert.InDelta(t, d.PH.High, again.PH.Predicted.High, 1e-4, name)
		titration, err := again.Titrate(25)
		require.NoError(t, err, name)
		assert.InDelta(t, *titration.Acidity.As("citric"), *d.Acidity.As("citric"), 1e-4, name)
	}
}

// A drink that is at the target already needs nothing; what goes the wrong way or
// cannot be poured in is said in words.
func TestDosesThatCannotBe(t *testing.T) {
	f := factsOf(t, pureWater+line("citric acid", "4 g/L"))
	d, err := f.DoseTo(ingredient.Default(), dosing(3, nil, "malic acid"))
	require.NoError(t, err)
	assert.Equal(t, []float64{0}, d.GPerL)
	for want, ask := range map[string]Dosing{
		"--target-ph: sodium hydroxide raises the pH, and the upper end of this drink lies at 2.50 without it; ask for a pH on the other side, or dose with something else": dosing(2.3, nil, "sodium hydroxide"),
		"--target-ph: no dose of citric acid that leaves a drink of it brings the upper end from 2.50 to 0.50; ask for less or take a stronger one":                         dosing(0.5, nil, "citric acid"),
		"--with: sucrose cannot be dosed: it brings no acid or base; take an acid, such as citric acid":                                                                     dosing(3, nil, "sucrose"),
	} {
		_, err := f.DoseTo(ingredient.Default(), ask)
		assert.EqualError(t, err, want)
	}
}

// A pH that was measured of the drink as it is counts as a trial of it: the dose
// follows it, and the interval of the dosed drink is narrower.
func TestAMeasuredPHAnchorsTheDose(t *testing.T) {
	recipe := line("whey protein isolate, acidified", "60 g/L")
	ask := dosing(2.9, nil, "phosphoric acid 85 %")
	at := func(measured string) *Dosed {
		d, err := factsOf(t, recipe+measured).DoseTo(ingredient.Default(), ask)
		require.NoError(t, err, measured)
		return d
	}
	const reading = "[measured]\nph_temperature = \"25 C\"\nph_tolerance = 0.03\nph = "
	plain, low, high := at(""), at(reading+"3.05\n"), at(reading+"3.30\n")
	assert.False(t, plain.Anchored)
	assert.True(t, low.Anchored && high.Anchored)
	assert.Less(t, low.GPerL[0], high.GPerL[0])
	assert.Less(t, half(low.PH), half(plain.PH))
	assert.Less(t, half(high.PH), half(plain.PH))
	wrong := at(reading + "4.40\n")
	assert.True(t, wrong.Doubtful && !wrong.Anchored)
	assert.Greater(t, wrong.GPerL[0], high.GPerL[0], "what cannot be followed is added to the upper end")
}

// With every doubt wider, no less acid is asked for.
func TestWiderDoubtAsksForNoLessAcid(t *testing.T) {
	last := 0.0
	for _, tolerance := range []string{"0 %", "2 %", "5 %", "10 %"} {
		f := factsOf(t, line("whey protein isolate", "50 g/L")+"amount_tolerance = \""+tolerance+"\"\n")
		d, err := f.DoseTo(ingredient.Default(), dosing(3.6, nil, "citric acid"))
		require.NoError(t, err)
		assert.Greater(t, d.GPerL[0], last-1e-3, tolerance)
		last = d.GPerL[0]
	}
}

// An acid that only the recipe describes can be dosed, too.
func TestDoseOfADescribedAcid(t *testing.T) {
	const verjuice = "kind = \"juice\"\nph = 2.6\ntitratable_acidity = \"2.5 % as malic acid\"\nbrix = 9\n"
	f := factsOf(t, line("whey protein isolate", "40 g/L")+line("barley verjuice", "100 g/L")+verjuice)
	ask := Dosing{PH: 4.5, TempC: 25, Acids: f.Recipe.Lines[1:], Parts: []float64{1}}
	d, err := f.DoseTo(ingredient.Default(), ask)
	require.NoError(t, err)
	assert.Greater(t, d.GPerL[0], 0.0)
	assert.InDelta(t, 100+d.GPerL[0], d.InAll[0], 1e-9)
	again := factsOf(t, line("whey protein isolate", "40 g/L")+line("barley verjuice", fmt.Sprintf("%.6f g/L", d.InAll[0]))+verjuice)
	assert.InDelta(t, d.PH.High, again.PH.Predicted.High, 1e-4)
}
