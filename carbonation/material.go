package carbonation

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"sync"
)

// Spread is a figure with the ends it is published or recalled between.
type Spread struct{ Low, Nominal, High float64 }

// Material is the wall of a pack. The zero value is rigid, does not grow with
// temperature and lets nothing through: the unfavourable end for pressure. Creep
// of plastics, which lowers pressure, is never counted.
type Material struct {
	Pack              string  // type of pack, as in MaterialOf
	Wall              string  // what it is made of
	ExpansionPerK     float64 // of the inside volume, per K
	GivePerBar        Spread  // gain of inside volume per bar of gauge pressure, a fraction
	Barrer            Spread  // permeability to CO2 at 23 °C; 0 where the wall is tight
	WallMM            float64 // thickness, where it matters
	Source            string
	Basis, Confidence string
}

// check fails for figures no wall has.
func (m Material) check() error {
	const most = 0.1 // of volume per bar, and per 100 K
	for _, v := range []float64{m.ExpansionPerK * 100, m.GivePerBar.Low, m.GivePerBar.Nominal, m.GivePerBar.High} {
		if !(v >= 0 && v <= most) {
			return fmt.Errorf("carbonation: a pack of type %q grows by %g of its volume, outside 0 to %g", m.Pack, v, most)
		}
	}
	if !(m.WallMM >= 0 && m.Barrer.Low >= 0 && m.Barrer.High >= m.Barrer.Low) || math.IsInf(m.Barrer.High, 0) {
		return fmt.Errorf("carbonation: permeability %g to %g barrer through %g mm is not possible", m.Barrer.Low, m.Barrer.High, m.WallMM)
	}
	return nil
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
	const firstNumber, numbers = 2, 8
	var n [numbers]float64
	for i := range n {
		var err error
		if n[i], err = strconv.ParseFloat(row[firstNumber+i], 64); err != nil {
			return Material{}, err
		}
	}
	words := row[firstNumber+numbers:]
	m := Material{
		Pack: row[0], Wall: row[1], ExpansionPerK: n[0], GivePerBar: Spread{n[1], n[2], n[3]},
		Barrer: Spread{n[4], n[5], n[6]}, WallMM: n[7],
		Source: words[0], Basis: words[1], Confidence: words[2],
	}
	return m, m.check()
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

// PackTypes lists the types of pack whose wall is known, sorted.
func PackTypes() []string {
	byPack, _ := materials()
	return slices.Sorted(maps.Keys(byPack))
}
