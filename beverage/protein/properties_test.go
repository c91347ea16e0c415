package protein

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage"
)

func drawn(t *rapid.T, what string, low, high float64) beverage.Interval {
	a := rapid.Float64Range(low, high).Draw(t, what+" low")
	return beverage.Span(a, rapid.Float64Range(a, high).Draw(t, what+" high"), beverage.Predicted)
}

func widened(i beverage.Interval, by float64) beverage.Interval {
	return beverage.Interval{Low: i.Low - by, Mid: i.Mid, High: i.High + by, Basis: i.Basis}
}

// Doubt counts against the drink: a wider pH or salt never raises the content at
// which it gels, never narrows the zone in which it curds and never makes it look
// clearer; neither does not knowing.
func TestDoubtNeverFlatters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := composition(t, rapid.SampledFrom(IDs()).Draw(t, "id"))
		pH, salt := drawn(t, "pH", 2, 9), drawn(t, "salt", 0, 200)
		by := rapid.Float64Range(0, 1).Draw(t, "wider by")
		for _, doubtful := range [][2]beverage.Interval{
			{widened(pH, by), widened(salt, 20*by)}, {{}, salt}, {pH, {}}, {{}, {}},
		} {
			sure, _, known := GelLimit(c.Family(), pH, salt, true)
			unsure, _, still := GelLimit(c.Family(), doubtful[0], doubtful[1], true)
			holds(t, !known || still && unsure.Low <= sure.Low, "gels at %v for sure, at %v in doubt", sure.Low, unsure.Low)
			clear, _ := c.Clarity(pH, salt)
			hazy, _ := c.Clarity(doubtful[0], doubtful[1])
			holds(t, clear == ClarityUnknown || hazy <= clear, "%v for sure, %v in doubt", clear, hazy)
		}
	})
}

func TestDoubtNeverNarrowsTheCurdZone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tempC := drawn(t, "temperature", 0, 90)
		sure, _, ok := CurdZone(FamilyCasein, tempC, true)
		holds(t, ok, "no zone at %v", tempC)
		for _, doubtful := range []beverage.Interval{{}, widened(tempC, 5)} {
			unsure, _, _ := CurdZone(FamilyCasein, doubtful, true)
			holds(t, unsure.High >= sure.High && unsure.Low <= sure.Low, "%v for sure, %v in doubt", sure, unsure)
		}
	})
}

func TestStandingOfAWiderIntervalIsNoSurer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Range{rapid.Float64Range(2, 6).Draw(t, "low"), math.Inf(1)}
		x := drawn(t, "x", 2, 9)
		wide := r.Stands(widened(x, rapid.Float64Range(0, 2).Draw(t, "wider by")))
		narrow := r.Stands(x)
		holds(t, !wide.SurelyInside() || narrow.SurelyInside(), "the wider lies %v, the narrower %v", wide, narrow)
		holds(t, wide.MayBeInside() || !narrow.MayBeInside(), "the wider lies %v, the narrower %v", wide, narrow)
	})
}
