package ingredient_test

import (
	"testing"

	"posset/acid"
	"posset/beverage/ingredient"
	"posset/beverage/protein"
)

// TestSharesAreComponentsOfTheChargeBalance: a share that the balance does not
// know would be an acid or a base left out.
func TestSharesAreComponentsOfTheChargeBalance(t *testing.T) {
	for _, e := range ingredient.Default().All() {
		for _, s := range e.Shares {
			if _, ok := acid.Lookup(s.Component); !ok {
				t.Errorf("%s: component %q has no constants", e.Name, s.Component)
			}
		}
		if e.MainAcid != "" {
			if _, ok := acid.Lookup(e.MainAcid); !ok {
				t.Errorf("%s: main acid %q has no constants", e.Name, e.MainAcid)
			}
		}
	}
}

// traces are the compositions of what holds protein in traces, or that nobody
// has published: no model stands behind them, on purpose.
var traces = map[string]bool{"cocoa": true, "barley": true, ingredient.ProteinUnknown: true}

// TestProteinIDsHaveCompositions: a protein powder without one has no charge, no
// heat behaviour and no amino acids.
func TestProteinIDsHaveCompositions(t *testing.T) {
	for _, e := range ingredient.Default().All() {
		if _, ok := protein.Of(e.ProteinID); e.ProteinID != "" && !ok && !traces[e.ProteinID] {
			t.Errorf("%s: composition %q is not known", e.Name, e.ProteinID)
		}
	}
}
