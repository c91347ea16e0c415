package protein

import (
	"math"
	"testing"
)

// tester is what both an ordinary and a property test offer.
type tester interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

func equal[T comparable](t tester, want, got T, what string) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// near fails on NaN too.
func near(t tester, want, got, allowed float64, what string) {
	t.Helper()
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("%s: got %g, want %g within %g", what, got, want, allowed)
	}
}

func holds(t tester, ok bool, format string, args ...any) {
	t.Helper()
	if !ok {
		t.Fatalf(format, args...)
	}
}

func works(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
