// Package checkdata holds published drinks and solutions that the prediction of a
// pH is checked against, and turns each into the spec it is predicted from.
//
//	published_ph.csv   make-up and pH of drinks, each with its source and how rough it is
package checkdata

import (
	"embed"
	"fmt"
	"strings"
)

// Files holds the CSV files by their names.
//
//go:embed *.csv
var Files embed.FS

// pureWater is a line of water that brings nothing; its amount tells nothing.
const pureWater = `[[ingredient]]
name = "water"
amount = "1 g/L"
calcium = "0 %"
magnesium = "0 %"
sodium = "0 %"
potassium = "0 %"
chloride = "0 %"
`

// Recipe is a row's recipe as tables of a spec: "name = amount | key = value; ...",
// each amount off by the tolerance at most, in pure water or in a supply's.
func Recipe(recipe, tolerancePct, water string) string {
	var b strings.Builder
	for item := range strings.SplitSeq(recipe, "; ") {
		keys := strings.Split(item, " | ")
		name, amount, _ := strings.Cut(keys[0], " = ")
		fmt.Fprintf(&b, "[[ingredient]]\nname = %q\namount = %q\namount_tolerance = \"%s %%\"\n", name, amount, tolerancePct)
		for _, k := range keys[1:] {
			fmt.Fprintln(&b, k)
		}
	}
	if water == "pure" {
		b.WriteString(pureWater)
	}
	return b.String()
}
