package route

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"posset/beverage"
)

//go:embed data/heats.csv
var heatsCSV string

// heat is what a drink usually gets on a route.
type heat struct {
	route         beverage.Route
	acid          string // yes | no | any
	tempC, timeS  float64
	source, basis string
}

// usualHeats is the table, read once.
var usualHeats = sync.OnceValues(func() ([]heat, error) { return readHeats(heatsCSV) })

func readHeats(text string) ([]heat, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	var list []heat
	for _, row := range rows[1:] {
		h := heat{route: beverage.Route(row[0]), acid: row[1], source: row[4], basis: row[5]}
		if h.tempC, err = strconv.ParseFloat(row[2], 64); err != nil {
			return nil, fmt.Errorf("heats.csv: %s: %w", row[0], err)
		}
		if h.timeS, err = strconv.ParseFloat(row[3], 64); err != nil {
			return nil, fmt.Errorf("heats.csv: %s: %w", row[0], err)
		}
		list = append(list, h)
	}
	return list, nil
}

// usualHeat returns the usual heat of a route, of its low-acid form where the
// drink may be low-acid; false where none is known.
func usualHeat(r beverage.Route, mayBeLowAcid bool) (heat, bool) {
	list, err := usualHeats()
	if err != nil {
		return heat{}, false
	}
	acid := map[bool]string{true: "no", false: "yes"}[mayBeLowAcid]
	for _, h := range list {
		if h.route == r && (h.acid == acid || h.acid == "any") {
			return h, true
		}
	}
	return heat{}, false
}
