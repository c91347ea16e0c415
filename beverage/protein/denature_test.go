package protein

import (
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func inMilk() Conditions {
	return Conditions{PH: beverage.Around(6.7, 0.1, beverage.Measured), ProteinGPerL: 33}
}

func heated(t tester, id string, points ...TempPoint) *Denaturer {
	t.Helper()
	d, v := NewDenaturer(composition(t, id), inMilk())
	holds(t, v.OK(), "refused: %s", v.Why)
	for _, p := range points {
		d.Add(p.TimeS, p.TempC)
	}
	return d
}

func TestFractionRisesWithTimeAndTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tempC := rapid.Float64Range(45, 145).Draw(t, "temperature")
		holdS := rapid.Float64Range(1, 5000).Draw(t, "time")
		base := heated(t, "milk protein", TempPoint{0, tempC}, TempPoint{holdS, tempC}).Fraction()
		longer := heated(t, "milk protein", TempPoint{0, tempC}, TempPoint{holdS * 1.1, tempC}).Fraction()
		hotter := heated(t, "milk protein", TempPoint{0, tempC + 1}, TempPoint{holdS, tempC + 1}).Fraction()
		for _, more := range []beverage.Interval{longer, hotter} {
			holds(t, more.Low >= base.Low && more.Mid >= base.Mid && more.High >= base.High, "%v after more heat than %v", more, base)
		}
		holds(t, 0 <= base.Low && base.Low <= base.Mid && base.Mid <= base.High && base.High <= 1, "interval %v is out of order", base)
	})
}

func TestConstantsOutsideMilkAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		cond Conditions
		want string
	}{
		"acid":    {Conditions{PH: beverage.Around(3.2, 0.1, beverage.Measured), ProteinGPerL: 60}, "published rate constants are for milk near pH 6.7 and never hold below pH 4.0"},
		"between": {Conditions{PH: beverage.Around(5.5, 0.1, beverage.Measured), ProteinGPerL: 60}, "published rate constants are for milk near pH 6.7; outside pH 6.4 to 7.2 they do not hold"},
		"no pH":   {Conditions{ProteinGPerL: 60}, "the pH is unknown"},
		"no dose": {Conditions{PH: beverage.Around(6.7, 0.1, beverage.Measured)}, "the protein content is unknown, and the rate depends on it"},
	} {
		d, v := NewDenaturer(composition(t, "whey isolate"), c.cond)
		d.Add(0, 90)
		d.Add(60, 90)
		equal(t, false, v.OK(), name)
		equal(t, c.want, v.Why, name)
		equal(t, false, d.Fraction().Known(), name)
	}
}

// Every protein that heat can unfold has rate constants, or borrows them.
func TestEveryLabileProteinIsFollowed(t *testing.T) {
	for _, id := range IDs() {
		c := composition(t, id)
		got, v := Isothermal(c, inMilk(), 85, 60)
		equal(t, c.HeatLabileFraction() > 0, v.OK(), id)
		equal(t, v.OK(), got.Known() && got.Low > 0, id+" loses nothing at 85 °C")
	}
}

func TestNothingToDenature(t *testing.T) {
	for _, c := range []*Composition{nil, composition(t, "caseinate"), composition(t, "collagen")} {
		d, v := NewDenaturer(c, inMilk())
		d.Add(0, 120)
		d.Add(60, 120)
		equal(t, false, v.OK(), "holds")
		equal(t, false, d.Fraction().Known(), "known")
	}
	equal(t, false, (&Denaturer{}).Fraction().Known(), "zero value known")
}

func BenchmarkDenaturer10000Rows(b *testing.B) {
	c, _ := Of("milk protein")
	sweet := inMilk()
	sweet.SugarGPerL = 50
	for b.Loop() {
		d, _ := NewDenaturer(c, sweet)
		for i := range 10_000 {
			d.Add(float64(i), 20+float64(i)*0.012)
		}
	}
}
