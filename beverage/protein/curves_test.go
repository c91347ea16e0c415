package protein

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

// Stokes: a sphere of 10 µm, 0.1 kg/L heavier than water of 1 mPa·s, falls
// 9.80665 * 1e-10 * 100 / (18 * 1e-3) = 5.448 µm/s, 470.7 mm a day.
func TestSettling(t *testing.T) {
	near(t, 470.7, SettlingMMPerDay(10, 1.1, 1.0, 1), 0.1, "falls")
	holds(t, SettlingMMPerDay(10, 0.93, 1.03, 1) < 0, "a fat globule does not cream")
	holds(t, math.IsNaN(SettlingMMPerDay(10, 1.1, 1, 0)), "no viscosity")
}

// Milk of 33 g/L protein has about 1.8 mPa·s (handbooks).
func TestViscosity(t *testing.T) {
	got, source, ok := Viscosity(FamilyMilk, beverage.Point(33, beverage.Stated))
	holds(t, ok && got.Low <= 1.8 && got.High >= 1.8 && source.Text != "", "milk: %v", got)
	for _, f := range []Family{FamilyUnknown, FamilyGelatin} {
		_, _, ok := Viscosity(f, beverage.Point(33, beverage.Stated))
		equal(t, false, ok, "viscosity of "+string(f))
	}
	_, _, ok = Viscosity(FamilyWhey, beverage.Point(300, beverage.Stated))
	equal(t, false, ok, "beyond what is held")
	_, _, ok = Viscosity(FamilyWhey, beverage.Interval{})
	equal(t, false, ok, "content not known")
}

func TestSolubilityIsLeastWhereTheProteinIsIsoelectric(t *testing.T) {
	for _, id := range IDs() {
		c := composition(t, id)
		at := func(pH float64) (beverage.Interval, bool) {
			x, _, ok := c.Solubility(beverage.Point(pH, beverage.Measured))
			return x, ok
		}
		least, ok := at(c.Isoelectric().Mid)
		if !ok {
			equal(t, FamilyGelatin, c.Family(), id+" has no solubility")
			continue
		}
		neutral, _ := at(8)
		holds(t, least.Mid <= neutral.Mid, "%s: %v at its isoelectric pH, %v at pH 8", id, least, neutral)
		_, ok = at(12)
		equal(t, false, ok, id+" at pH 12")
	}
}

func TestCurvesKeepTheirOrder(t *testing.T) {
	all, err := solubilities()
	works(t, err)
	rapid.Check(t, func(t *rapid.T) {
		one := all[rapid.SampledFrom([]string{"whey", "casein", "soy", "pea"}).Draw(t, "kind")]
		low := rapid.Float64Range(2, 9).Draw(t, "low")
		high := rapid.Float64Range(low, 9).Draw(t, "high")
		got := one.curve.at(beverage.Span(low, high, beverage.Measured))
		holds(t, got.Known() && 0 <= got.Low && got.Low <= got.Mid && got.Mid <= got.High && got.High <= 100, "pH %v to %v: %v", low, high, got)
		inner := one.curve.at(beverage.Point((low+high)/2, beverage.Measured))
		holds(t, inner.Low >= got.Low && inner.High <= got.High, "the middle %v is wider than the whole %v", inner, got)
	})
}

// Milk falls from pH 6.7 to about 5.8 in 20 minutes at 140 °C (Fox & McSweeney
// 1998, p. 370); UHT of 4 s hardly moves it.
func TestPHDropOnHeat(t *testing.T) {
	long := PHDropOnHeat(140, 1200)
	holds(t, long.Low <= 0.9 && long.High >= 0.9, "20 min at 140 °C: %v", long)
	holds(t, PHDropOnHeat(140, 4).High < 0.01, "UHT: %v", PHDropOnHeat(140, 4))
	retort := PHDropOnHeat(121.1, 600)
	holds(t, retort.Low < retort.Mid && retort.Mid < retort.High, "retort: %v", retort)
	for _, odd := range [][2]float64{{math.NaN(), 1}, {100, -1}, {math.Inf(1), 1}, {100, math.Inf(1)}} {
		equal(t, false, PHDropOnHeat(odd[0], odd[1]).Known(), "odd input")
	}
}

func TestDailyValues(t *testing.T) {
	for market, want := range map[beverage.Market]float64{beverage.US: 1300, beverage.EU: 800, beverage.Codex: 1000} {
		got, ok := DailyValue(market, NutrientCalcium)
		holds(t, ok && got.Source.Text != "", "%s: none", market)
		equal(t, want, got.Value, string(market))
	}
	_, ok := DailyValue(beverage.CA, NutrientProtein)
	equal(t, false, ok, "Canada's daily value of protein")
}
