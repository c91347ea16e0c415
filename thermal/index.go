package thermal

import (
	_ "embed"
	"slices"
	"sync"
)

//go:embed data/indices.csv
var indicesCSV string

// Index is a named measure of heat treatment: minutes at a reference, counted
// in a unit of its own.
type Index struct {
	Name      string
	Also      []string // other names it is found by
	Reference Reference
	UnitS     float64 // seconds at the reference that make one unit
	Unit      string  // empty for a bare number
	Means     string
	Source    string
	Basis     string // seen or memory
}

// Of turns minutes at the reference into units of the index.
func (i Index) Of(minutes float64) float64 { return minutes * secondsPerMinute / i.UnitS }

const secondsPerMinute = 60

var indices = sync.OnceValues(func() ([]Index, error) { return readIndices(indicesCSV) })

// Indices returns every named index, F0 first.
func Indices() []Index {
	list, _ := indices() // the data is part of the program; a test reads it
	return slices.Clone(list)
}

// FindIndex finds an index by a name it goes by, case and spacing aside.
func FindIndex(name string) (Index, bool) {
	list, _ := indices()
	for _, i := range list {
		if called(name, i.Name, i.Also) {
			return i, true
		}
	}
	return Index{}, false
}

// NamedBasis is the reference of the index of a name: F0, PU, C0 cook value, B*
// or C*. Lethality on it is in minutes; Index.Of turns that into the index.
func NamedBasis(name string) (Reference, bool) {
	i, ok := FindIndex(name)
	return i.Reference, ok
}

func readIndices(text string) ([]Index, error) {
	rows, err := readRows("indices", text)
	if err != nil {
		return nil, err
	}
	var list []Index
	for _, r := range rows {
		i := Index{
			Name: r.text("name"), Also: r.list("also"), Reference: Reference{TrefC: r.number("tref_c"), ZC: r.number("z_c")},
			UnitS: r.number("unit_s"), Unit: r.cells["unit"], Means: r.text("means"), Source: r.text("source"), Basis: r.text("basis"),
		}
		if r.err != nil {
			return nil, r.err
		}
		list = append(list, i)
	}
	return list, nil
}
