package logfile

import (
	"math"
	"slices"
)

// What readings of a sound probe scatter by is learnt from its own record.
const (
	sampleReadings = 256   // looked at for it
	noiseQuantile  = 0.75  // of the scatter; three standard deviations of the noise
	noiseFactor    = 2.65  // of that quantile: what noise does not reach in 10^8 readings
	noiseSteps     = 1     // of the resolution: the part of the quantile, half of it at most, that is rounding
	stepFactor     = 2.5   // of the resolution: what rounding alone can do
	leastBeyondC   = 0.1   // C°, below which nothing is called a spike
	slopeSpan      = 8     // readings over which a slope is taken
	movingShare    = 0.05  // of its range that a probe crosses in that span while it moves
	slopeQuantile  = 0.9   // of the slopes while it moves
	slowestTauS    = 1800. // time constant of a probe that has not shown its own
	lagShare       = 0.3   // of the time to cross its range, in which a slow probe may not answer at all
)

// profile is what a probe's own record says about it.
type profile struct {
	resC     float64 // step of its readings
	beyondC  float64 // what neither rounding nor its noise explain
	tauS     float64 // how slowly it answers
	lagS     float64 // how long it may not answer at all
	freezeAt int     // so many equal readings on end do not happen; 0 unknown
}

// learn makes a probe's profile from a column. unit turns its readings into °C;
// those outside lowC to highC are codes.
func (r *scratch) learn(t, col []float64, unit scale, decimals int, lowC, highC float64) profile {
	p := profile{resC: unit.factor * resolution(col, decimals), tauS: slowestTauS, lagS: slowestTauS * lagShare}
	stride := max(1, len(col)/sampleReadings)
	scatter, moves := r.scatter[:0], r.moves[:0]
	from, to := unit.back(lowC), unit.back(highC)
	low, high := math.Inf(1), math.Inf(-1)
	for i := 0; i+slopeSpan < len(col); i += stride {
		w := (*[slopeSpan + 1]float64)(col[i:])
		if !within(w[:], from, to) {
			continue
		}
		scatter = append(scatter, min(bend(w[0], w[1], w[2], w[3]), bend(w[4], w[5], w[6], w[7])))
		moves = append(moves, move{math.Abs(w[slopeSpan] - w[0]), t[i+slopeSpan] - t[i]})
		low, high = min(low, w[0]), max(high, w[0])
	}
	p.beyondC = p.beyond(unit.factor * quantile(scatter, noiseQuantile))
	r.scatter, r.moves = scatter, moves
	r.slopes = p.answer(r.slopes[:0], moves, high-low, p.beyondC/unit.factor)
	p.freezeAt = p.level(col, stride, (low+high)/2, unit.factor)
	return p
}

func within(x []float64, from, to float64) bool {
	for _, v := range x {
		if !(v >= from && v <= to) {
			return false
		}
	}
	return true
}

// level looks at the upper half of a column, where it stands level, for how many
// equal readings on end its noise allows.
func (p *profile) level(col []float64, stride int, middle, factor float64) int {
	band, two := max(4*p.resC, p.beyondC/2)/factor, 1.5*p.resC/factor
	var pairs, same, wide int
	for i := 0; i+slopeSpan < len(col); i += stride {
		w := (*[slopeSpan + 1]float64)(col[i:])
		if w[0] > middle && math.Abs(w[slopeSpan]-w[0]) <= band {
			pairs++
			same += count(w[0] == w[1])
			wide += count(slices.Max(w[:slopeSpan])-slices.Min(w[:slopeSpan]) > two)
		}
	}
	return freezeAt(pairs, same, wide)
}

// bend is the third difference of four readings, which no smooth course adds to
// and which noise makes 4.5 of its standard deviations. The smaller of two beside
// each other is free of a spike in either.
func bend(a, b, c, d float64) float64 { return math.Abs(d - 3*c + 3*b - a) }

// beyond is the least deviation that neither resolution nor noise explain.
func (p *profile) beyond(noiseC float64) float64 {
	return max(leastBeyondC, stepFactor*p.resC+noiseFactor*(noiseC-min(noiseSteps*p.resC, noiseC/2)))
}

// move is how far a probe moved within a time, in the file's unit.
type move struct{ by, s float64 }

// answer sets how slowly the probe follows, from how long it takes to cross its
// range at its usual speed of moving. The slopes are room for it.
func (p *profile) answer(slopes []float64, moves []move, whole, beyond float64) []float64 {
	for _, m := range moves {
		if m.s > 0 && m.by >= movingShare*whole {
			slopes = append(slopes, m.by/m.s)
		}
	}
	if fast := quantile(slopes, slopeQuantile); whole > 10*beyond && fast > 0 {
		p.tauS = min(slowestTauS, whole/fast)
		p.lagS = p.tauS * lagShare
	}
	return slopes
}

// freezeAt is how many equal readings on end a probe with noise cannot show,
// from how many of some pairs of readings were equal, and how many stood among
// more than two values. Where the noise does not always span the resolution, no
// number is safe.
func freezeAt(pairs, same, wide int) int {
	const (
		fewest  = 40   // pairs, for a share to be known
		spans   = 0.7  // of the pairs that must stand among more than two values
		most    = 0.45 // share of equal pairs
		varies  = 0.1  // by which that share differs from place to place
		certain = 1e-10
	)
	share := float64(same) / float64(max(1, pairs))
	if pairs < fewest || share > most || float64(wide) < spans*float64(pairs) {
		return 0
	}
	return int(math.Ceil(math.Log(certain) / math.Log(share+varies)))
}

// quantile of unsorted values, which it reorders; 0 of none.
func quantile(v []float64, q float64) float64 {
	if len(v) == 0 {
		return 0
	}
	at := int(q * float64(len(v)-1))
	for low, high := 0, len(v)-1; low < high; {
		// Hoare's selection: what is below the pivot to the left, the rest to the right.
		pivot, i, j := v[(low+high)/2], low, high
		for i <= j {
			for v[i] < pivot {
				i++
			}
			for v[j] > pivot {
				j--
			}
			if i <= j {
				v[i], v[j] = v[j], v[i]
				i++
				j--
			}
		}
		switch {
		case at <= j:
			high = j
		case at >= i:
			low = i
		default:
			return v[at]
		}
	}
	return v[at]
}

// maxGridDecimals is up to where written decimals are a resolution; more are
// the tail of a binary fraction.
const maxGridDecimals = 4

// resolution is the step of a column in the file's unit: the greatest that all
// readings are whole multiples of.
func resolution(col []float64, decimals int) float64 {
	decimals = min(decimals, maxGridDecimals)
	unit := pow10[decimals]
	var step int64
	have := false
	var first int64
	for _, v := range col {
		if !(math.Abs(v) < 1e9) {
			continue
		}
		k := int64(math.Round(v * unit))
		if !have {
			first, have = k, true
		}
		if step = gcd(step, k-first); step == 1 {
			break
		}
	}
	return float64(max(step, 1)) / unit
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// scale turns readings of the file into °C.
type scale struct{ factor, offset float64 }

func (s scale) c(v float64) float64 { return v*s.factor + s.offset }

// back turns °C into a reading of the file.
func (s scale) back(c float64) float64 { return (c - s.offset) / s.factor }

// scaleOf gives the scale of a unit.
func scaleOf(unit string) scale {
	switch unit {
	case "F":
		return scale{1 / 1.8, -32 / 1.8}
	case "K":
		return scale{1, -273.15}
	}
	return scale{1, 0}
}
