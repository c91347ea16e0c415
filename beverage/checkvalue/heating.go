package checkvalue

import (
	"math"

	"posset/thermal"
	"posset/thermal/heatpen"
)

var heatingModels = map[string]model{
	// C° below the retort at the end of heating, from fh/U.
	"heatpen.g": {heatingTable(number("fh_over_u")), func(g given) (float64, error) {
		return g.heatingTable(heatpen.HeatingStartC).G(g.number("fh_over_u")), nil
	}},
	// log10 of the same in F°, by the table of z 18 F° and 180 F° between retort and
	// cooling medium.
	"heatpen.printed-log-g": {[]param{number("fh_over_u")}, func(g given) (float64, error) {
		return math.Log10(heatpen.PrintedTable(printedZC, printedDropC).G(g.number("fh_over_u")) / perF), nil
	}},
	// Minutes at tref of a process: heating for a time, and cooling as asked for.
	"heatpen.delivered": {heatingTable(temperature("retort"), temperature("initial"), number("jh"), duration("fh"), duration("time"), temperature("tref")), delivered},
	// Minutes of heating for a target by Ball's formula, with no lethality of
	// cooling and with what is counted of it.
	"heatpen.time-without-cooling": {processTime(), onCurve(func(p heatpen.ProcessTime) float64 { return p.HeatingOnlyMin })},
	"heatpen.time":                 {processTime(), onCurve(func(p heatpen.ProcessTime) float64 { return p.CountMin })},
}

func processTime() []param {
	return []param{temperature("retort"), temperature("initial"), temperature("cooling"), number("jh"), duration("fh"), duration("target"), temperature("tref"), difference("z"), number("jc")}
}

func onCurve(of func(heatpen.ProcessTime) float64) func(given) (float64, error) {
	return func(g given) (float64, error) {
		ref, err := g.reference()
		if err != nil {
			return 0, err
		}
		fh := g.seconds("fh") / secondsPerMinute
		c := heatpen.Curve{FhMin: fh, Jh: g.number("jh"), Cooled: true, FcMin: fh, Jc: g.number("jc")}
		out, err := c.BallTime(heatpen.Target{Minutes: g.seconds("target") / secondsPerMinute, Basis: ref.Bound()},
			heatpen.Process{RetortC: g.celsius("retort"), InitialC: g.celsius("initial"), CoolingC: g.celsius("cooling")})
		return of(out), err
	}
}

const (
	printedZC    = 18 / 1.8
	printedDropC = 180 / 1.8
)

func heatingTable(params ...param) []param {
	return append(params, difference("z"), optional(difference("drop")), optional(number("jc")), optional(number("cooling_share")))
}

func (g given) heatingTable(startC float64) heatpen.Table {
	return heatpen.Table{ZC: g.difference("z"), DropC: g.difference("drop"), Jc: g.number("jc"), FcOverFh: 1, CoolingShare: g.number("cooling_share"), StartC: startC}
}

func delivered(g given) (float64, error) {
	ref, err := thermal.NewReference(g.celsius("tref"), g.difference("z"))
	if err != nil {
		return 0, err
	}
	fh := g.seconds("fh") / secondsPerMinute
	startC := g.number("jh") * (g.celsius("retort") - g.celsius("initial"))
	endC := startC * math.Pow(10, -g.seconds("time")/secondsPerMinute/fh)
	return ref.LethalRate(g.celsius("retort")) * fh * g.heatingTable(startC).UOverFh(endC), nil
}
