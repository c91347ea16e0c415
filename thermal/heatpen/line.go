package heatpen

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Line is a straight part of log10 of a temperature difference over time, with
// how well it is known. Intervals are two-sided, 95 %, for the number of
// readings that are worth as much as independent ones.
type Line struct {
	FMin        float64 // minutes a tenfold fall takes
	FLowMin     float64
	FHighMin    float64
	J           float64 // from the zero of the line and the starting difference
	JLow        float64
	JHigh       float64
	R2          float64
	ResidualLog float64 // standard deviation about the line, log10
	WorstC      float64 // largest distance of a reading from the line, C°; positive above it
	WorstAtMin  float64
	FromMin     float64 // first and last reading used, minutes from the zero
	ToMin       float64
	FromC       float64 // their temperature differences to the medium by the line, C°
	ToC         float64
	Readings    int
	Independent float64 // readings that are worth as much, by how neighbours go together

	slope, level float64 // log10 of the difference: level + slope * minutes
}

const confidence = 0.95

// difference is what the line gives at a time, C°.
func (l Line) difference(tMin float64) float64 { return math.Pow(10, l.level+l.slope*tMin) }

// series is log10 of the difference d to a medium over minutes x, with running
// sums, so that the line through any run of readings costs the same.
type series struct {
	x, d, y              []float64
	sx, sy, sxx, sxy, r1 []float64
	r2                   []float64
	noiseC               float64
}

// newSeries takes readings whose differences are all above 0.
func newSeries(x, d []float64) *series {
	n := len(x)
	s := &series{x: x, d: d, y: make([]float64, n)}
	sums := []*[]float64{&s.sx, &s.sy, &s.sxx, &s.sxy, &s.r1, &s.r2}
	for _, p := range sums {
		*p = make([]float64, n+1)
	}
	for i := range x {
		s.y[i] = math.Log10(d[i])
		perC := 1 / (math.Ln10 * d[i]) // of y, for one C°
		for k, v := range []float64{x[i], s.y[i], x[i] * x[i], x[i] * s.y[i], perC, perC * perC} {
			(*sums[k])[i+1] = (*sums[k])[i] + v
		}
	}
	s.noiseC = s.noise()
	return s
}

// fit is the least-squares line through readings from to less one: its level at
// x = 0 and its slope.
func (s *series) fit(from, to int) (level, slope float64) {
	n := float64(to - from)
	mx, my := (s.sx[to]-s.sx[from])/n, (s.sy[to]-s.sy[from])/n
	sxx := s.sxx[to] - s.sxx[from] - n*mx*mx
	sxy := s.sxy[to] - s.sxy[from] - n*mx*my
	slope = sxy / sxx
	return my - slope*mx, slope
}

// line tells all about the line through readings from to less one. startC is
// the difference that j is taken from.
func (s *series) line(from, to int, startC float64) Line {
	level, slope := s.fit(from, to)
	l := Line{level: level, slope: slope, FMin: -1 / slope, J: math.Pow(10, level) / startC, Readings: to - from}
	l.FromMin, l.ToMin = s.x[from], s.x[to-1]
	l.FromC, l.ToC = l.difference(l.FromMin), l.difference(l.ToMin)
	n := float64(to - from)
	mx, my := (s.sx[to]-s.sx[from])/n, (s.sy[to]-s.sy[from])/n
	var ss, total, sxx, along, before float64
	for i := from; i < to; i++ {
		e := s.y[i] - level - slope*s.x[i]
		ss, total, sxx = ss+e*e, total+(s.y[i]-my)*(s.y[i]-my), sxx+(s.x[i]-mx)*(s.x[i]-mx)
		along += e * before
		before = e
		if off := l.difference(s.x[i]) - s.d[i]; math.Abs(off) > math.Abs(l.WorstC) {
			l.WorstC, l.WorstAtMin = off, s.x[i]
		}
	}
	l.R2 = 1 - ss/total
	l.ResidualLog = math.Sqrt(ss / (n - 2))
	l.Independent = independent(n, along, ss)
	l.interval(sxx/n, mx, startC)
	return l
}

// independent is how many independent readings n readings are worth, when each
// leans on its neighbour as these do.
func independent(n, along, ss float64) float64 {
	if !(ss > 0) {
		return n
	}
	r := max(0, along/ss)
	return max(fewestIndependent, n*(1-r)/(1+r))
}

const fewestIndependent = 3 // a line has two, and one more tells of scatter

// interval sets the ends of f and j from the scatter about the line.
func (l *Line) interval(varX, meanX, startC float64) {
	n := l.Independent
	t := distuv.StudentsT{Sigma: 1, Nu: n - 2}.Quantile((1 + confidence) / 2)
	slope := t * l.ResidualLog / math.Sqrt(n*varX)
	level := t * l.ResidualLog * math.Sqrt(1/n+meanX*meanX/(n*varX))
	l.FLowMin, l.FHighMin = -1/(l.slope-slope), math.Inf(1)
	if l.slope+slope < 0 {
		l.FHighMin = -1 / (l.slope + slope)
	}
	l.JLow, l.JHigh = math.Pow(10, l.level-level)/startC, math.Pow(10, l.level+level)/startC
}
