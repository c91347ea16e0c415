package spec_test

import (
	"fmt"

	"posset/beverage/spec"
)

// Every problem of a file is told at once, each with its place and what would do.
func ExampleParse() {
	_, err := spec.Parse([]byte(`[drink]
name = "Rhubarb water"
servng = "330 mL"

[measured]
ph = "3,2"

[package]
pressure_rating = "6.2 bar"
`), "rhubarb.toml", ".", spec.Options{})
	fmt.Println(err)
	// Output:
	// rhubarb.toml:3:1: drink.servng: unknown key "servng"; write "serving"
	// rhubarb.toml:6:6: measured.ph: "3,2" is a text; write the bare number 3.2
	// rhubarb.toml:9:19: package.pressure_rating: "6.2 bar" is neither gauge nor absolute; write "6.2 barg" or "6.2 bara"
}

func ExampleParseTarget() {
	t, err := spec.ParseTarget("F 12 min at 200 F, z 16 F")
	fmt.Printf("%g min at %.1f °C, z %.1f C°, %v\n", t.Minutes, t.TrefC, t.ZC, err)
	// Output:
	// 12 min at 93.3 °C, z 8.9 C°, <nil>
}
