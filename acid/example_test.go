package acid_test

import (
	"fmt"

	"posset/acid"
)

// A lemon drink of 5 g/kg citric acid and 1 g/kg trisodium citrate: salts enter as
// their acid and their cation.
func ExamplePH() {
	drink := acid.Solution{Totals: []acid.Total{
		{Component: "citric", Molality: 0.0260 + 0.0039},
		{Component: "sodium", Molality: 3 * 0.0039},
	}}
	pH, err := acid.PH(drink, 25)
	if err != nil {
		fmt.Println(err)
		return
	}
	low, high, err := acid.Bounds(drink, 25)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("pH %.2f, from %.2f to %.2f\n", pH, low, high)
	// Output: pH 2.94, from 2.88 to 2.99
}

// How much of a three to one blend of citric and malic acid brings a buffered
// drink to pH 3.2.
func ExampleDose() {
	drink := acid.Solution{Totals: []acid.Total{
		{Component: "phosphoric", Molality: 0.02},
		{Component: "potassium", Molality: 0.03},
	}}
	blend := []acid.Total{{Component: "citric", Molality: 0.75}, {Component: "malic", Molality: 0.25}}
	dose, err := acid.Dose(drink, blend, 25, 3.2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f mmol per kg of water\n", 1000*dose)
	// Output: 21.5 mmol per kg of water
}
