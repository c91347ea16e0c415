package checkvalue

import (
	"context"
	"testing"
)

// BenchmarkRun recomputes everything; the data are read before.
func BenchmarkRun(b *testing.B) {
	for b.Loop() {
		if _, err := Run(context.Background(), ""); err != nil {
			b.Fatal(err)
		}
	}
}
