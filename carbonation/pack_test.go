package carbonation

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// fataler is what testing and rapid have in common.
type fataler interface{ Fatalf(string, ...any) }

func must[T any](t fataler, v T, err error) T {
	if err != nil {
		t.Fatalf("unexpected error: %v", err)
	}
	return v
}

func packOf(t fataler, pack string) Material {
	m, ok := MaterialOf(pack)
	if !ok {
		t.Fatalf("no material for %q", pack)
	}
	return m
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		volumes := rapid.Float64Range(0.01, 5).Draw(t, "volumes")
		tC := rapid.Float64Range(0, 80).Draw(t, "tC")
		l := Liquid{SugarGPerL: rapid.Float64Range(0, 300).Draw(t, "sugar"), AlcoholFraction: rapid.Float64Range(0, 0.15).Draw(t, "alcohol")}
		p, err := l.Pressure(volumes, tC)
		back, errBack := l.Volumes(must(t, p, err), tC)
		if got := must(t, back, errBack); !(math.Abs(got/volumes-1) <= 1e-7) {
			t.Fatalf("%g volumes came back as %g", volumes, got)
		}
	})
}

func TestSealedPackRisesWithTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Pack{BrimfulML: 349, FillML: rapid.Float64Range(250, 340).Draw(t, "fill"), FillTempC: 4,
			Material: packOf(t, "can"), Volumes: rapid.Float64Range(0, 3).Draw(t, "volumes")}
		low, high := rapid.Float64Range(0, 40).Draw(t, "low"), rapid.Float64Range(40, 65).Draw(t, "high")
		states, err := p.Curve([]float64{low, high})
		s := must(t, states, err)
		if !s[1].LiquidFull && !(s[0].Gauge < s[1].Gauge) {
			t.Fatalf("%g kPa at %g °C, %g at %g", s[0].Gauge, low, s[1].Gauge, high)
		}
	})
}

func TestImpossiblePacks(t *testing.T) {
	_, err := Pack{BrimfulML: 330, FillML: 349, FillTempC: 4}.At(20)
	const want = "carbonation: fill 349 mL leaves no headspace in a brimful volume of 330 mL"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func BenchmarkAt(b *testing.B) {
	p := Pack{BrimfulML: 349, FillML: 330, FillTempC: 4, Material: packOf(b, "can"), Volumes: 3.4}
	for b.Loop() {
		if _, err := p.At(65); err != nil {
			b.Fatal(err)
		}
	}
}
