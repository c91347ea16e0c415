package facts

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"sync"
)

//go:embed data/*.csv
var dataFiles embed.FS

// unmodelledShift is what a pH may be off by where the model fails or its data
// cannot be read: our own bound.
const unmodelledShift = 1.0

// marginOf is how far a figure of the model may miss, half of a 95 % interval, by
// its row of data/model_error.csv.
func marginOf(name string) float64 {
	rows, err := margins()
	v, ok := rows[name]
	if err != nil || !ok {
		return unmodelledShift
	}
	return v
}

// shareOf is a margin stated in percent, as a fraction.
func shareOf(name string) float64 { return marginOf(name) / 100 }

var margins = sync.OnceValues(func() (map[string]float64, error) { return column("model_error.csv", "value") })

// ordinaryWater is the upper end of what undescribed water brings, mol/L.
func ordinaryWater(name string) float64 {
	rows, err := waters()
	v, ok := rows[name]
	if err != nil || !ok {
		return 0.01
	}
	return v / 1000
}

var waters = sync.OnceValues(func() (map[string]float64, error) { return column("water.csv", "high") })

// column reads one column of figures of a data file by the names of its rows.
func column(file, name string) (map[string]float64, error) {
	f, err := dataFiles.Open("data/" + file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) == 0 {
		return nil, fmt.Errorf("data/%s cannot be read: %v", file, err)
	}
	at := -1
	for i, h := range rows[0] {
		if h == name {
			at = i
		}
	}
	values := map[string]float64{}
	for _, row := range rows[1:] {
		if at < 0 {
			return nil, fmt.Errorf("data/%s has no column %q", file, name)
		}
		if values[row[0]], err = strconv.ParseFloat(row[at], 64); err != nil {
			return nil, fmt.Errorf("data/%s: %s: %w", file, row[0], err)
		}
	}
	return values, nil
}
