package checkvalue

import (
	"fmt"
	"math"

	"posset/beverage"
	"posset/beverage/law"
	"posset/thermal"
)

var lawModels = map[string]model{
	// Minutes that a hot-filled drink is held against pathogens, and for commercial
	// sterility.
	"law.hot-fill-hold":      {[]param{number("ph"), temp}, hotFill(law.HotFillBand.PathogenHoldS)},
	"law.hot-fill-sterility": {[]param{number("ph"), temp}, hotFill(law.HotFillBand.SterilityHoldS)},
	// °F at the filler, by pH.
	"law.fill-temperature": {[]param{number("ph")}, func(g given) (float64, error) {
		b, err := hotFillBand(g.number("ph"))
		return fahrenheit(b.Commercial.TableC), err
	}},
	// Minutes at tref that a line of a published schedule is worth.
	"law.schedule-lethality": {onReference(text("food"), text("market"), temperature("t")), scheduleLethality},
	// °F of the line of a schedule that has a time.
	"law.schedule-temperature": {[]param{text("food"), text("market"), duration("time")}, func(g given) (float64, error) {
		s, err := scheduleLine(g, func(s law.Schedule) bool { return s.TimeS == g.seconds("time") })
		return fahrenheit(s.TempC), err
	}},
	// Grams of free acid, SO2 or anhydrous salt that limits count a gram as.
	"law.free-acid": {[]param{text("ingredient")}, func(g given) (float64, error) {
		p, ok := law.PreservativeOf(g.text("ingredient"))
		if !ok {
			return 0, fmt.Errorf("no preservative %q", g.text("ingredient"))
		}
		return p.AsAcid, nil
	}},
	// Per cent of a preserving acid that is undissociated at a pH.
	"law.undissociated": {[]param{text("acid"), number("ph")}, undissociatedPercent},
	// A figure of a row, in the row's unit.
	"law.figure": {[]param{text("row"), text("figure")}, func(g given) (float64, error) {
		r, ok := law.Get(g.text("row"))
		if !ok {
			return 0, fmt.Errorf("no row %q", g.text("row"))
		}
		v, ok := r.Value(g.text("figure"))
		if !ok {
			return 0, fmt.Errorf("row %q has no figure %q", g.text("row"), g.text("figure"))
		}
		return v, nil
	}},
}

func fahrenheit(tC float64) float64 { return tC/perF + freezingF }

func hotFillBand(pH float64) (law.HotFillBand, error) {
	b, ok := law.HotFill(pH)
	if !ok {
		return b, fmt.Errorf("no hot fill figure at pH %g", pH)
	}
	return b, nil
}

func hotFill(holdS func(law.HotFillBand, float64) (float64, bool)) func(given) (float64, error) {
	return func(g given) (float64, error) {
		b, err := hotFillBand(g.number("ph"))
		if err != nil {
			return 0, err
		}
		s, ok := holdS(b, g.celsius("t"))
		if !ok {
			return 0, fmt.Errorf("no hold at %g °C", g.celsius("t"))
		}
		return s / secondsPerMinute, nil
	}
}

const secondsPerMinute = 60.0

func scheduleLine(g given, wanted func(law.Schedule) bool) (law.Schedule, error) {
	for _, s := range law.Schedules(g.text("food"), beverage.Market(g.text("market"))) {
		if wanted(s) {
			return s, nil
		}
	}
	return law.Schedule{}, fmt.Errorf("no such line for %s in %s", g.text("food"), g.text("market"))
}

func scheduleLethality(g given) (float64, error) {
	s, err := scheduleLine(g, func(s law.Schedule) bool { return s.TempC == g.celsius("t") })
	if err != nil {
		return 0, err
	}
	r, err := g.reference()
	if err != nil {
		return 0, err
	}
	return r.Lethality([]thermal.Point{{TempC: s.TempC}, {TimeS: s.TimeS, TempC: s.TempC}}), nil
}

func undissociatedPercent(g given) (float64, error) {
	pK, ok := map[string]func() float64{"benzoic": law.BenzoicPKa, "sorbic": law.SorbicPKa}[g.text("acid")]
	if !ok {
		return 0, fmt.Errorf("no preserving acid %q", g.text("acid"))
	}
	return perHundred / (1 + math.Pow(10, g.number("ph")-pK())), nil
}
