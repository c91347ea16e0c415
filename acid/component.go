package acid

import (
	"slices"
	"strings"
)

// Kind tells how a component takes part in the balance.
type Kind string

// The kinds of component.
const (
	WeakAcid     Kind = "weak acid" // a family of species one proton apart, conjugate bases included
	StrongCation Kind = "strong cation"
	StrongAnion  Kind = "strong anion"
	Ampholyte    Kind = "ampholyte" // amino acids and their like: acid and base in one molecule
)

// Component is one substance of the balance: an acid with all its ions, a strong
// ion, or an ampholyte. A salt is its acid and its cation: trisodium citrate is
// one citric and three sodium.
type Component struct {
	Name      string
	Kind      Kind
	Form      string  // what one mole weighs MolarMass
	MolarMass float64 // g/mol of Form, which is the most protonated or neutral form
	Note      string
	Steps     []Step // one for each proton, first lost first

	species []speciesInfo
	metal   metalIndex
}

// Step is one dissociation constant and where it comes from.
type Step struct {
	PK25C      float64 // at 25 °C and ionic strength 0
	Source     string
	Basis      string // seen | memory | computed
	Confidence string // high | medium | low
	Note       string

	logK  logK
	doubt doubt
}

// PK returns the constant at tC in °C and ionic strength 0.
func (s Step) PK(tC float64) float64 {
	return -s.logK.at(tC+zeroC, lnKelvin(tC))
}

type metalIndex int8

const (
	noMetal metalIndex = iota - 1
	calcium
	magnesium
	metals int = iota - 1
)

// speciesInfo is one degree of protonation of a component, with the complexes
// that its ligand forms.
type speciesInfo struct {
	name      string
	charge    int
	complexes [metals]*complexInfo
}

type complexInfo struct {
	name  string
	logK  logK
	doubt doubt
}

// Components returns every known component, in the order of the data file. The
// slice is the caller's.
func Components() []Component {
	lib, err := loadLibrary()
	if err != nil {
		return nil
	}
	out := make([]Component, len(lib.components))
	for i, c := range lib.components {
		out[i] = c.clone()
	}
	return out
}

func (c Component) clone() Component {
	c.Steps = slices.Clone(c.Steps)
	return c
}

// Lookup returns the component called name; ok is false when there is none.
func Lookup(name string) (c Component, ok bool) {
	lib, err := loadLibrary()
	if err != nil {
		return Component{}, false
	}
	i, ok := lib.index[name]
	if !ok {
		return Component{}, false
	}
	return lib.components[i].clone(), true
}

func readComponents(lib *library) error {
	return lib.eachRow("components.csv", func(r *row) error {
		c := Component{
			Name: r.text("name"), Kind: Kind(r.text("kind")), Form: r.text("form"),
			MolarMass: r.number("molar_mass_g_per_mol"), Note: r.text("note"), metal: noMetal,
		}
		top := r.integer("top_charge")
		for j, name := range strings.Fields(r.text("species")) {
			c.species = append(c.species, speciesInfo{name: name, charge: top - j})
		}
		c.metal = metalOf(c.Name)
		if _, twice := lib.index[c.Name]; twice || len(c.species) == 0 {
			return r.fail("component %q stands twice or has no species", c.Name)
		}
		if top+metalCharge > maxCharge || top-len(c.species)+1 < -maxCharge {
			return r.fail("a charge of %s is beyond %d", c.Name, maxCharge)
		}
		lib.index[c.Name] = len(lib.components)
		lib.components = append(lib.components, c)
		return nil
	})
}

// metalNames are the components that form complexes.
var metalNames = [metals]string{calcium: "calcium", magnesium: "magnesium"}

func metalOf(name string) metalIndex {
	return metalIndex(slices.Index(metalNames[:], name))
}
