package law

import "posset/beverage"

// A chilled low-acid drink may live longer than ChilledMaxDays where one of
// four published controls of non-proteolytic C. botulinum holds throughout it:
// heat, pH, water activity or salt. The figures are those of UK guidance.

// ChilledControlPH is the pH at or below which the first control holds.
func ChilledControlPH() float64 { return figure("uk-chilled-botulinum", "pH") }

// ChilledControlWaterActivity is the water activity at or below which one does.
func ChilledControlWaterActivity() float64 {
	return figure("uk-chilled-botulinum", "water activity")
}

// ChilledControlSaltPercent is the salt in the water phase, percent by mass,
// from which one does.
func ChilledControlSaltPercent() float64 { return figure("uk-chilled-botulinum", "salt in water") }

// ChilledHeat returns a line of the published table (90 °C for 10 minutes and
// its equals) that a hold reaches: tC is the coldest the drink has in °C, holdS
// the time of its fastest part in seconds.
func ChilledHeat(tC, holdS float64) (Schedule, bool) {
	return Covering(Schedules(FoodChilledLowAcid, beverage.UK), tC, holdS)
}
