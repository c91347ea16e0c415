package acid

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// embedded returns the data files as a file system that a test can damage.
func embedded(t checker) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	names, err := fs.Glob(dataFiles, "data/*.csv")
	noError(t, err)
	for _, name := range names {
		data, err := dataFiles.ReadFile(name)
		noError(t, err)
		files[name] = &fstest.MapFile{Data: data}
	}
	return files
}

func TestDamagedDataIsNamed(t *testing.T) {
	for _, c := range []struct{ file, from, to, want string }{
		{"components.csv", "citric,weak acid,", "citric,weak acid", `acid: data/components.csv: record on line 5: wrong number of fields`},
		{"components.csv", "molar_mass", "mass", `acid: data/components.csv has no column "molar_mass_g_per_mol"`},
		{"components.csv", "192.123", "heavy", `acid: data/components.csv line 5: "heavy" is not a number for molar_mass_g_per_mol`},
		{"components.csv", "isocitric,", "citric,", `acid: data/components.csv line 6: component "citric" stands twice or has no species`},
		{"dissociation.csv", "\ncitric,2", "\ncitric,3", "acid: data/dissociation.csv line 6: step 3 of citric is out of order"},
		{"dissociation.csv", "\nlactic,1", "\nlactid,1", `acid: data/dissociation.csv line 16: no component "lactid"`},
		{"dissociation.csv", "seen,high,", "seen,sure,", `acid: data/dissociation.csv line 5: confidence is "sure", not high, medium or low`},
		{"dissociation.csv", "\naspartame,2", "\n#", "acid: data/dissociation.csv: aspartame has 1 constants for 3 species"},
		{"functions.csv", ",log10,-356", ",log2,-356", "acid: data/functions.csv line 4: logarithm is \"log2\", not ln or log10"},
		{"functions.csv", "carbonic,2", "carbonic,3", "acid: data/functions.csv line 5: carbonic has no step 3"},
		{"complexes.csv", "\ncalcium,citric,Cit3-", "\ncalcium,citric,Cit4-", `acid: data/complexes.csv line 4: citric has no species "Cit4-"`},
		{"complexes.csv", "\ncalcium,citric,Cit3-", "\niron,citric,Cit3-", `acid: data/complexes.csv line 4: "iron" forms no complexes here`},
		{"solubility.csv", "calcium/Ca2+:1 phosphoric", "calcium/Ca2+ phosphoric", `acid: data/solubility.csv line 4: "calcium/Ca2+" is not component/species:count`},
		{"solubility.csv", "Ca2+:1 phosphoric", "Ca2+:x phosphoric", `acid: data/solubility.csv line 4: "calcium/Ca2+:x" is not component/species:count`},
		{"water_solutes.csv", "6.47", "", `acid: data/water_solutes.csv line 4: "" is not a number for k`},
	} {
		files := embedded(t)
		name := "data/" + c.file
		text := string(files[name].Data)
		if !strings.Contains(text, c.from) {
			t.Errorf("%s holds no %q", name, c.from)
		}
		files[name].Data = []byte(strings.Replace(text, c.from, c.to, 1))
		_, err := readLibrary(files)
		wantError(t, err, c.want)
	}
	files := embedded(t)
	delete(files, "data/doubt.csv")
	_, err := readLibrary(files)
	wantError(t, err, "acid: open data/doubt.csv: file does not exist")
}

// FuzzReadLibrary puts any text in place of one data file: reading and solving with
// what was read may fail, never panic.
func FuzzReadLibrary(f *testing.F) {
	names := []string{"components.csv", "dissociation.csv", "functions.csv", "complexes.csv", "solubility.csv",
		"water_solutes.csv", "titratable.csv", "doubt.csv"}
	whole := embedded(f)
	for i, name := range names {
		f.Add(uint(i), whole["data/"+name].Data)
	}
	f.Fuzz(func(t *testing.T, which uint, data []byte) {
		files := embedded(t)
		files["data/"+names[which%uint(len(names))]] = &fstest.MapFile{Data: data}
		lib, err := readLibrary(files)
		if err != nil {
			return
		}
		v := Solver{lib: lib}
		s := twelve()
		s.FreeCO2 = 0.01
		for _, with := range []Solution{twelve(), s, {FreeCO2: 0.01}} {
			if pH, err := v.PH(with, 25); err == nil && !(pH >= lowPH && pH <= highPH) {
				t.Errorf("pH %g", pH)
			}
		}
	})
}
