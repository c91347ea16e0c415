package ingredient

import (
	"testing"

	"posset/beverage"
)

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := load(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkResolve is a recipe of ten lines in a library just read, as one run
// of the program does it.
func BenchmarkResolve(b *testing.B) {
	recipe := []beverage.Ingredient{
		{Name: "MCC"}, {Name: "skim milk powder"}, {Name: "cocoa powder"}, {Name: "sugar"}, {Name: "DKP"}, {Name: "trisodium citrate dihydrate"},
		{Name: "gellan gum"}, {Name: "natural flavour"}, {Name: "sucralose"}, {Name: "wholly unknown thing"},
	}
	for b.Loop() {
		l, err := load()
		if err != nil {
			b.Fatal(err)
		}
		if got := l.Resolve(recipe, nil); len(got) != len(recipe) {
			b.Fatal(len(got))
		}
	}
}
