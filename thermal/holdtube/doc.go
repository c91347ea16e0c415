// Package holdtube works out how long a drink stays in a holding tube: on
// average, and its fastest particle, which decides. It is pure arithmetic.
//
// What is not known counts against the drink: an unknown viscosity is laminar
// flow, a flow metered nobody knows how cold was metered ice cold, and between
// two published limits the stricter one holds.
package holdtube

const (
	secondsPerMinute = 60
	secondsPerHour   = 3600
	litresPerM3      = 1000
	mmPerM           = 1000
	mPaPerPa         = 1000
	kelvin           = 273.15
)
