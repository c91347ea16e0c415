package acid

import (
	"fmt"
	"math"
)

func lnKelvin(tC float64) float64 { return math.Log(tC + zeroC) }

func readDissociation(lib *library) error {
	err := lib.eachRow("dissociation.csv", func(r *row) error {
		c, err := lib.component(r, "component")
		if err != nil {
			return err
		}
		if r.integer("step") != len(c.Steps)+1 || len(c.Steps)+1 >= len(c.species) {
			return r.fail("step %d of %s is out of order", r.integer("step"), c.Name)
		}
		d, err := lib.doubtOf(r, acidConstant)
		if err != nil {
			return err
		}
		pk := r.number("pk_25c")
		c.Steps = append(c.Steps, Step{
			PK25C: pk, Source: r.text("source"), Basis: r.text("basis"),
			Confidence: r.text("confidence"), Note: r.text("note"),
			logK: vantHoff(-pk, r.number("dh_kj_per_mol"), r.number("dcp_j_per_mol_k")), doubt: d,
		})
		return nil
	})
	if err != nil {
		return err
	}
	return lib.checkSteps()
}

// checkSteps holds that every family has a constant for each of its protons.
func (lib *library) checkSteps() error {
	for i := range lib.components {
		c := &lib.components[i]
		if len(c.Steps) != len(c.species)-1 {
			return fmt.Errorf("acid: data/dissociation.csv: %s has %d constants for %d species", c.Name, len(c.Steps), len(c.species))
		}
	}
	return nil
}

// readFunctions replaces constants that a source gives as a function of
// temperature.
func readFunctions(lib *library) error {
	return lib.eachRow("functions.csv", func(r *row) error {
		c, err := lib.component(r, "component")
		if err != nil {
			return err
		}
		step := r.integer("step") - 1
		if step < 0 || step >= len(c.Steps) {
			return r.fail("%s has no step %d", c.Name, step+1)
		}
		k := logK{a: r.number("a"), b: r.number("b"), c: r.number("c"), d: r.number("d"), e: r.number("e")}
		switch r.text("logarithm") {
		case "ln":
			k.a, k.b, k.c, k.d, k.e = k.a/math.Ln10, k.b/math.Ln10, k.c/math.Ln10, k.d/math.Ln10, k.e/math.Ln10
		case "log10":
			k.c /= math.Ln10
		default:
			return r.fail("logarithm is %q, not ln or log10", r.text("logarithm"))
		}
		c.Steps[step].logK = k
		c.Steps[step].Source, c.Steps[step].Basis = r.text("source"), r.text("basis")
		c.Steps[step].PK25C = -k.at(refK, math.Log(refK))
		return nil
	})
}

func readComplexes(lib *library) error {
	return lib.eachRow("complexes.csv", func(r *row) error {
		d, err := lib.doubtOf(r, complexConstant)
		if err != nil {
			return err
		}
		info := &complexInfo{name: r.text("name"), logK: vantHoff(r.number("log10k_25c"), r.number("dh_kj_per_mol"), 0), doubt: d}
		m := metalOf(r.text("metal"))
		if m == noMetal {
			return r.fail("%q forms no complexes here", r.text("metal"))
		}
		if r.text("component") == hydroxide {
			lib.hydroxides[m] = info
			return nil
		}
		c, err := lib.component(r, "component")
		if err != nil {
			return err
		}
		for j := range c.species {
			if c.species[j].name == r.text("ligand") {
				c.species[j].complexes[m] = info
				return nil
			}
		}
		return r.fail("%s has no species %q", c.Name, r.text("ligand"))
	})
}

// hydroxide is the name under which complexes.csv holds the ions MOH+.
const hydroxide = "hydroxide"

func (lib *library) component(r *row, column string) (*Component, error) {
	i, ok := lib.index[r.text(column)]
	if !ok {
		return nil, r.fail("no component %q", r.text(column))
	}
	return &lib.components[i], nil
}
