package acid

import (
	"slices"
	"testing"
)

// eachRow reads an embedded data file.
func eachRow(t *testing.T, file string, use func(*row) error) error {
	t.Helper()
	lib, err := loadLibrary()
	noError(t, err)
	return lib.eachRow(file, use)
}

// The guards pin what each data file holds, so that a row lost or a digit changed
// by accident is seen.
func TestDataFilesAreWhole(t *testing.T) {
	for _, c := range []struct {
		file, column string
		rows         int
		sum          float64
	}{
		{"components.csv", "molar_mass_g_per_mol", 51, 6328.873},
		{"dissociation.csv", "pk_25c", 82, 402.783},
		{"dissociation.csv", "dh_kj_per_mol", 82, 526.161},
		{"dissociation.csv", "dcp_j_per_mol_k", 82, -12003.6},
		{"complexes.csv", "log10k_25c", 63, 187.641},
		{"complexes.csv", "dh_kj_per_mol", 63, 238.33},
		{"functions.csv", "a", 6, -165.1786},
		{"solubility.csv", "log10k_25c", 18, -142.165},
		{"water_solutes.csv", "k", 16, 50.55},
		{"titratable.csv", "molar_mass_g_per_mol", 15, 2067.412},
	} {
		rows, sum := 0, 0.0
		err := eachRow(t, c.file, func(r *row) error {
			rows++
			sum += r.number(c.column)
			return nil
		})
		noError(t, err)
		if rows != c.rows {
			t.Errorf("%s has %d rows, want %d", c.file, rows, c.rows)
		}
		near(t, c.file+" "+c.column, sum, c.sum, 1e-6)
	}
}

func TestEveryRowHasSourceAndBasis(t *testing.T) {
	for _, file := range []string{"dissociation.csv", "functions.csv", "complexes.csv", "solubility.csv", "water_solutes.csv", "titratable.csv"} {
		err := eachRow(t, file, func(r *row) error {
			if r.text("source") == "" || !slices.Contains([]string{"seen", "memory", "computed"}, r.text("basis")) {
				t.Errorf("%s line %d: source %q, basis %q", file, r.line, r.text("source"), r.text("basis"))
			}
			return nil
		})
		noError(t, err)
	}
}

// A function of temperature must agree at 25 °C with the constant whose place it
// takes, and so must the enthalpy and heat capacity over the range of drinks.
func TestFunctionsAgreeWithConstants(t *testing.T) {
	err := eachRow(t, "functions.csv", func(f *row) error {
		return eachRow(t, "dissociation.csv", func(r *row) error {
			if r.text("component") != f.text("component") || r.text("step") != f.text("step") {
				return nil
			}
			c, _ := Lookup(r.text("component"))
			used := c.Steps[r.integer("step")-1]
			near(t, c.Name+" at 25 °C", used.PK(25), r.number("pk_25c"), 0.005)
			plain := Step{logK: vantHoff(-r.number("pk_25c"), r.number("dh_kj_per_mol"), r.number("dcp_j_per_mol_k"))}
			near(t, c.Name+" at 5 °C", used.PK(5), plain.PK(5), 0.02)
			near(t, c.Name+" at 50 °C", used.PK(50), plain.PK(50), 0.02)
			return nil
		})
	})
	noError(t, err)
}

func TestLookup(t *testing.T) {
	c, ok := Lookup("citric")
	if !ok || c.Kind != WeakAcid || len(c.Steps) != 3 {
		t.Errorf("citric: %+v %v", c, ok)
	}
	c.Steps[0].PK25C = 99
	if again, _ := Lookup("citric"); again.Steps[0].PK25C != 3.128 {
		t.Error("a caller can change the constants")
	}
	if _, ok := Lookup("citrate"); ok {
		t.Error("citrate is no component: it is citric and a cation")
	}
	for _, c := range Components() {
		if c.Kind == StrongCation || c.Kind == StrongAnion {
			if len(c.Steps) != 0 {
				t.Errorf("%s is strong and has steps", c.Name)
			}
			continue
		}
		if c.MolarMass <= 0 || len(c.Steps) == 0 {
			t.Errorf("%+v", c)
		}
	}
}
