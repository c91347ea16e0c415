package carbonation

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"slices"
	"sort"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/*.csv
var files embed.FS

// table reads one of the data files: its rows without the heading.
func table(name string) ([][]string, error) {
	text, err := fs.ReadFile(files, "data/"+name)
	if err != nil {
		return nil, err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		return nil, fmt.Errorf("carbonation: data file %s has no rows: %w", name, err)
	}
	return rows[1:], nil
}

// ionParameters reads data/ions.csv once: L/mol by ion.
var ionParameters = sync.OnceValues(func() (map[string]float64, error) {
	rows, err := table("ions.csv")
	if err != nil {
		return nil, err
	}
	ions := make(map[string]float64, len(rows))
	for _, row := range rows {
		if ions[row[0]], err = strconv.ParseFloat(row[1], 64); err != nil {
			return nil, fmt.Errorf("carbonation: ions.csv, %s: %w", row[0], err)
		}
	}
	return ions, nil
})

// Ions lists the ions whose salting out is known, sorted.
func Ions() []string {
	known, _ := ionParameters()
	names := make([]string, 0, len(known))
	for name := range known {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

const maxIonMolPerL = 5

func checkIons(ions map[string]float64) error {
	if len(ions) == 0 {
		return nil
	}
	known, err := ionParameters()
	if err != nil {
		return err
	}
	for _, name := range sortedKeys(ions) {
		if _, ok := known[name]; !ok {
			return fmt.Errorf("carbonation: no salting-out figure is known for ion %q; known are %s", name, strings.Join(Ions(), ", "))
		}
		if c := ions[name]; !(c >= 0 && c <= maxIonMolPerL) {
			return fmt.Errorf("carbonation: %g mol/L of %s is outside 0 to %d mol/L", c, name, maxIonMolPerL)
		}
	}
	return nil
}

func sortedKeys(m map[string]float64) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Gas parameter of CO2 in the same source (seen): h_G = -0.0172 - 0.000338 (T - 298.15)
// L/mol, stated for 273 to 313 K; outside, the value at the nearer end is held.
const (
	gasParameter      = -0.0172
	gasParameterPerK  = -0.000338
	gasParameterLowC  = 0
	gasParameterHighC = 40
	gasParameterC     = 25
)

// saltingOut returns log10 of solubility in water over that with the ions.
func saltingOut(ions map[string]float64, tC float64) float64 {
	if len(ions) == 0 {
		return 0
	}
	known, _ := ionParameters()
	held := min(max(tC, gasParameterLowC), gasParameterHighC)
	gas := gasParameter + gasParameterPerK*(held-gasParameterC)
	sum := 0.0
	for _, name := range sortedKeys(ions) {
		sum += (known[name] + gas) * ions[name]
	}
	return max(0, sum)
}
