package holdtube

import "math"

// Regime is how a drink flows. Its zero value is treated as laminar.
type Regime int

// Regimes of flow.
const (
	RegimeUnknown Regime = iota
	Laminar
	Transitional
	Turbulent
)

func (r Regime) String() string {
	return [...]string{"unknown", "laminar", "transitional", "turbulent"}[r]
}

const (
	// laminarUpTo is the textbooks' limit of laminar flow (recalled, high);
	// turbulentFrom the limit that sizing sheets of pasteurizers use (seen in a
	// holding-section sheet). Between them flow may be either.
	laminarUpTo   = 2100
	turbulentFrom = 4000
	fullyFrom     = 20000
)

const (
	// LaminarShare is the time of the fastest particle over the mean in laminar
	// flow: Poiseuille's profile is twice as fast in the middle.
	LaminarShare = 0.5
	// TurbulentShare and FullyTurbulentShare are the same above Reynolds numbers of
	// 4000 and 20 000: the middle is 1.33 and 1.25 times as fast as the mean
	// (pasteurizer holding-section sheet, seen). Many size by 0.83 in all
	// turbulent flow; the smaller figure counts here.
	TurbulentShare      = 1 / 1.33
	FullyTurbulentShare = 1 / 1.25
)

// stricter multiplies both limits for a power-law drink, whose laminar flow
// lasts longer the more it thins: (4n+2)(5n+3)/(3(3n+1)²) of the Newtonian limit
// (Govier and Aziz 1972, as in Steffe, Rheological Methods; recalled, medium).
// A drink that thickens with shear is given no lower limit.
func stricter(n float64) float64 {
	return max(1, (4*n+2)*(5*n+3)/(3*(3*n+1)*(3*n+1)))
}

// regimeOf takes the Reynolds number of Metzner and Reed.
func regimeOf(reynolds, n float64) Regime {
	switch limit := stricter(n); {
	case reynolds > turbulentFrom*limit:
		return Turbulent
	case reynolds > laminarUpTo*limit:
		return Transitional
	case reynolds > 0:
		return Laminar
	}
	return RegimeUnknown
}

// share is the time of the fastest particle over the mean that a regime allows.
func share(r Regime, reynolds, n float64) float64 {
	switch {
	case r == Turbulent && reynolds > fullyFrom*stricter(n):
		return FullyTurbulentShare
	case r == Turbulent:
		return TurbulentShare
	}
	return min(LaminarShare, PowerLawShare(n))
}

// PowerLawShare is the time of the fastest particle over the mean of a power-law
// drink in laminar flow, (n+1)/(3n+1); 0.5 for n = 1. A drink that thins with
// shear has more, but is credited that only after a residence-time test.
//
// Reference: Steffe and Daubert, Bioprocessing Pipelines (recalled, high).
func PowerLawShare(n float64) float64 { return (n + 1) / (3*n + 1) }

// reynoldsOf is the Reynolds number of Metzner and Reed 1955 (recalled, high),
//
//	ρ v^(2-n) D^n / (8^(n-1) K ((3n+1)/4n)^n)
//
// which is ρ v D/μ for n = 1. K in Pa·s^n.
func reynoldsOf(densityKgM3, velocityMPerS, boreM, consistency, n float64) float64 {
	thick := math.Pow(8, n-1) * consistency * math.Pow((3*n+1)/(4*n), n)
	return densityKgM3 * math.Pow(velocityMPerS, 2-n) * math.Pow(boreM, n) / thick
}
