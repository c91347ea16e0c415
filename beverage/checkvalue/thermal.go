package checkvalue

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"posset/thermal"
)

// onReference are the parameters of a basis of lethality.
func onReference(params ...param) []param {
	return append(params, temperature("tref"), difference("z"))
}

func (g given) reference() (thermal.Reference, error) {
	return thermal.NewReference(g.celsius("tref"), g.difference("z"))
}

var thermalModels = map[string]model{
	// Lethal rate, a pure number.
	"thermal.lethal-rate": {onReference(temperature("t")), onBasis(func(r thermal.Reference, g given) float64 {
		return r.LethalRate(g.celsius("t"))
	})},
	// Minutes at 121.1 °C, z 10 C°, of a hold.
	"thermal.f0": {[]param{temperature("t"), duration("time")}, func(g given) (float64, error) {
		return thermal.F0.Lethality(g.hold()), nil
	}},
	// Pasteurization units of a hold.
	"thermal.pasteurization-units": {[]param{temperature("t"), duration("time")}, func(g given) (float64, error) {
		return thermal.PU.Lethality(g.hold()), nil
	}},
	// A hold in units of a named index.
	"thermal.index": {[]param{text("index"), temperature("t"), duration("time")}, func(g given) (float64, error) {
		i, ok := thermal.FindIndex(g.text("index"))
		if !ok {
			return 0, fmt.Errorf("no index %q", g.text("index"))
		}
		return i.Of(i.Reference.Lethality(g.hold())), nil
	}},
	// Lethality of a hold in the unit that its time is given in.
	"thermal.hold": {onReference(temperature("t"), duration("time")), onBasis(func(r thermal.Reference, g given) float64 {
		return r.Piece(g.asGiven("time", seconds), g.celsius("t"), g.celsius("t"))
	})},
	// Lethality of a hold over a stated time: decimal reductions over D.
	"thermal.hold-over": {onReference(temperature("t"), duration("time"), duration("over")), onBasis(func(r thermal.Reference, g given) float64 {
		return r.Piece(g.seconds("time"), g.celsius("t"), g.celsius("t")) / g.seconds("over")
	})},
	// Minutes at tref of readings joined by straight lines.
	"thermal.profile": {onReference(listOf(duration("time")), listOf(temperature("t"))), profile},
	// The same over what a quadrature of another library makes of the rate, piece by
	// piece: 1 where both agree.
	"thermal.over-quadrature": {onReference(listOf(duration("time")), listOf(temperature("t"))), overQuadrature},
	// Sum of rates times the step, as printed exercises do it; unit of the step.
	"thermal.rate-sum": {onReference(text("rule"), duration("step"), listOf(temperature("t"))), rateSum},
	// Minutes at tref of T = end + (start - end) 10^(-time/f).
	"thermal.exponential": {onReference(temperature("start"), temperature("end"), duration("f"), duration("time")), onBasis(exponential)},
	// Minutes at tref of a temperature that swings about its mean.
	"thermal.sinusoid": {onReference(temperature("mean"), difference("swing"), duration("period"), duration("time")), onBasis(sinusoid)},
	// Time for so many decimal reductions at t, in the unit that D at tref is given in.
	"thermal.d-value": {onReference(number("reductions"), duration("d"), temperature("t")), onBasis(func(r thermal.Reference, g given) float64 {
		return g.number("reductions") * g.asGiven("d", seconds) / r.LethalRate(g.celsius("t"))
	})},
	// Minutes at its reference temperature for an organism's decimal reductions.
	"thermal.organism-time": {[]param{text("organism"), number("reductions")}, func(g given) (float64, error) {
		o, ok := thermal.FindOrganism(g.text("organism"))
		if !ok {
			return 0, fmt.Errorf("no organism %q", g.text("organism"))
		}
		return o.MinutesFor(g.number("reductions")), nil
	}},
}

// onBasis gives a model its checked basis.
func onBasis(compute func(thermal.Reference, given) float64) func(given) (float64, error) {
	return func(g given) (float64, error) {
		r, err := g.reference()
		if err != nil {
			return 0, err
		}
		return compute(r, g), nil
	}
}

func (g given) hold() []thermal.Point {
	tC := g.celsius("t")
	return []thermal.Point{{TempC: tC}, {TimeS: g.seconds("time"), TempC: tC}}
}

func profile(g given) (float64, error) {
	r, err := g.reference()
	if err != nil {
		return 0, err
	}
	timesS, tempsC := g.secondsEach("time"), g.celsiusEach("t")
	if len(timesS) != len(tempsC) {
		return 0, fmt.Errorf("%d times for %d temperatures", len(timesS), len(tempsC))
	}
	points := make([]thermal.Point, len(timesS))
	for i := range points {
		points[i] = thermal.Point{TimeS: timesS[i], TempC: tempsC[i]}
	}
	return r.Lethality(points), nil
}

// quadraturePoints are those of a Gauss-Legendre rule on each straight line: the
// rate is an exponential there, which so many follow to the last digits.
const quadraturePoints = 32

func overQuadrature(g given) (float64, error) {
	r, err := g.reference()
	if err != nil {
		return 0, err
	}
	exact, err := profile(g)
	if err != nil {
		return 0, err
	}
	timesS, tempsC, sum := g.secondsEach("time"), g.celsiusEach("t"), 0.0
	for i := 1; i < len(timesS); i++ {
		rise := (tempsC[i] - tempsC[i-1]) / (timesS[i] - timesS[i-1])
		sum += quad.Fixed(func(s float64) float64 { return r.LethalRate(tempsC[i-1] + rise*(s-timesS[i-1])) }, timesS[i-1], timesS[i], quadraturePoints, quad.Legendre{}, 1)
	}
	return exact * secondsPerMinute / sum, nil
}

// rateSum adds up rates as hand calculation does: every reading ("rectangle"), all
// but the last ("left"), or with half of the first and the last ("trapezoid").
func rateSum(g given) (float64, error) {
	r, err := g.reference()
	if err != nil {
		return 0, err
	}
	tempsC, sum := g.celsiusEach("t"), 0.0
	for _, tC := range tempsC {
		sum += r.LethalRate(tC)
	}
	first, last := r.LethalRate(tempsC[0]), r.LethalRate(tempsC[len(tempsC)-1])
	switch g.text("rule") {
	case "rectangle":
	case "left":
		sum -= last
	case "trapezoid":
		sum -= (first + last) / 2
	default:
		return 0, fmt.Errorf("rule %q is none of rectangle, left, trapezoid", g.text("rule"))
	}
	return sum * g.asGiven("step", seconds), nil
}

// curvePieces is in how many straight lines a curve is walked: enough that the
// closed form is met within the millionth part.
const curvePieces = 4000

func exponential(r thermal.Reference, g given) float64 {
	start, end, f := g.celsius("start"), g.celsius("end"), g.seconds("f")
	return alongCurve(r, g.seconds("time"), func(s float64) float64 {
		return end + (start-end)*math.Pow(10, -s/f)
	})
}

func sinusoid(r thermal.Reference, g given) float64 {
	mean, swing, period := g.celsius("mean"), g.difference("swing"), g.seconds("period")
	return alongCurve(r, g.seconds("time"), func(s float64) float64 {
		return mean + swing*math.Sin(2*math.Pi*s/period)
	})
}

func alongCurve(r thermal.Reference, timeS float64, tempC func(s float64) float64) float64 {
	points := make([]thermal.Point, curvePieces+1)
	for i := range points {
		s := timeS * float64(i) / curvePieces
		points[i] = thermal.Point{TimeS: s, TempC: tempC(s)}
	}
	return r.Lethality(points)
}
