package thermal

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// leg is a straight line in temperature.
type leg struct{ minutes, fromC, toC float64 }

// TestExactHistories: closed forms at 60 decimal digits, each of which agrees
// with Simpson quadrature to 1e-9.
func TestExactHistories(t *testing.T) {
	constant := func(minutes, tC float64) []leg { return []leg{{minutes, tC, tC}} }
	for _, c := range []struct {
		trefC, zC float64
		legs      []leg
		want      float64
	}{
		{121.1, 10, constant(3, 121.1), 3},
		{121.1, 10, constant(10, 115.6), 2.818382931},
		{121.1, 10, constant(4./60, 140), 5.174980778},
		{121.1, 10, constant(30, 111.1), 3},
		{1090. / 9, 10, constant(3, 121.1), 2.992334526}, // 250 °F exactly
		{60, 6.94, constant(10, 62), 19.41710316},
		{60, 7, constant(10, 62), 19.30697729},
		{100, 33, constant(30, 121.1), 130.772129},
		{90, 10, constant(60, 85), 18.97366596},
		{90, 9, constant(129, 80), 9.988001507},
		{71.1, 5.3, constant(1, 75), 5.443134384},
		{121.1, 10, []leg{{20, 100, 121.1}}, 4.084580886},
		{121.1, 10, []leg{{15, 121.1, 80}}, 1.584893321},
		{121.1, 10, []leg{{12, 60, 122}, {20, 122, 122}, {10, 122, 60}}, 26.50127368},
		{60, 6.94, []leg{{15, 20, 62}, {12, 62, 62}, {12, 62, 30}}, 27.585204},
	} {
		ref := Reference{c.trefC, c.zC}
		points := []Point{{TimeS: 0, TempC: c.legs[0].fromC}}
		for _, l := range c.legs {
			points = append(points, Point{TimeS: points[len(points)-1].TimeS + l.minutes*60, TempC: l.toC})
		}
		assert.InEpsilon(t, c.want, ref.Lethality(points), 1e-9, "%v", c)
	}
}

// TestSinusoid: hunting of 2 C° about 121.1 °C over whole periods gives 10 min
// times the Bessel function I0, 10.53725888 min; fine straight lines come to it
// from below.
func TestSinusoid(t *testing.T) {
	var points []Point
	for i := range 60001 {
		s := float64(i) / 100
		points = append(points, Point{TimeS: s, TempC: 121.1 + 2*math.Sin(2*math.Pi*s/300)})
	}
	assert.InEpsilon(t, 10.53725888, F0.Lethality(points), 1e-7)
}

func TestNewReference(t *testing.T) {
	ref, err := NewReference(121.1, 10)
	assert.NoError(t, err)
	assert.Equal(t, F0, ref)
	for want, v := range map[string][2]float64{
		"thermal: reference temperature NaN °C is outside 0 to 200 °C": {math.NaN(), 10},
		"thermal: reference temperature 250 °C is outside 0 to 200 °C": {250, 10},
		"thermal: z-value 0 C° is outside 1 to 100 C°":                 {121.1, 0},
		"thermal: z-value NaN C° is outside 1 to 100 C°":               {121.1, math.NaN()},
	} {
		_, err := NewReference(v[0], v[1])
		assert.EqualError(t, err, want)
	}
}

// TestLethalityRises: a hotter reading never gives less, and a line cut in two
// gives the same.
func TestLethalityRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ref := Reference{rapid.Float64Range(50, 130).Draw(t, "tref"), rapid.Float64Range(4, 40).Draw(t, "z")}
		a, b := rapid.Float64Range(20, 140).Draw(t, "a"), rapid.Float64Range(20, 140).Draw(t, "b")
		whole := ref.Piece(10, a, b)
		if hotter := ref.Piece(10, a+rapid.Float64Range(0, 10).Draw(t, "hotter"), b); hotter < whole*(1-1e-9) {
			t.Fatalf("%g became %g", whole, hotter)
		}
		at := rapid.Float64Range(0, 1).Draw(t, "cut")
		mid := a + at*(b-a)
		if parts := ref.Piece(10*at, a, mid) + ref.Piece(10*(1-at), mid, b); math.Abs(parts-whole) > 1e-9*whole {
			t.Fatalf("%g in one, %g in two", whole, parts)
		}
	})
}

// TestMeanRateMeets: the series for small steps and the quotient agree.
func TestMeanRateMeets(t *testing.T) {
	for _, u := range []float64{0.99e-3, 1.01e-3, -0.99e-3, -1.01e-3, 1e-9} {
		assert.InEpsilon(t, math.Expm1(u)/u, MeanRate(1, math.Exp(u), u), 1e-12)
	}
	assert.Equal(t, 1., MeanRate(1, 1, 0))
}

func TestTooFewPoints(t *testing.T) {
	assert.Zero(t, F0.Lethality(nil))
	assert.Zero(t, F0.Lethality([]Point{{TimeS: 0, TempC: 121.1}}))
}

func BenchmarkLethality(b *testing.B) {
	points := make([]Point, 3600)
	for i := range points {
		points[i] = Point{TimeS: float64(i), TempC: 100 + 20*math.Sin(float64(i)/600)}
	}
	for b.Loop() {
		F0.Lethality(points)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(points)), "ns/reading")
}
