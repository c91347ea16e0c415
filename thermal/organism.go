package thermal

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"
)

//go:embed data/organisms.csv
var organismsCSV string

// Organism is a kind of cell or spore with the spread of its published heat
// resistance. Sources disagree; whoever decides takes the unfavourable end.
type Organism struct {
	Name       string
	Also       []string // other names it is found by
	Class      string   // hazard, spoilage or indicator
	TrefC      float64
	DLow       float64 // minutes at TrefC
	DHigh      float64
	ZLow       float64 // C°
	ZHigh      float64
	MinC       float64 // coolest and hottest at which it was measured
	MaxC       float64
	Medium     string
	PH         string
	Source     string
	Basis      string // of D: seen, memory, or computed from what was seen
	ZBasis     string // of z: seen, memory or assumed
	RangeBasis string // of MinC and MaxC; assumed where the source gives none
	Note       string
}

// Bound is what a record can be credited with toward decimal reductions of the
// organism: the smaller published z below TrefC, the larger above, nothing
// below the temperatures it was measured at, and above them no more than at the
// hottest.
func (o Organism) Bound() Bound {
	return Bound{
		Below: Reference{TrefC: o.TrefC, ZC: o.ZLow}, Above: Reference{TrefC: o.TrefC, ZC: o.ZHigh},
		MinC: o.MinC, MaxC: o.MaxC,
	}
}

// Reference is the basis that the organism's target is named by: TrefC and its
// smaller z. Above TrefC it credits more than the published spread allows, and
// it knows no range: credit is taken by Bound.
func (o Organism) Reference() Reference { return o.Bound().Below }

// MinutesFor is the time at TrefC that the given decimal reductions need, by
// the most resistant published figure.
func (o Organism) MinutesFor(logs float64) float64 { return logs * o.DHigh }

var organisms = sync.OnceValues(func() ([]Organism, error) { return readOrganisms(organismsCSV) })

// Organisms returns every organism that is held, in the order of the data file.
func Organisms() []Organism {
	list, _ := organisms() // the data is part of the program; a test reads it
	return slices.Clone(list)
}

// FindOrganism finds an organism by its name or another name it goes by, case
// and spacing aside.
func FindOrganism(name string) (Organism, bool) {
	list, _ := organisms()
	for _, o := range list {
		if called(name, o.Name, o.Also) {
			return o, true
		}
	}
	return Organism{}, false
}

func readOrganisms(text string) ([]Organism, error) {
	rows, err := readRows("organisms", text)
	if err != nil {
		return nil, err
	}
	var list []Organism
	for _, r := range rows {
		o := Organism{
			Name: r.text("name"), Also: r.list("also"), Class: r.text("class"), TrefC: r.number("tref_c"),
			DLow: r.number("d_low_min"), DHigh: r.number("d_high_min"), ZLow: r.number("z_low_c"), ZHigh: r.number("z_high_c"),
			MinC: r.number("min_c"), MaxC: r.number("max_c"), Medium: r.cells["medium"], PH: r.cells["ph"],
			Source: r.text("source"), Basis: r.text("basis"), ZBasis: r.text("z_basis"), RangeBasis: r.text("range_basis"),
			Note: r.cells["note"],
		}
		if r.err == nil && !(o.DLow <= o.DHigh && o.ZLow <= o.ZHigh && o.MinC < o.MaxC) {
			r.err = fmt.Errorf("thermal: organisms: %s: a low end stands above its high end", o.Name)
		}
		if r.err != nil {
			return nil, r.err
		}
		list = append(list, o)
	}
	return list, nil
}
