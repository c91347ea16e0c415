package main

import (
	"fmt"
	"strconv"
	"strings"

	"posset/beverage/quantity"
	"posset/carbonation"
)

// Ranges of the bare numbers that flags take.
const (
	leastPH, mostPH = 0, 14
	mostVolumes     = 20
)

// bareNumber reads a number that has no unit.
func bareNumber(what string, least, most float64) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		if err != nil || !(v >= least && v <= most) {
			return 0, fmt.Errorf("%s is not %s; write a number from %g to %g, with a point", quantity.Quote(s), what, least, most)
		}
		return v, nil
	}
}

const (
	percent     = 100
	gPerKg      = 1000
	sugarReadAt = 20 // °C, of a Brix reading
)

// sugarGPerL reads sugar as grams per litre, as Brix or as percent by mass.
func sugarGPerL(s string) (float64, error) {
	q, err := quantity.ParseSugar(s)
	switch {
	case err != nil:
		return 0, err
	case q.Dim == quantity.Concentration:
		return q.Value, nil
	case q.Value > percent:
		return 0, fmt.Errorf("%s is more than all of it; write %s", quantity.Quote(s), quantity.Either([]string{"80 g/L", "8 Brix"}))
	}
	share := q.Value / percent
	return share * carbonation.SucroseDensityKgPerL(share, sugarReadAt) * gPerKg, nil
}

// concentration reads grams per litre.
func concentration(s string) (float64, error) {
	q, err := quantity.ParseLike(s, "5 g/L", quantity.Concentration)
	return q.Value, err
}
