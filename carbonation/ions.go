package carbonation

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"
)

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
	return slices.Sorted(maps.Keys(known))
}

const maxIonMolPerL = 5

// ionSums is what the ions of a drink amount to.
type ionSums struct{ weighted, molPerL float64 } // sum of h_i c_i, and of c_i

func sumIons(ions map[string]float64) (ionSums, error) {
	if len(ions) == 0 {
		return ionSums{}, nil
	}
	known, err := ionParameters()
	if err != nil {
		return ionSums{}, err
	}
	var sums ionSums
	for _, name := range slices.Sorted(maps.Keys(ions)) {
		h, ok := known[name]
		if !ok {
			return ionSums{}, fmt.Errorf("carbonation: no salting-out figure is known for ion %q; known are %s", name, strings.Join(Ions(), ", "))
		}
		c := ions[name]
		if !(c >= 0 && c <= maxIonMolPerL) {
			return ionSums{}, fmt.Errorf("carbonation: %g mol/L of %s is outside 0 to %d mol/L", c, name, maxIonMolPerL)
		}
		sums.weighted += h * c
		sums.molPerL += c
	}
	return sums, nil
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

// saltingOut returns log10 of solubility in water over that with the ions; 0 where
// the sum would make gas more soluble.
func (s ionSums) saltingOut(tC float64) float64 {
	held := min(max(tC, gasParameterLowC), gasParameterHighC)
	gas := gasParameter + gasParameterPerK*(held-gasParameterC)
	return max(0, s.weighted+gas*s.molPerL)
}
