package carbonation

import (
	"encoding/csv"
	"io/fs"
	"math"
	"os"
	"strconv"
	"testing"

	"posset/carbonation/checkdata"
)

// fataler is what testing and rapid have in common.
type fataler interface{ Fatalf(string, ...any) }

func must[T any](t fataler, v T, err error) T {
	if err != nil {
		t.Fatalf("unexpected error: %v", err)
	}
	return v
}

func packOf(t fataler, pack string) Material {
	m, ok := MaterialOf(pack)
	if !ok {
		t.Fatalf("no material for %q", pack)
	}
	return m
}

// within fails unless got lies within allowed per cent of want; NaN fails.
func within(t *testing.T, what string, got, want, allowedPercent float64) {
	t.Helper()
	if !(math.Abs(got-want) <= math.Abs(want)*allowedPercent/100) {
		t.Errorf("%s: got %.6g, want %.6g within %g %%", what, got, want, allowedPercent)
	}
}

func wantError(t *testing.T, err error, want string) {
	t.Helper()
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// record is a row of a table of check values, by heading.
type record map[string]string

func (r record) number(t *testing.T, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[key], 64)
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	return v
}

// optional is NaN for an empty cell.
func (r record) optional(t *testing.T, key string) float64 {
	t.Helper()
	if r[key] == "" {
		return math.NaN()
	}
	return r.number(t, key)
}

// records reads a table of testdata, checkRecords one that is shared.
func records(t *testing.T, path string) []record {
	t.Helper()
	return recordsOf(t, os.DirFS("."), path)
}

func checkRecords(t *testing.T, name string) []record {
	t.Helper()
	return recordsOf(t, checkdata.Files, name)
}

func recordsOf(t *testing.T, files fs.FS, path string) []record {
	t.Helper()
	f, err := files.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []record
	for _, row := range rows[1:] {
		rec := record{}
		for i, key := range rows[0] {
			rec[key] = row[i]
		}
		list = append(list, rec)
	}
	return list
}
