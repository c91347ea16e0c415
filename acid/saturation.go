package acid

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Mineral is a solid that calcium, magnesium or an acid can leave a solution as.
type Mineral struct {
	Name       string
	Formula    string
	Source     string
	Basis      string // seen | memory | computed
	Confidence string // high | medium | low
	Note       string

	logK logK
	ions []mineralIon
}

type mineralIon struct {
	component, species string
	count              float64
}

// Minerals returns every solid whose solubility is known, in the order of the
// data file.
func Minerals() []Mineral {
	lib, err := loadLibrary()
	if err != nil {
		return nil
	}
	return append([]Mineral(nil), lib.minerals...)
}

// SaturationIndex returns log10 of the ion product over the solubility product
// of a mineral in a solved solution: above 0 the solid can form, below 0 it
// dissolves, given time. It is -Inf when an ion is absent. It fails for a mineral
// that Minerals does not list.
func SaturationIndex(e Equilibrium, mineral string) (float64, error) {
	for _, m := range Minerals() {
		if m.Name == mineral {
			return m.index(e), nil
		}
	}
	return math.NaN(), fmt.Errorf("acid: no mineral %q; Minerals lists the known ones", mineral)
}

func (m Mineral) index(e Equilibrium) float64 {
	sum := -m.logK.at(e.TempC+zeroC, lnKelvin(e.TempC))
	for _, ion := range m.ions {
		sum += ion.count * math.Log10(e.activity(ion.component, ion.species))
	}
	return sum
}

// activity returns the activity of one species, 0 when it is absent.
func (e Equilibrium) activity(component, species string) float64 {
	for _, s := range e.Species {
		if s.Component == component && s.Name == species {
			return s.Activity()
		}
	}
	return 0
}

func readSolubility(lib *library) error {
	return lib.eachRow("solubility.csv", func(r *row) error {
		m := Mineral{Name: r.text("name"), Formula: r.text("formula"), Source: r.text("source"),
			Basis: r.text("basis"), Confidence: r.text("confidence"), Note: r.text("note"),
			logK: vantHoff(r.number("log10k_25c"), r.number("dh_kj_per_mol"), 0)}
		for _, field := range strings.Fields(r.text("ions")) {
			ion, err := readIon(r, field)
			if err != nil {
				return err
			}
			m.ions = append(m.ions, ion)
		}
		lib.minerals = append(lib.minerals, m)
		return nil
	})
}

// readIon reads component/species:count.
func readIon(r *row, field string) (mineralIon, error) {
	component, rest, ok := strings.Cut(field, "/")
	at := strings.LastIndex(rest, ":")
	if !ok || at < 0 {
		return mineralIon{}, r.fail("%q is not component/species:count", field)
	}
	count, err := strconv.ParseFloat(rest[at+1:], 64)
	if err != nil {
		return mineralIon{}, r.fail("%q is not component/species:count", field)
	}
	return mineralIon{component: component, species: rest[:at], count: count}, nil
}
