package thermal

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/organisms.csv
var organismsCSV string

// Organism is a kind of cell or spore with the spread of its published heat
// resistance. Sources disagree; whoever decides takes the unfavourable end.
type Organism struct {
	Name   string
	Also   []string // other names it is found by
	Class  string   // hazard, spoilage or indicator
	TrefC  float64
	DLow   float64 // minutes at TrefC
	DHigh  float64
	ZLow   float64 // C°
	ZHigh  float64
	MinC   float64 // coolest and hottest at which it was measured
	MaxC   float64
	Medium string
	PH     string
	Source string
	Basis  string
}

// Reference is the basis on which a target for the organism is integrated. Of
// its published z-values the larger one is taken: below Tref it would credit
// more, so credit there is cut by Cautious.
func (o Organism) Reference() Reference { return Reference{TrefC: o.TrefC, ZC: o.ZLow} }

// MinutesFor is the time at TrefC that the given decimal reductions need, by
// the most resistant published figure.
func (o Organism) MinutesFor(logs float64) float64 { return logs * o.DHigh }

var organisms = sync.OnceValues(func() ([]Organism, error) { return readOrganisms(organismsCSV) })

// Organisms returns every organism that is held, in the order of the data file.
func Organisms() []Organism {
	list, err := organisms()
	if err != nil {
		panic(err) // the data is part of the program; a test reads it
	}
	return append([]Organism(nil), list...)
}

// FindOrganism finds an organism by its name or another name it goes by, case
// and spacing aside.
func FindOrganism(name string) (Organism, bool) {
	want := plain(name)
	list, err := organisms()
	if err != nil || want == "" {
		return Organism{}, false
	}
	for _, o := range list {
		if plain(o.Name) == want {
			return o, true
		}
		for _, a := range o.Also {
			if plain(a) == want {
				return o, true
			}
		}
	}
	return Organism{}, false
}

func plain(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

func readOrganisms(text string) ([]Organism, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("thermal: organisms: %w", err)
	}
	var list []Organism
	for _, r := range rows[1:] {
		o := Organism{Name: r[0], Class: r[2], Medium: r[10], PH: r[11], Source: r[12], Basis: r[13]}
		if r[1] != "" {
			o.Also = strings.Split(r[1], "|")
		}
		for i, p := range []*float64{&o.TrefC, &o.DLow, &o.DHigh, &o.ZLow, &o.ZHigh, &o.MinC, &o.MaxC} {
			if *p, err = strconv.ParseFloat(r[3+i], 64); err != nil {
				return nil, fmt.Errorf("thermal: organisms: %s: %w", o.Name, err)
			}
		}
		list = append(list, o)
	}
	return list, nil
}
