package law

import (
	"math"

	"posset/beverage"
)

// A chilled low-acid drink may live longer than ChilledMaxDays where one of
// four published controls of non-proteolytic C. botulinum holds throughout it:
// heat, pH, water activity or salt. The figures are those of UK guidance.

// ChilledPH is the pH at or below which, throughout the drink, non-proteolytic
// C. botulinum does not grow.
func ChilledPH() float64 { return figure("uk-chilled-botulinum", "pH") }

// ChilledWaterActivity is the water activity with the same effect.
func ChilledWaterActivity() float64 { return figure("uk-chilled-botulinum", "water activity") }

// ChilledSaltPercent is the salt in the water phase, percent by mass, from
// which the same holds.
func ChilledSaltPercent() float64 { return figure("uk-chilled-botulinum", "salt in water") }

// ChilledHeat returns a line of the published table (90 °C for 10 minutes and
// its equals) that a hold reaches: tC is the coldest the drink has in °C, holdS
// the time of its fastest part in seconds.
func ChilledHeat(tC, holdS float64) (Schedule, bool) {
	return Covering(Schedules(FoodChilledLowAcid, beverage.UK), tC, holdS)
}

// ChilledLethality tells whether a hold at 90 °C and above is worth 10 minutes at
// 90 °C by z 10 C°, the convention above 90 °C: the larger of the z-values in
// use, which credits least there. tC in °C, holdS in seconds.
func ChilledLethality(tC, holdS float64) bool {
	at := figure("uk-chilled-botulinum", "heat")
	minutes := figure("uk-chilled-botulinum", "time")
	z := figure("chilled-z.trade", "z above 90 C")
	return tC >= at && holdS/60*math.Pow(10, (tC-at)/z) >= minutes
}
