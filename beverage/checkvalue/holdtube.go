package checkvalue

import (
	"math"

	"posset/thermal"
	"posset/thermal/holdtube"
)

var holdtubeModels = map[string]model{
	// Seconds that a drink stays on average.
	"holdtube.mean-time": {tubeParams(), onTube(func(r holdtube.Residence, _ given) float64 { return r.MeanS })},
	// Seconds of the fastest particle in laminar flow, by the share of its flow index.
	"holdtube.fastest-time": {tubeParams(number("flow_index")), onTube(func(r holdtube.Residence, g given) float64 {
		return r.MeanS * holdtube.PowerLawShare(g.number("flow_index"))
	})},
	// Minutes on F0 of the fastest particle of laminar flow.
	"holdtube.lethality": {tubeParams(), onTube(func(r holdtube.Residence, _ given) float64 { return r.Lethality(thermal.F0.Bound()) })},
	// Mean velocity, m/s.
	"holdtube.velocity": {tubeParams(), onTube(func(r holdtube.Residence, _ given) float64 { return r.VelocityMPerS })},
	// Reynolds number of a Newtonian drink.
	"holdtube.reynolds": {tubeParams(in("viscosity", "mpa_s", "mPa·s"), in("density", "kg_per_m3", "kg/m³")), onTube(func(r holdtube.Residence, _ given) float64 { return r.Reynolds })},
	// Vapour pressure of water, kPa absolute.
	"holdtube.vapour-pressure": {[]param{temperature("t")}, func(g given) (float64, error) { return float64(holdtube.VapourKPa(g.celsius("t"))), nil }},
	// Density of a sucrose solution, kg/m³.
	"holdtube.density": {[]param{number("brix"), temperature("t")}, func(g given) (float64, error) {
		return holdtube.DensityKgM3(g.number("brix"), g.celsius("t")), nil
	}},
}

// tubeParams are a tube whose drink was metered hot, so that it does not grow.
func tubeParams(params ...param) []param {
	return append(params, in("length", "m", "m"), in("bore", "mm", "mm"), in("flow", "l_per_h", "L/h"), temperature("t"))
}

func onTube(compute func(holdtube.Residence, given) float64) func(given) (float64, error) {
	return func(g given) (float64, error) {
		tC := g.celsius("t")
		r, err := holdtube.Tube{BoreMM: g.in("bore", "mm"), LengthM: g.in("length", "m"), FlowLPerH: g.in("flow", "l_per_h"), MeteredC: tC, HoldC: tC,
			Drink: holdtube.Drink{ViscosityMPS: g.in("viscosity", "mpa_s"), DensityKgM3: g.in("density", "kg_per_m3")}}.Residence()
		if err != nil {
			return math.NaN(), err
		}
		return compute(r, g), nil
	}
}
