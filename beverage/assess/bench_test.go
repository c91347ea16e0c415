package assess

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"posset/beverage/spec"
)

// BenchmarkCheck assesses one spec without a record, from its bytes.
func BenchmarkCheck(b *testing.B) { checkOf(b, "testdata/sparkling-whey.toml") }

// BenchmarkCheckKinds is the same of every demo drink, its record left out: each is
// a kind of its own.
func BenchmarkCheckKinds(b *testing.B) {
	files, err := filepath.Glob("../../testdata/drinks/*.toml")
	if err != nil || len(files) == 0 {
		b.Fatalf("no demo drinks: %v", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".toml")
		b.Run(name, func(b *testing.B) { checkOf(b, file) })
	}
}

func checkOf(b *testing.B, file string) {
	data, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		d, err := spec.Parse(data, filepath.Base(file), filepath.Dir(file), spec.Options{})
		if err != nil {
			b.Fatal(err)
		}
		d.Process.Records = nil
		if _, err := Drink(context.Background(), d, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
