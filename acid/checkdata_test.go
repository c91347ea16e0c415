package acid

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"posset/acid/checkdata"
)

// checker is what a test and a property have in common.
type checker interface {
	Helper()
	Errorf(format string, args ...any)
	Fatal(args ...any)
}

// noError stops the test at an error.
func noError(t checker, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// near reports a value that is not within allowed of want; NaN never is.
func near(t checker, what string, got, want, allowed float64) {
	t.Helper()
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("%s: got %.8g, want %.8g within %g (off by %+.3g)", what, got, want, allowed, got-want)
	}
}

// checkRow is one line of a file of published check values.
type checkRow map[string]string

func (r checkRow) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	noError(t, err)
	return v
}

// checkData reads a file of published check values.
func checkData(t *testing.T, file string) []checkRow {
	t.Helper()
	f, err := checkdata.Files.Open(file)
	noError(t, err)
	defer f.Close()
	reader := csv.NewReader(f)
	reader.Comment = '#'
	all, err := reader.ReadAll()
	noError(t, err)
	var rows []checkRow
	for _, line := range all[1:] {
		r := checkRow{}
		for i, name := range all[0] {
			r[name] = line[i]
		}
		rows = append(rows, r)
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows", file)
	}
	return rows
}

// composition reads "citric 0.05 potassium 0.05".
func composition(t *testing.T, text string) Solution {
	t.Helper()
	var s Solution
	fields := strings.Fields(text)
	if len(fields)%2 != 0 {
		t.Fatalf("%q is not pairs of component and molality", text)
	}
	for i := 0; i < len(fields); i += 2 {
		m, err := strconv.ParseFloat(fields[i+1], 64)
		noError(t, err)
		s.Totals = append(s.Totals, Total{Component: fields[i], Molality: m})
	}
	return s
}
