package protein

import (
	"math"

	"posset/beverage"
)

// Milk of pH 6.7 falls by 0.7 to 0.9, to about 5.8, in 20 minutes at 140 °C (Fox &
// McSweeney 1998, Dairy Chemistry and Biochemistry, p. 370; seen).
const (
	dropLow, dropMid, dropHigh = 0.7, 0.8, 0.9
	dropTempC                  = 140.0
	dropTimeS                  = 20 * 60.0
)

// The rate of Maillard reactions in milk changes 2.4- to 5-fold over 10 C° near
// 100 °C (Fox & McSweeney 1998, Table 9.1; seen), which is what the fall of pH is
// moved to other temperatures by.
const (
	slowestQ10 = 2.4
	fastestQ10 = 5.0
	decadeC    = 10.0
)

// PHDropOnHeat estimates how far heat lowers the pH of a neutral drink with milk
// sugar and milk salts, after timeS seconds at tempC °C, read cold. It takes the
// fall as even in time, and moves one published figure by a published span of
// temperature coefficients: its width is that of the span. Unknown for an input
// that is no number or a time below zero.
func PHDropOnHeat(tempC, timeS float64) beverage.Interval {
	if math.IsNaN(tempC) || math.IsInf(tempC, 0) || !(timeS >= 0) || math.IsInf(timeS, 0) {
		return beverage.Interval{}
	}
	times := timeS / dropTimeS
	decades := (tempC - dropTempC) / decadeC
	a, b := times*math.Pow(slowestQ10, decades), times*math.Pow(fastestQ10, decades)
	return beverage.Interval{Low: dropLow * min(a, b), Mid: dropMid * math.Sqrt(a*b), High: dropHigh * max(a, b), Basis: beverage.Predicted}
}

// coagulationQ10 is by how much heat coagulation of milk goes faster over 10 C° near
// 100 °C (Fox & McSweeney 1998, Table 9.1; seen).
const coagulationQ10 = 3.7

// CoagulationTempC is the temperature at which heat coagulation times are published.
const CoagulationTempC = 140.0

// CoagulationMinutes is what timeS seconds at tempC °C are worth, for the heat
// coagulation of milk, in minutes at 140 °C. One published temperature coefficient
// is taken to hold from 100 to 150 °C. NaN for an input that is no number.
func CoagulationMinutes(tempC, timeS float64) float64 {
	const secondsPerMinute = 60
	return timeS / secondsPerMinute * math.Pow(coagulationQ10, (tempC-CoagulationTempC)/decadeC)
}
