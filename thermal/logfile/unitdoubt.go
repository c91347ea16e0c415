package logfile

import (
	"fmt"
	"math"
)

// Temperatures by which readings are known for another unit than stated. A
// drink's process runs between these; common practice, no source.
const (
	kelvinLow, kelvinHigh = 250.0, 430.0 // K: -23 to 157 °C
	doubtShare            = 0.95         // of the readings
	hotterThanAnyC        = 150.0        // °C; a log beyond is in °F
	hotterShare           = 0.1          // of the readings that must be beyond
	smoothestC            = 15.0         // a lone step of which, up there or as close below, is none of a course on its way
	fahrenheitRoomLow     = 55.0         // °F, a cool room; in °C no product comes in and goes out so hot
	fahrenheitHotC        = 125.0
	fahrenheitMax         = 320.0 // °F: 160 °C
)

// unitDoubt is the unit that readings look like beside the one stated: "K", "F",
// or "" where there is no doubt. Either tells that a process in °C could have
// given them as well, such as the outlet of a tube run from 78 over 139 to 80 °C,
// which in °F is a pasteurizer: then whoever knows the recorder can settle it.
type unitDoubt struct {
	unit   string
	either bool
}

// settledBasis is told beside how the unit was known, where the caller's word
// settled a doubt.
const settledBasis = ", where the readings may be °F as well"

// detail says what is in doubt, and how it is settled.
func (d unitDoubt) detail() string {
	if d.either {
		return fmt.Sprintf("said to be in °C, but the values may be %s as well; the lower of the two is credited; if the recorder was set to °C, settle it with --unit C, or with unit = \"C\" for the record in the spec", unitName(d.unit))
	}
	return fmt.Sprintf("said to be in °C, but the values look like %s; the lower of the two is credited", unitName(d.unit))
}

// doubtedUnit looks at the readings of a column said to be in °C.
func doubtedUnit(col []float64) unitDoubt {
	top := highest(col)
	if top < fahrenheitHotC {
		return unitDoubt{}
	}
	var n, kelvin, fahrenheit, beyond, warm, hot int
	last, before, jumps := missing, 0., 0
	for _, v := range col {
		if v != v || isErrorCode(v) {
			continue
		}
		step := math.Abs(v - last)
		jumps += count(max(v, last) > hotterThanAnyC-smoothestC && step > smoothestC && step > 2*before)
		last, before = v, step
		n++
		kelvin += count(v >= kelvinLow && v <= kelvinHigh)
		fahrenheit += count(v > lowestC && v <= fahrenheitMax)
		beyond += count(v > hotterThanAnyC)
		warm += count(v >= fahrenheitRoomLow)
		hot += count(v >= fahrenheitHotC)
	}
	most := func(k int) bool { return n > 0 && float64(k) >= doubtShare*float64(n) }
	switch {
	case n == 0:
	case most(kelvin):
		return unitDoubt{unit: "K"}
	case most(fahrenheit) && jumps == 0 && float64(beyond) >= hotterShare*float64(n):
		return unitDoubt{unit: "F"}
	case most(warm) && hot > 0 && endsCool(col):
		return unitDoubt{unit: "F", either: top <= hotterThanAnyC}
	}
	return unitDoubt{}
}

func highest(col []float64) float64 {
	top := 0.0
	for _, v := range col {
		if v > top {
			top = v
		}
	}
	return top
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// endsCool tells a log that ends much cooler than its peak.
func endsCool(col []float64) bool {
	top, last := 0.0, 0.0
	for _, v := range col {
		if v == v && !isErrorCode(v) {
			top, last = max(top, v), v
		}
	}
	return last < fahrenheitHotC-25 && top >= fahrenheitHotC
}
