package need

import (
	"math"

	"posset/beverage/law"
	"posset/thermal"
)

// HoldS is how long a drink has to be held at tC °C to come up to the figure,
// seconds; +Inf where no time does. told is false where the need names no figure
// in time and temperature. It is for asking what a plant can reach at all.
func (n Need) HoldS(tC float64) (holdS float64, told bool) {
	if n.hold == nil {
		return math.Inf(1), false
	}
	return n.hold(tC), true
}

// minutesAt is the hold, seconds, that is worth so many minutes on a basis.
func minutesAt(minutes float64, r thermal.Reference) func(tC float64) float64 {
	return func(tC float64) float64 { return secondsPerMinute * minutes / r.LethalRate(tC) }
}

// pathogens is the hold of the published hot-fill figures; colder than their
// coldest line there is none.
func pathogens(band law.HotFillBand) func(tC float64) float64 {
	return func(tC float64) float64 {
		if holdS, ok := band.PathogenHoldS(tC); ok {
			return holdS
		}
		return math.Inf(1)
	}
}

// stay is one unbroken time at or above a temperature.
func stay(s law.Schedule) func(tC float64) float64 {
	return func(tC float64) float64 {
		if tC < s.TempC || s.TimeS <= 0 {
			return math.Inf(1)
		}
		return s.TimeS
	}
}

const secondsPerMinute = 60
