package checkvalue

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path"
	"slices"

	"github.com/BurntSushi/toml"

	"posset/beverage"
)

// file is what a TOML file of the data holds.
type file struct {
	Check []checkRow `toml:"check"`
	Table []table    `toml:"table"`
}

// checkRow is a [[check]]. Pointers tell 0 from what is left out.
type checkRow struct {
	ID       string         `toml:"id"`
	Model    string         `toml:"model"`
	Given    map[string]any `toml:"given"`
	Want     *float64       `toml:"want"`
	Allowed  *float64       `toml:"allowed"`
	Why      string         `toml:"why_allowed"`
	Source   string         `toml:"source"`
	Basis    beverage.Basis `toml:"basis"`
	Misprint *float64       `toml:"misprint"`
}

func (r checkRow) check() Check {
	return Check{ID: r.ID, Model: r.Model, Given: r.Given, Want: orNaN(r.Want), Allowed: orNaN(r.Allowed),
		Why: r.Why, Source: r.Source, Basis: r.Basis, Misprint: r.Misprint}
}

func orNaN(v *float64) float64 {
	if v == nil {
		return math.NaN()
	}
	return *v
}

// load reads data/*.toml and the tables they name, and adds what other packages
// publish of their own figures. Every fault is an error of its own, joined.
func load(files fs.FS) ([]Check, error) {
	names, err := fs.Glob(files, "data/*.toml")
	if err != nil {
		return nil, err
	}
	var checks []Check
	var faults []error
	for _, name := range names {
		read, err := loadFile(files, name)
		checks, faults = append(checks, read...), append(faults, err)
	}
	masses := publishedMasses()
	checks = append(checks, masses...)
	faults = append(append(faults, faultsOf("ingredients", masses)...), doubled(checks))
	return checks, errors.Join(faults...)
}

func loadFile(files fs.FS, name string) ([]Check, error) {
	var f file
	meta, err := toml.DecodeFS(files, name, &f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var faults []error
	for _, key := range meta.Undecoded() {
		faults = append(faults, fmt.Errorf("%s: unknown key %s", name, key))
	}
	var checks []Check
	for _, r := range f.Check {
		checks = append(checks, r.check())
	}
	for _, t := range f.Table {
		rows, err := t.checks(files)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: table %s: %w", name, t.File, err))
		}
		checks = append(checks, rows...)
	}
	return checks, errors.Join(append(faults, faultsOf(path.Base(name), checks)...)...)
}

func faultsOf(where string, checks []Check) []error {
	var faults []error
	for _, c := range checks {
		for _, fault := range c.faults() {
			faults = append(faults, fmt.Errorf("%s: check %q: %w", where, c.ID, fault))
		}
	}
	return faults
}

// faults tells what a check lacks; what is given is brought to the types of the
// model's parameters.
func (c Check) faults() []error {
	var faults []error
	for _, f := range []struct {
		bad bool
		is  string
	}{
		{c.ID == "", "has no id"},
		{c.Source == "", "has no source"},
		{c.Why == "", "does not say why its difference is allowed"},
		{!slices.Contains([]beverage.Basis{beverage.Seen, beverage.Memory, beverage.Computed, beverage.CommonPractice}, c.Basis), fmt.Sprintf("basis %q is none of seen, memory, computed, common practice", c.Basis)},
		{math.IsNaN(c.Want) || math.IsInf(c.Want, 0), "has no wanted value"},
		{!(c.Allowed > 0) || math.IsInf(c.Allowed, 0), "allows no difference; give one above 0"},
		{c.Misprint != nil && !(math.Abs(*c.Misprint-c.Want) > 2*c.Allowed), "its misprint lies within twice what is allowed of the wanted value: it cannot be told apart"},
	} {
		if f.bad {
			faults = append(faults, errors.New(f.is))
		}
	}
	m, ok := registry[c.Model]
	if !ok {
		return append(faults, fmt.Errorf("model %q is not in the registry", c.Model))
	}
	return append(faults, m.checkGiven(c.Given)...)
}

func doubled(checks []Check) error {
	var faults []error
	seen := map[string]bool{}
	for _, c := range checks {
		if seen[c.ID] {
			faults = append(faults, fmt.Errorf("check %q stands twice", c.ID))
		}
		seen[c.ID] = true
	}
	return errors.Join(faults...)
}
