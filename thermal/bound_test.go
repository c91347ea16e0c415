package thermal

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func drawBound(t *rapid.T) Bound {
	tref := rapid.Float64Range(50, 140).Draw(t, "tref")
	z := rapid.Float64Range(3, 15).Draw(t, "z")
	minC := tref - rapid.Float64Range(-5, 30).Draw(t, "under")
	return Bound{
		Below: Reference{tref, z}, Above: Reference{tref, z + rapid.Float64Range(0, 10).Draw(t, "spread")},
		MinC: minC, MaxC: minC + rapid.Float64Range(0, 50).Draw(t, "range"),
	}
}

// quadrature integrates the rate of a bound by the midpoint rule, part by part
// so that no kink falls inside a step.
func quadrature(b Bound, dt, t0, t1 float64) float64 {
	const steps = 20000
	var sum float64
	for i := range steps {
		sum += b.LethalRate(t0 + (t1-t0)*(float64(i)+0.5)/steps)
	}
	return sum * dt / steps
}

func TestBoundTakesTheUnfavourableZ(t *testing.T) {
	b := Bound{Below: Reference{90, 7}, Above: Reference{90, 10}, MinC: 80, MaxC: 100}
	for _, c := range []struct{ tC, want float64 }{
		{79.999, 0}, {80, math.Pow(10, -10./7)}, {83, 0.1}, {90, 1}, {95, math.Pow(10, 0.5)}, {100, 10}, {120, 10},
	} {
		assert.InEpsilon(t, 1+c.want, 1+b.LethalRate(c.tC), 1e-12, "at %g °C", c.tC)
	}
}

// TestBoundPiece holds a ramp through all three corners against its closed form.
func TestBoundPiece(t *testing.T) {
	b := Bound{Below: Reference{90, 7}, Above: Reference{90, 10}, MinC: 80, MaxC: 100}
	perC := func(z, from, to float64) float64 {
		return z / math.Ln10 * (math.Pow(10, to/z) - math.Pow(10, from/z))
	}
	want := perC(7, -10, 0) + perC(10, 0, 10) + 10*10 // 70 to 110 °C at 1 C° a minute
	assert.InEpsilon(t, want, b.Piece(40, 70, 110), 1e-12)
	assert.InEpsilon(t, want, b.Piece(40, 110, 70), 1e-12)
	assert.InEpsilon(t, -want, b.Piece(-40, 110, 70), 1e-12)
}

func TestBoundPieceIsTheIntegral(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBound(t)
		t0, t1 := rapid.Float64Range(20, 150).Draw(t, "t0"), rapid.Float64Range(20, 150).Draw(t, "t1")
		want := quadrature(b, 2, t0, t1)
		most := b.LethalRate(max(t0, t1)) // a jump at MinC costs the rule one step
		if got := b.Piece(2, t0, t1); !(math.Abs(got-want) <= 1e-6*want+2*most/20000) {
			t.Fatalf("got %g, want %g", got, want)
		}
	})
}

func TestBoundNeverCreditsMoreThanEither(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBound(t)
		if rapid.Bool().Draw(t, "swapped") {
			b.Below, b.Above = b.Above, b.Below
		}
		if rapid.Bool().Draw(t, "apart") {
			b.Above.TrefC += rapid.Float64Range(-20, 20).Draw(t, "shift")
		}
		t0, t1 := rapid.Float64Range(20, 150).Draw(t, "t0"), rapid.Float64Range(20, 150).Draw(t, "t1")
		for _, r := range []Reference{b.Below, b.Above} {
			if got, most := b.LethalRate(t0), r.LethalRate(t0); !(got <= most) {
				t.Fatalf("rate %g at %g °C, the reference gives %g", got, t0, most)
			}
			if got, most := b.Piece(1, t0, t1), r.Piece(1, t0, t1); !(got <= most*(1+1e-9)) {
				t.Fatalf("piece %g, the reference gives %g", got, most)
			}
		}
	})
}

func TestBoundRisesWithEveryReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBound(t)
		t0, t1 := rapid.Float64Range(20, 150).Draw(t, "t0"), rapid.Float64Range(20, 150).Draw(t, "t1")
		up := rapid.Float64Range(0, 20).Draw(t, "up")
		if low, high := b.Piece(1, t0, t1), b.Piece(1, t0+up, t1); !(low <= high*(1+1e-9)) {
			t.Fatalf("%g became %g with a hotter reading", low, high)
		}
	})
}

func TestUnlimitedBoundIsItsReference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Reference{rapid.Float64Range(50, 140).Draw(t, "tref"), rapid.Float64Range(3, 60).Draw(t, "z")}
		t0, t1 := rapid.Float64Range(20, 150).Draw(t, "t0"), rapid.Float64Range(20, 150).Draw(t, "t1")
		if got, want := r.Bound().Piece(3, t0, t1), r.Piece(3, t0, t1); !(math.Abs(got-want) <= 1e-12*want) {
			t.Fatalf("got %g, want %g", got, want)
		}
		if plain, ok := r.Bound().Plain(); !ok || plain != r {
			t.Fatalf("%v is not plain", r)
		}
	})
}

func TestBoundWithoutFiguresCreditsNothing(t *testing.T) {
	var b Bound
	assert.Zero(t, b.LethalRate(121.1))
	assert.Zero(t, b.Piece(10, 100, 140))
	_, ok := b.Plain()
	assert.False(t, ok)
	assert.True(t, math.IsNaN(F0.Bound().Piece(1, math.NaN(), 121)))
	assert.True(t, math.IsNaN(F0.Bound().Piece(1, 121, math.Inf(1))))
}

func BenchmarkBoundPiece(b *testing.B) {
	bound := Bound{Below: Reference{90, 7}, Above: Reference{90, 10}, MinC: 80, MaxC: 100}
	b.Run("split", func(b *testing.B) {
		for b.Loop() {
			bound.Piece(1, 75, 105)
		}
	})
	b.Run("one side", func(b *testing.B) {
		for b.Loop() {
			bound.Piece(1, 85, 85.1)
		}
	})
}
