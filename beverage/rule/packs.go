package rule

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"posset/beverage"
)

//go:embed packs.csv
var packsCSV string

// packRow is what a kind of pack stands: "yes", "ask" its supplier, or "no".
type packRow struct {
	hottestFillC float64
	stands       map[string]string
}

var packTable = sync.OnceValues(func() (map[beverage.PackType]packRow, error) {
	r := csv.NewReader(strings.NewReader(packsCSV))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	table := map[beverage.PackType]packRow{}
	for _, row := range rows[1:] {
		hot, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			return nil, fmt.Errorf("packs.csv: %s: %w", row[0], err)
		}
		p := packRow{hottestFillC: hot, stands: map[string]string{}}
		for i, name := range rows[0][2:] {
			p.stands[name] = row[2+i]
		}
		table[beverage.PackType(row[0])] = p
	}
	return table, nil
})

func packOf(p beverage.PackType) (packRow, bool) {
	table, err := packTable()
	if err != nil {
		return packRow{}, false
	}
	row, ok := table[p]
	return row, ok
}

// hottestFillC is the hottest usual fill of a pack, °C.
func hottestFillC(p beverage.PackType) (float64, bool) {
	row, ok := packOf(p)
	return row.hottestFillC, ok
}

// demand is the column of the table that a route asks for, and its words.
var demand = map[beverage.Route][2]string{
	beverage.RetortRoute:  {"retort", "the heat of a retort"},
	beverage.Tunnel:       {"tunnel", "a tunnel pasteurizer"},
	beverage.HighPressure: {"press", "the pressure vessel, which squeezes the pack by a tenth and more"},
	beverage.Aseptic:      {"aseptic", "the sterilization that aseptic filling needs"},
}

// packOnRoute says how a pack and a route are at odds, if they are.
func packOnRoute(p beverage.PackType, r beverage.Route) (mismatch, bool) {
	d, asks := demand[r]
	row, ok := packOf(p)
	if !asks || !ok {
		return mismatch{}, false
	}
	switch row.stands[d[0]] {
	case "yes":
		return mismatch{}, false
	case "no":
		return mismatch{text: fmt.Sprintf("A %s does not stand %s.", p, d[1]), effect: RulesOut}, true
	}
	return mismatch{text: fmt.Sprintf("Only some kinds of %s stand %s: the supplier must say so.", p, d[1]), doubt: true, effect: LeavesOpen}, true
}

func holdsGas(p beverage.PackType) bool {
	row, ok := packOf(p)
	return !ok || row.stands["gas"] != "no"
}

func burstsFrozen(p beverage.PackType) bool {
	row, ok := packOf(p)
	return ok && row.stands["freezes"] == "no"
}
