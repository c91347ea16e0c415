package rule_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"posset/beverage/facts"
)

// sterner orders levels by how much they ask; a finding that is not made asks
// nothing.
var sterner = map[string]int{"": 0, "note": 1, "review": 2, "stop": 3}

// A wider pH or amount tolerance never takes a finding on the protein away, nor
// makes it milder.
func TestWiderToleranceNeverSilencesAProteinFinding(t *testing.T) {
	proteins := []string{"whey protein isolate, acidified", "whey protein isolate", "beta-lactoglobulin isolate", "whey protein hydrolysate", "micellar casein isolate", "skim milk powder", "sodium caseinate", "collagen peptides", "gelatin", "soy protein isolate", "oat protein concentrate 55", "egg white powder"}
	beside := []string{"citric acid", "pectin, high methoxyl", "carboxymethyl cellulose", "soybean soluble polysaccharide", "xanthan gum", "gellan gum", "green tea extract", "cranberry juice", "calcium lactate", "calcium carbonate", "dipotassium phosphate", "trisodium citrate dihydrate", "sodium chloride", "lactose monohydrate", "sucrose", "quillwort essence"}
	stores := []string{hotFilled, tunnelled, aseptic, retorted, coldFill, chilled, unheated, "", "[process]\nroute = \"sterile filtration\"\n", "[process]\nroute = \"high pressure\"\n"}
	rapid.Check(t, func(t *rapid.T) {
		base := rapid.SampledFrom([]string{"water", "milk", "coffee", "plant", "fermented"}).Draw(t, "base")
		rest := rapid.SampledFrom([]string{"", bubbles}).Draw(t, "gas") + rapid.SampledFrom(stores).Draw(t, "process")
		method := rapid.SampledFrom([]string{"meter", "meter", "paper"}).Draw(t, "method")
		pH := rapid.Float64Range(2.8, 7.2).Draw(t, "pH")
		lines := ""
		add := func(names []string, most float64, label string) {
			name := rapid.SampledFrom(names).Draw(t, label)
			lines += fmt.Sprintf("[[ingredient]]\nname = %q\namount = \"%.3f g/L\"\namount_tolerance = \"TOLERANCE\"\n", name, rapid.Float64Range(0.1, most).Draw(t, label+" g/L"))
		}
		for range rapid.IntRange(1, 2).Draw(t, "proteins") {
			add(proteins, 120, "protein")
		}
		for range rapid.IntRange(0, 3).Draw(t, "beside") {
			add(beside, 8, "beside")
		}
		of := func(pHTolerance, amount float64) map[string]string {
			measured := fmt.Sprintf("[measured]\nph = %.3f\nph_tolerance = %.3f\nph_temperature = \"25 C\"\nph_method = %q\n", pH, pHTolerance, method)
			return said(t, made(base, "", measured+rest+strings.ReplaceAll(lines, "TOLERANCE", fmt.Sprintf("%.3f %%", amount))))
		}
		a, b := rapid.Float64Range(0, 1).Draw(t, "narrow"), rapid.Float64Range(0, 1).Draw(t, "wide")
		narrow, wide := of(min(a, b), 2), of(max(a, b), 2)
		assertNoMilder(t, narrow, wide, "pH")
		narrow, wide = of(0.05, 10*min(a, b)), of(0.05, 10*max(a, b))
		assertNoMilder(t, narrow, wide, "amount")
	})
}

func assertNoMilder(t *rapid.T, narrow, wide map[string]string, what string) {
	for id, level := range narrow {
		if facts.AboutProtein(id) && sterner[wide[id]] < sterner[level] {
			t.Fatalf("a wider %s tolerance takes %s from %s to %q", what, id, level, wide[id])
		}
	}
}
