package logfile_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

// record is a recorder's log before it is written down: exact where the
// recorder rounded.
type record struct {
	names []string
	t     []float64   // s
	cols  [][]float64 // °C; NaN is an empty cell
	digit int         // decimals written
	step  float64     // resolution
	noise float64     // standard deviation
}

// process describes a simulated retort run: products follow the medium with a
// first-order lag each.
type process struct {
	intervalS float64
	step      float64 // resolution, C°
	noiseC    float64
	tausS     []float64 // of the products
	medium    bool      // a retort column stands beside them
	topC      float64
	holdS     float64
	restS     float64 // how long the last of the record lasts after cooling water is on
}

func (p process) mediumAt(t float64) float64 {
	const ambient, comeUpS, fall = 22.0, 480.0, 0.35
	switch {
	case t < 30:
		return ambient
	case t < 30+comeUpS:
		return ambient + (p.topC-ambient)*(t-30)/comeUpS
	case t < 30+comeUpS+p.holdS:
		return p.topC
	}
	return math.Max(20, p.topC-fall*(t-30-comeUpS-p.holdS))
}

// run writes the process down as a recorder would.
func (p process) run(rng *rand.Rand) record {
	r := record{step: p.step, noise: p.noiseC, digit: decimals(p.step)}
	total := 510 + p.holdS + p.restS
	if p.medium {
		r.names = append(r.names, "Retort")
	}
	for i := range p.tausS {
		r.names = append(r.names, fmt.Sprintf("Can %d", i+1))
	}
	r.cols = make([][]float64, len(r.names))
	state := make([]float64, len(p.tausS))
	for i := range state {
		state[i] = 22
	}
	const dt = 0.5
	next := 0.0
	for t := 0.0; t <= total; t += dt {
		m := p.mediumAt(t)
		for i := range state {
			state[i] += (m - state[i]) * (1 - math.Exp(-dt/p.tausS[i]))
		}
		if t < next {
			continue
		}
		next += p.intervalS
		r.t = append(r.t, t)
		values := state
		if p.medium {
			values = append([]float64{m}, state...)
		}
		for i, v := range values {
			r.cols[i] = append(r.cols[i], math.Round((v+rng.NormFloat64()*p.noiseC)/p.step)*p.step)
		}
	}
	return r
}

func decimals(step float64) int {
	for d := 0; d < 4; d++ {
		if k := step * math.Pow(10, float64(d)); math.Abs(k-math.Round(k)) < 1e-9 {
			return d
		}
	}
	return 4
}

func (r record) clone() record {
	out := r
	out.t = append([]float64(nil), r.t...)
	out.cols = make([][]float64, len(r.cols))
	for i, c := range r.cols {
		out.cols[i] = append([]float64(nil), c...)
	}
	return out
}

// csv writes the record with elapsed seconds.
func (r record) csv() string {
	b := []byte("Time (s)")
	for _, n := range r.names {
		b = append(b, ","+n+" (°C)"...)
	}
	for i, t := range r.t {
		b = strconv.AppendFloat(append(b, '\n'), t, 'f', -1, 64)
		for _, c := range r.cols {
			if b = append(b, ','); c[i] == c[i] {
				b = strconv.AppendFloat(b, c[i], 'f', r.digit, 64)
			}
		}
	}
	return string(append(b, '\n'))
}

func options() logfile.Options {
	return logfile.Options{ToleranceC: 0.5, Bases: []logfile.Basis{{Name: "F0", Ref: thermal.F0}}}
}

var nan = math.NaN()

// tester is what testing and rapid have in common.
type tester interface {
	require.TestingT
	Helper()
}

func read(t tester, text string, o logfile.Options) *logfile.Log {
	t.Helper()
	l, err := logfile.Read(context.Background(), strings.NewReader(text), "run.csv", o)
	require.NoError(t, err, text[:min(len(text), 500)])
	return l
}

// lethality integrates a column, lowered, in minutes.
func (r record) lethality(col int, ref thermal.Reference, lowerC float64) float64 {
	var points []thermal.Point
	for i, t := range r.t {
		if c := r.cols[col][i]; c == c {
			points = append(points, thermal.Point{TimeS: t, TempC: c - lowerC})
		}
	}
	return ref.Lethality(points)
}
