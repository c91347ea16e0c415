package protein_test

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/protein"
)

// Five percent of whey protein isolate, brought from pH 6.5 to 3.2, binds about
// as much acid as there is base in it.
func ExampleComposition_ChargePerGram() {
	whey, _ := protein.Of("whey isolate")
	bound := whey.ChargePerGram(3.2, 0.05, 25) - whey.ChargePerGram(6.5, 0.05, 25)
	fmt.Printf("%.0f mmol/L of acid for 50 g/L of protein\n", 50*bound)
	// Output: 52 mmol/L of acid for 50 g/L of protein
}

func ExampleGelLimit() {
	pH := beverage.Around(5.2, 0.1, beverage.Measured)
	limit, window, _ := protein.GelLimit(protein.FamilyWhey, pH, beverage.Interval{}, true)
	fmt.Printf("%g g/L: %s (%s)\n", limit.Low, window.What, window.Source.Text)
	// Output: 10 g/L: about 10 g/L is enough to gel on heating, whatever the salt (Renard & Lefebvre 1992, Int. J. Biol. Macromol. 14:287)
}

func ExampleNewDenaturer() {
	milk, _ := protein.Of("milk protein")
	_, valid := protein.NewDenaturer(milk, protein.Conditions{PH: beverage.Around(3.2, 0.1, beverage.Measured), ProteinGPerL: 30})
	fmt.Println(valid.Why)
	// Output: published rate constants are for milk near pH 6.7 and never hold below pH 4.0
}
