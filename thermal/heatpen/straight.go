package heatpen

import (
	"math"
	"slices"
)

// What is called straight. These are choices of ours, stated with every result.
const (
	leastDifferenceC = 1.0   // readings nearer to the medium tell more of the medium than of the product
	fewestReadings   = 5     // of a straight part
	leastSpanLog     = 0.3   // the difference halves along it
	leastLegLog      = 0.15  // the same, for each part of broken heating
	sections         = 8     // of a run, that are looked at one by one
	bendLog          = 0.003 // by which the readings of a section may stand off on average
	bendC            = 0.2   // and by which the probes may be wrong
	noiseFactor      = 2.5   // standard errors of their mean
	leastSlipC       = 1.0   // a reading may stand off its neighbours
	slipFactor       = 8.0   // and standard deviations
	brokenRatio      = 1.15  // by which the second part must be slower than the first
)

// Criterion tells in words how the straight part is chosen.
const Criterion = "the longest run up to the last reading 1 C° short of the medium in which no eighth stands off the line, on average, by more than 0.003 in log10, 0.2 C° and 2.5 standard errors together, nor the first eighth off the line of the rest"

// straight tells whether the readings from to less one lie on a line.
func (s *series) straight(from, to int, spanLog float64) bool {
	if to-from < fewestReadings {
		return false
	}
	level, slope := s.fit(from, to)
	if !(-slope*(s.x[to-1]-s.x[from]) >= spanLog) {
		return false
	}
	parts := min(sections, to-from)
	for k := range parts {
		if !s.near(level, slope, from+(to-from)*k/parts, from+(to-from)*(k+1)/parts) {
			return false
		}
	}
	// The beginning draws the line toward itself, and it is where the lag hides:
	// the line of all the rest has to find it too.
	rest := from + (to-from)/parts
	level, slope = s.fit(rest, to)
	return s.near(level, slope, from, rest)
}

// near tells whether readings a to b less one are on a line on average.
func (s *series) near(level, slope float64, a, b int) bool {
	m := float64(b - a)
	off := (s.sy[b]-s.sy[a])/m - level - slope*(s.sx[b]-s.sx[a])/m
	allowed := bendLog + bendC*(s.r1[b]-s.r1[a])/m + noiseFactor*s.noiseC*math.Sqrt(s.r2[b]-s.r2[a])/m
	return math.Abs(off) <= allowed
}

// longest is the first reading of the longest straight run that ends before to.
func (s *series) longest(to int, spanLog float64) (from int, ok bool) {
	for from := 0; from+fewestReadings <= to; from++ {
		if s.straight(from, to, spanLog) {
			return from, true
		}
	}
	return 0, false
}

// noise is the standard deviation of a reading, C°, from how far each stands off
// the line between its neighbours.
func (s *series) noise() float64 {
	off := s.strays()
	if len(off) < 3 {
		return 0
	}
	off = off[1 : len(off)-1]
	for i := range off {
		off[i] = math.Abs(off[i])
	}
	slices.Sort(off)
	return medianToSigma * off[len(off)/2]
}

// strays is how far each reading stands off the line between its neighbours, C°,
// scaled to the spread of a single reading; 0 at both ends.
func (s *series) strays() []float64 {
	off := make([]float64, len(s.x))
	for i := 1; i+1 < len(s.x); i++ {
		w := (s.x[i] - s.x[i-1]) / (s.x[i+1] - s.x[i-1])
		e := s.y[i] - (1-w)*s.y[i-1] - w*s.y[i+1]
		off[i] = e * math.Ln10 * s.d[i] / math.Sqrt(1+w*w+(1-w)*(1-w))
	}
	return off
}

// slips are single readings that stand off both their neighbours by far more
// than the noise: a slip of the pen, a loose contact.
func (s *series) slips() []int {
	off := s.strays()
	least := max(leastSlipC, slipFactor*s.noiseC)
	var at []int
	for i := 1; i+1 < len(off); i++ {
		here := math.Abs(off[i])
		if here > least && here > math.Abs(off[i-1]) && here > math.Abs(off[i+1]) {
			at = append(at, i)
		}
	}
	return at
}

// medianToSigma turns the median of absolute normal deviations into their
// standard deviation.
const medianToSigma = 1.4826

// legs are the straight parts of a heating curve: one, or two where a faster
// part came before.
type legs struct {
	first, second [2]int // half-open runs; second is empty for simple heating
}

// split finds the straight parts. A slower beginning is the lag that every
// conduction pack has, and left out; a faster one is broken heating.
func (s *series) split() (legs, bool) {
	n := len(s.x)
	late, ok := s.longest(n, leastLegLog)
	if !ok {
		return legs{}, false
	}
	early, ok := s.longest(late, leastLegLog)
	if ok {
		_, a := s.fit(early, late)
		_, b := s.fit(late, n)
		if a/b >= brokenRatio {
			return legs{first: [2]int{early, late}, second: [2]int{late, n}}, true
		}
	}
	if !s.straight(late, n, leastSpanLog) {
		return legs{}, false
	}
	return legs{first: [2]int{late, n}}, true
}
