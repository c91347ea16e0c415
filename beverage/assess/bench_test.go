package assess

import (
	"context"
	"os"
	"testing"

	"posset/beverage/spec"
)

// BenchmarkCheck assesses one spec without a record, from its bytes.
func BenchmarkCheck(b *testing.B) {
	data, err := os.ReadFile("testdata/sparkling-whey.toml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d, err := spec.Parse(data, "sparkling-whey.toml", ".", spec.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := Drink(context.Background(), d, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
