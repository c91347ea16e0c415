package facts

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"posset/beverage"
)

func measuredPH(pH, tolerance float64) string {
	return fmt.Sprintf("[measured]\nph = %g\nph_tolerance = %g\nph_temperature = \"25 C\"\n", pH, tolerance)
}

// The whole interval on one side of 4.6, which itself is on the acid side, or
// undecided; no binary fraction of a tolerance moves it across.
func TestClassAtTheLine(t *testing.T) {
	for _, c := range []struct {
		pH, tolerance float64
		want          beverage.Class
	}{
		{4.6, 0, beverage.Acidified}, {4.5, 0.1, beverage.Acidified}, {4.4, 0.2, beverage.Acidified}, {4.3, 0.3, beverage.Acidified}, {4.55, 0.05, beverage.Acidified},
		{4.6, 0.01, beverage.Undecided}, {4.7, 0.1, beverage.Undecided}, {4.8, 0.2, beverage.Undecided}, {4.65, 0.05, beverage.Undecided},
		{4.61, 0, beverage.LowAcid}, {4.71, 0.1, beverage.LowAcid},
	} {
		f := factsOf(t, line("whey protein isolate", "50 g/L")+measuredPH(c.pH, c.tolerance))
		assert.Equal(t, c.want, f.Class, "pH %g ± %g: %v", c.pH, c.tolerance, f.PH.Measured)
	}
}

func TestWhyAClassIsWhatItIs(t *testing.T) {
	for recipe, want := range map[string]string{
		line("citric acid", "2 g/L"):                                      "nothing in it is a low-acid food",
		line("whey protein isolate", "50 g/L") + measuredPH(4, 0.1):       "whey protein isolate counts as low-acid food brought to the pH by acid or acid food",
		line("quillwort essence", "1 g/L") + measuredPH(4, 0.1):           "what quillwort essence is, is not known; it counts as low-acid food brought to the pH by acid or acid food",
		line("whey protein isolate", "50 g/L") + measuredPH(4.6, 0.1):     "the pH interval reaches from 4.50 to 4.70, across 4.6",
		line("whey protein isolate", "50 g/L") + measuredPH(5.2, 0.1):     "the whole pH interval lies above 4.6",
		line("citric acid", "2 g/L") + line("quillwort essence", "1 g/L"): "the pH is neither measured in a way that counts nor can it be predicted",
	} {
		base := ""
		if want == "nothing in it is a low-acid food" {
			base = "base = \"water\"\n"
		}
		f := factsOf(t, base+recipe)
		assert.Equal(t, want, f.ClassNote)
	}
}
