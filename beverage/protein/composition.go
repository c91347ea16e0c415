package protein

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"posset/beverage"
)

// Composition is what a protein ingredient's protein consists of. A nil one is an
// unknown protein: its figures are unknown or NaN.
type Composition struct {
	id          string
	family      Family
	origin      Family
	parts       []Part
	isoelectric isoelectric
	source      beverage.Source
	hydrolysis  beverage.Interval // degree, percent of the peptide bonds
	bonds       float64           // mmol/g before any was cut
	recipe      string            // id that amino acids are looked up by
	micelles    bool              // casein holds its calcium phosphate
	cloudy      bool              // fat or particles keep it from ever being clear
}

// Of returns the composition of a kind of protein, such as "whey isolate". Case
// and spacing do not matter. An unknown kind gives false: nothing is guessed.
func Of(id string) (*Composition, bool) {
	known, _ := library()
	c, ok := known.byID[cleaned(id)]
	return c, ok
}

// IDs lists every kind of protein that Of knows, in the order of the data.
func IDs() []string {
	known, _ := library()
	return slices.Clone(known.ids)
}

// ID is the kind of protein, as in IDs.
func (c *Composition) ID() string { return c.orUnknown().id }

// Family is the kind of protein that windows speak of.
func (c *Composition) Family() Family { return c.orUnknown().family }

// Origin is the family a hydrolysate was cut from; of all else its own family.
func (c *Composition) Origin() Family { return c.orUnknown().origin }

// Source says where the mass shares come from.
func (c *Composition) Source() beverage.Source { return c.orUnknown().source }

// Parts lists the proteins of the composition, the largest share first.
func (c *Composition) Parts() []Part { return slices.Clone(c.orUnknown().parts) }

// Main is the protein with the largest share.
func (c *Composition) Main() Part {
	if c == nil || len(c.parts) == 0 {
		return Part{}
	}
	return c.parts[0]
}

// Isoelectric returns the published pH of zero charge or least solubility of the
// whole protein.
func (c *Composition) Isoelectric() beverage.Interval { return c.orUnknown().isoelectric.interval() }

// IsoelectricSource says where that figure comes from and how publications
// disagree, if they do.
func (c *Composition) IsoelectricSource() (source beverage.Source, dispute string) {
	return c.orUnknown().isoelectric.source()
}

// Hydrolysis is the degree of hydrolysis in percent of the peptide bonds; unknown
// where the protein is not cut.
func (c *Composition) Hydrolysis() beverage.Interval { return c.orUnknown().hydrolysis }

// HeatLabileFraction is the mass share of whey protein that heat unfolds for good:
// 0 where there is none.
func (c *Composition) HeatLabileFraction() float64 {
	if c == nil {
		return math.NaN()
	}
	sum := 0.0
	for _, p := range c.parts {
		if p.Labile {
			sum += p.share
		}
	}
	return sum
}

var unknown = &Composition{}

func (c *Composition) orUnknown() *Composition {
	if c == nil {
		return unknown
	}
	return c
}

// shareRow is one chain's share in compositions.toml.
type shareRow struct {
	Chain          string
	Low, Mid, High float64
}

// compositionRow is one composition of compositions.toml.
type compositionRow struct {
	ID       string
	Family   Family
	Parts    []shareRow
	SameAs   string  `toml:"same_as"`
	CutFrom  string  `toml:"cut_from"`
	Bonds    float64 `toml:"bonds_mmol_per_g"`
	DHLow    float64 `toml:"dh_low"`
	DHMid    float64 `toml:"dh_mid"`
	DHHigh   float64 `toml:"dh_high"`
	Source   string
	Basis    beverage.Basis
	Micelles bool
	Cloudy   bool
	isoelectric
}

type libraryData struct {
	ids  []string
	byID map[string]*Composition
}

// library is read once. A fault in it leaves every protein unknown; a test holds
// the embedded data free of faults.
var library = sync.OnceValues(readLibrary)

func readLibrary() (libraryData, error) {
	sets, err := readAcidities()
	if err != nil {
		return libraryData{}, err
	}
	chains, err := readParts(sets)
	if err != nil {
		return libraryData{}, err
	}
	var file struct{ Composition []compositionRow }
	if err := readTOML("compositions.toml", &file); err != nil {
		return libraryData{}, err
	}
	lib := libraryData{byID: map[string]*Composition{}}
	for _, r := range file.Composition {
		c, err := lib.compose(r, chains)
		if err != nil {
			return libraryData{}, fmt.Errorf("compositions.toml: %q: %w", r.ID, err)
		}
		lib.ids = append(lib.ids, r.ID)
		lib.byID[cleaned(r.ID)] = c
	}
	return lib, nil
}

func (lib libraryData) compose(r compositionRow, chains map[string]Part) (*Composition, error) {
	c := &Composition{id: r.ID, family: r.Family, origin: r.Family, isoelectric: r.isoelectric,
		source: beverage.Source{Text: r.Source, Basis: r.Basis}, recipe: cleaned(r.ID), micelles: r.Micelles, cloudy: r.Cloudy}
	if from := r.SameAs + r.CutFrom; from != "" {
		whole, ok := lib.byID[from]
		if !ok {
			return nil, fmt.Errorf("%q stands not before it", from)
		}
		c.parts, c.origin, c.recipe = whole.parts, whole.origin, whole.recipe
	}
	for _, s := range r.Parts {
		p, ok := chains[s.Chain]
		if !ok {
			return nil, fmt.Errorf("chain %q is unknown", s.Chain)
		}
		p.Share = beverage.Interval{Low: s.Low, Mid: s.Mid, High: s.High, Basis: beverage.Library}
		c.parts = append(c.parts, p)
	}
	c.parts = normalized(c.parts)
	if r.CutFrom == "" {
		return c, nil
	}
	c.bonds = r.Bonds
	return c.cut(beverage.Interval{Low: r.DHLow, Mid: r.DHMid, High: r.DHHigh, Basis: beverage.Library}), nil
}

// normalized sorts the parts by share and makes the middle shares add up to one.
func normalized(parts []Part) []Part {
	parts = slices.Clone(parts)
	slices.SortStableFunc(parts, func(a, b Part) int {
		switch {
		case a.Share.Mid > b.Share.Mid:
			return -1
		case a.Share.Mid < b.Share.Mid:
			return 1
		}
		return 0
	})
	sum := 0.0
	for _, p := range parts {
		sum += p.Share.Mid
	}
	for i := range parts {
		parts[i].share = parts[i].Share.Mid / sum
	}
	return parts
}
