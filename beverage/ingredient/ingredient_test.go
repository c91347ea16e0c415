package ingredient

import "testing"

func TestLoads(t *testing.T) {
	if _, err := load(); err != nil {
		t.Fatal(err)
	}
}

// coreNames are names that every recipe of the trade may be written with.
func TestLookupFindsTradeNames(t *testing.T) {
	for name, want := range map[string]string{
		"WPI": "whey protein isolate", "wpc80": "whey protein concentrate 80", "MCC 85": "micellar casein isolate",
		"E330": "citric acid", "E 338": "phosphoric acid", "Phosphoric acid (85%, food grade)": "phosphoric acid 85 %",
		"dextrose": "glucose monohydrate", "Citric Acid, anhydrous": "citric acid", "vitamin C": "ascorbic acid",
		"isolate whey proteins": "whey protein isolate", "potassium sorbate, granular": "potassium sorbate",
	} {
		got, ok := Default().Lookup(name)
		if !ok || got.Name != want {
			t.Errorf("Lookup(%q) = %q, %v; want %q", name, got.Name, ok, want)
		}
	}
}
