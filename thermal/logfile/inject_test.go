package logfile_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"posset/thermal/logfile"
)

// injection is one way in which a sound record goes wrong. It says where the
// fault shows and what kind it is; false when the record offers no place for it.
type injection struct {
	name   string
	kinds  []logfile.FaultKind // any of these may be found
	inject func(rng *rand.Rand, r *record, col int) bool
}

// between draws from low (inclusive) to high (exclusive).
func between(rng *rand.Rand, low, high int) int {
	if high <= low {
		return low
	}
	return low + rng.IntN(high-low)
}

// beyond is a size that neither the record's resolution nor its noise reach.
func beyond(r *record) float64 { return 1 + 5*r.step + 12*r.noise }

func (r *record) dropRows(from, n int) {
	r.t = slices.Delete(r.t, from, from+n)
	for i := range r.cols {
		r.cols[i] = slices.Delete(r.cols[i], from, from+n)
	}
}

func (r *record) insertRow(at int, t float64, values []float64) {
	r.t = slices.Insert(r.t, at, t)
	for i := range r.cols {
		r.cols[i] = slices.Insert(r.cols[i], at, values[i])
	}
}

func (r *record) row(i int) []float64 {
	out := make([]float64, len(r.cols))
	for k, c := range r.cols {
		out[k] = c[i]
	}
	return out
}

var injections = []injection{
	{"gap", []logfile.FaultKind{logfile.Gap}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 1, len(r.t)/4)
		at := between(rng, 1, len(r.t)-n-1)
		r.dropRows(at, n)
		return true
	}},
	{"dropout", []logfile.FaultKind{logfile.Dropout}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 1, len(r.t)/4)
		at := between(rng, 0, len(r.t)-n)
		for i := at; i < at+n; i++ {
			r.cols[col][i] = math.NaN()
		}
		return true
	}},
	{"scattered dropouts", []logfile.FaultKind{logfile.Dropout}, func(rng *rand.Rand, r *record, col int) bool {
		for n := 1 + len(r.t)/100; n > 0; n-- {
			r.cols[col][rng.IntN(len(r.t))] = math.NaN()
		}
		return true
	}},
	{"repeated row", []logfile.FaultKind{logfile.Repeat}, func(rng *rand.Rand, r *record, col int) bool {
		at := rng.IntN(len(r.t))
		for n := between(rng, 1, 4); n > 0; n-- {
			r.insertRow(at, r.t[at], r.row(at))
		}
		return true
	}},
	{"repeated block", []logfile.FaultKind{logfile.Repeat}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 2, 30)
		at := between(rng, 0, len(r.t)-n)
		for i := 0; i < n; i++ {
			r.insertRow(at+n+i, r.t[at+i], r.row(at+i))
		}
		return true
	}},
	{"conflict", []logfile.FaultKind{logfile.Conflict}, func(rng *rand.Rand, r *record, col int) bool {
		at := rng.IntN(len(r.t))
		values := r.row(at)
		size := beyond(r) * (1 + 20*rng.Float64())
		if rng.IntN(2) == 0 {
			size = -size
		}
		values[col] = math.Round((values[col]+size)/r.step) * r.step
		r.insertRow(at+rng.IntN(2), r.t[at], values)
		return true
	}},
	{"row out of place", []logfile.FaultKind{logfile.Disorder}, func(rng *rand.Rand, r *record, col int) bool {
		from := between(rng, 0, len(r.t)-2)
		to := between(rng, from+1, len(r.t))
		t, values := r.t[from], r.row(from)
		r.dropRows(from, 1)
		r.insertRow(to, t, values)
		return true
	}},
	{"block out of place", []logfile.FaultKind{logfile.Disorder, logfile.ClockBack}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 3, 40)
		from := between(rng, 0, len(r.t)-2*n-2)
		to := between(rng, from+n, len(r.t)-n)
		for i := 0; i < n; i++ {
			t, values := r.t[from], r.row(from)
			r.dropRows(from, 1)
			r.insertRow(to+n-1, t, values)
		}
		return true
	}},
	{"clock set back", []logfile.FaultKind{logfile.ClockBack}, func(rng *rand.Rand, r *record, col int) bool {
		at := between(rng, 10, len(r.t)-10)
		by := r.t[min(len(r.t)-1, at+between(rng, 5, len(r.t)/3))] - r.t[at] + float64(rng.IntN(2))*0.3
		for i := at; i < len(r.t); i++ {
			r.t[i] -= by
		}
		return true
	}},
	{"clock set forward", []logfile.FaultKind{logfile.Gap}, func(rng *rand.Rand, r *record, col int) bool {
		at := between(rng, 10, len(r.t)-10)
		for i := at; i < len(r.t); i++ {
			r.t[i] += 3600
		}
		return true
	}},
	{"spike up", []logfile.FaultKind{logfile.Spike, logfile.Range}, func(rng *rand.Rand, r *record, col int) bool {
		at := rng.IntN(len(r.t))
		r.cols[col][at] += math.Ceil((r.bend(col, at)+beyond(r)*(1+20*rng.Float64()))/r.step) * r.step
		return true
	}},
	{"spike down", []logfile.FaultKind{logfile.Spike, logfile.Range}, func(rng *rand.Rand, r *record, col int) bool {
		at := between(rng, 1, len(r.t)-1)
		r.cols[col][at] -= math.Ceil((r.bend(col, at)+beyond(r)*(1+20*rng.Float64()))/r.step) * r.step
		return true
	}},
	{"several spikes up", []logfile.FaultKind{logfile.Spike, logfile.Range}, func(rng *rand.Rand, r *record, col int) bool {
		at := between(rng, 0, 20)
		for ; at < len(r.t); at += between(rng, 6, 60) {
			r.cols[col][at] += math.Ceil((r.bend(col, at)+beyond(r)*(1+10*rng.Float64()))/r.step) * r.step
		}
		return true
	}},
	{"stuck", []logfile.FaultKind{logfile.Stuck}, func(rng *rand.Rand, r *record, col int) bool {
		n := min(between(rng, 60, 160), len(r.t)/3)
		at := between(rng, 0, len(r.t)-n)
		moved := 0.0
		for i := at; i < at+n; i++ {
			moved = max(moved, math.Abs(r.cols[col][i]-r.cols[col][at]))
			r.cols[col][i] = r.cols[col][at]
		}
		return moved > 3*beyond(r)
	}},
	{"error code", []logfile.FaultKind{logfile.Code}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 1, 20)
		at := between(rng, 0, len(r.t)-n)
		code := []float64{999.9, -999, 3276.7, 850, 9999, -127}[rng.IntN(6)]
		for i := at; i < at+n; i++ {
			r.cols[col][i] = code
		}
		return true
	}},
	{"out of range", []logfile.FaultKind{logfile.Range, logfile.UnitDoubt}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 1, 4)
		at := between(rng, 0, len(r.t)-n)
		for i := at; i < at+n; i++ {
			r.cols[col][i] = 260 + 300*math.Round(rng.Float64())
		}
		return true
	}},
	{"jump", []logfile.FaultKind{logfile.Rate, logfile.Range, logfile.Spike}, func(rng *rand.Rand, r *record, col int) bool {
		n := between(rng, 1, len(r.t)/2)
		at := between(rng, 5, len(r.t)-5)
		size := math.Ceil((r.bend(col, at)+4+3*(r.t[1]-r.t[0])*(1.4+2*rng.Float64())+beyond(r))/r.step) * r.step
		for i := at; i < min(at+n, len(r.t)); i++ {
			r.cols[col][i] += size
		}
		return size < 60
	}},
	{"lone step", []logfile.FaultKind{logfile.Rate, logfile.Spike, logfile.Range}, func(rng *rand.Rand, r *record, col int) bool {
		at, n := between(rng, 20, len(r.t)-5), between(rng, 6, len(r.t)/2)
		// Less than what the process itself does within the longest spike may pass for one.
		size := math.Ceil((3+beyond(r)+12*r.steepest(at, 13))*(1+rng.Float64())/r.step) * r.step
		for i := at; i < min(at+n, len(r.t)); i++ {
			r.cols[col][i] += size
		}
		return size < 60 && len(r.cols) > 1
	}},
	{"kelvin under °C", []logfile.FaultKind{logfile.UnitDoubt}, func(rng *rand.Rand, r *record, col int) bool {
		for i, c := range r.cols[col] {
			r.cols[col][i] = c + 273.15
		}
		return true
	}},
	{"°F under °C", []logfile.FaultKind{logfile.UnitDoubt}, func(rng *rand.Rand, r *record, col int) bool {
		for i, c := range r.cols[col] {
			r.cols[col][i] = math.Round((c*1.8+32)/r.step) * r.step
		}
		return true
	}},
	{"cut short", []logfile.FaultKind{logfile.CutShort}, func(rng *rand.Rand, r *record, col int) bool {
		for i, c := range r.cols[col] {
			if c > 115 && rng.IntN(20) == 0 {
				r.dropRows(i, len(r.t)-i)
				return true
			}
		}
		return false
	}},
}

// bend is how much a record bends by itself around a place: what a fault there
// must exceed to be one.
func (r *record) bend(col, at int) float64 {
	x := r.cols[col]
	most := 0.0
	for i := max(1, at-3); i < min(len(x)-1, at+4); i++ {
		most = max(most, math.Abs(x[i]-x[i-1]), math.Abs(x[i+1]-x[i]))
	}
	return 2 * most
}

// steepest is the largest step of any column near a place.
func (r *record) steepest(at, within int) float64 {
	most := 0.0
	for _, x := range r.cols {
		for i := max(1, at-within); i < min(len(x), at+within+1); i++ {
			most = max(most, math.Abs(x[i]-x[i-1]))
		}
	}
	return most
}
