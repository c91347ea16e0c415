package rule

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"posset/beverage/protein"
)

//go:embed protein_limits.csv
var proteinLimitsCSV string

var proteinLimits = sync.OnceValue(func() map[string]float64 {
	r := csv.NewReader(strings.NewReader(proteinLimitsCSV))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic("protein_limits.csv: " + err.Error())
	}
	limits := map[string]float64{}
	for _, row := range rows[1:] {
		v, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			panic(fmt.Sprintf("protein_limits.csv: %s: %v", row[0], err))
		}
		limits[row[0]] = v
	}
	return limits
})

// proteinLimit is a figure that the program itself names; the tests find one that
// is not there.
func proteinLimit(name string) float64 {
	v, ok := proteinLimits()[name]
	if !ok {
		panic("protein_limits.csv: no " + name)
	}
	return v
}

// windowOf is a published window that the program itself names.
func windowOf(id string) protein.Window {
	w, ok := protein.WindowByID(id)
	if !ok {
		panic("protein: no window " + id)
	}
	return w
}
