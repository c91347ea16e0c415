package carbonation

import (
	"fmt"
	"strconv"
	"sync"
)

// Spread is a figure with the ends it was published or recalled between.
type Spread struct{ Low, Nominal, High float64 }

// Material is the wall of a pack. The zero value is rigid, does not grow with
// temperature and lets nothing through: the unfavourable end for pressure.
type Material struct {
	Pack                string  // type of pack, as in MaterialOf
	Wall                string  // what it is made of
	ExpansionPerK       float64 // of the inside volume
	GivePerBar          Spread  // gain of inside volume per bar of gauge pressure
	LossPercentPerMonth Spread  // CO2 lost at 22 °C from a pack of about 500 mL; 0 where the wall is tight
	Source              string
	Basis, Confidence   string
}

var materials = sync.OnceValues(func() (map[string]Material, error) {
	rows, err := table("materials.csv")
	if err != nil {
		return nil, err
	}
	byPack := make(map[string]Material, len(rows))
	for _, row := range rows {
		m, err := materialFrom(row)
		if err != nil {
			return nil, fmt.Errorf("carbonation: materials.csv, %s: %w", row[0], err)
		}
		byPack[m.Pack] = m
	}
	return byPack, nil
})

func materialFrom(row []string) (Material, error) {
	const firstNumber, numbers = 2, 7
	var n [numbers]float64
	for i := range n {
		var err error
		if n[i], err = strconv.ParseFloat(row[firstNumber+i], 64); err != nil {
			return Material{}, err
		}
	}
	words := row[firstNumber+numbers:]
	return Material{
		Pack: row[0], Wall: row[1], ExpansionPerK: n[0],
		GivePerBar:          Spread{n[1], n[2], n[3]},
		LossPercentPerMonth: Spread{n[4], n[5], n[6]},
		Source:              words[0], Basis: words[1], Confidence: words[2],
	}, nil
}

// MaterialOf returns the wall of a type of pack ("can", "PET bottle" ...) and
// whether it is known. An unknown type gives the zero Material, which is rigid.
func MaterialOf(packType string) (Material, bool) {
	byPack, err := materials()
	if err != nil {
		return Material{}, false
	}
	m, ok := byPack[packType]
	return m, ok
}
