// Package heatpen finds how a container heats and cools from readings at its
// cold spot, and from that the process time by Ball's formula and by the general
// method. It is pure arithmetic: no files, no drinks.
//
// Symbols are those of the trade. RT is the retort temperature, IT the initial
// temperature of the product, T the product's, all in °C.
//
//	fh   minutes in which RT - T falls tenfold, on the straight part of its log
//	jh   (RT - T0)/(RT - IT), with T0 where the straight part starts when carried
//	     back to the corrected zero
//	fc   the same of the cooling: minutes in which T - Tc falls tenfold
//	jc   the same of the cooling, from the product's temperature at its start
//	g    RT - T at the end of heating
//	U    minutes at RT that the target is worth
//	B    minutes of heating from the corrected zero
//
// The corrected zero stands 58 % of the come-up after steam on: 42 % of the
// come-up counts as time at RT (Ball 1923, Bulletin of the National Research
// Council 7(37)). A come-up that nobody told earns no such credit.
package heatpen

const (
	secondsPerMinute = 60

	// ComeUpShare of the come-up counts as time at retort temperature (Ball 1923).
	ComeUpShare = 0.42
)
