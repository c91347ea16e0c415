package checkvalue

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"

	acidvalues "posset/acid/checkdata"
	"posset/beverage"
	drinkvalues "posset/beverage/facts/checkdata"
	carbonationvalues "posset/carbonation/checkdata"
)

// table is a [[table]]: how each row of a CSV file becomes a check. {column} stands
// for a cell. A row whose want is empty is left out, and so is what is given by an
// empty cell.
type table struct {
	Of             string              `toml:"of"` // whose file: acid, carbonation, facts, or empty for our own
	File           string              `toml:"file"`
	Rows           map[string][]string `toml:"rows"` // the cells that a row must have one of, by column; none: every row
	ID             string              `toml:"id"`
	Model          string              `toml:"model"`
	Given          map[string]any      `toml:"given"`
	Want           string              `toml:"want"`
	Allowed        string              `toml:"allowed"`
	AllowedPercent string              `toml:"allowed_percent"` // of want, instead of allowed
	Why            string              `toml:"why_allowed"`
	Source         string              `toml:"source"`
	Basis          string              `toml:"basis"`
}

func (t table) checks(own fs.FS) ([]Check, error) {
	files, err := tablesOf(t.Of, own)
	if err != nil {
		return nil, err
	}
	rows, err := readRows(files, t.File)
	if err != nil {
		return nil, err
	}
	var checks []Check
	var faults []error
	for i, r := range rows {
		if !t.takes(r) {
			continue
		}
		c, err := t.check(r)
		if err != nil {
			faults = append(faults, fmt.Errorf("row %d: %w", i+1, err))
			continue
		}
		if c != nil {
			checks = append(checks, *c)
		}
	}
	return checks, errors.Join(faults...)
}

// tablesOf returns the files that a package's check values stand in.
func tablesOf(of string, own fs.FS) (fs.FS, error) {
	files, ok := map[string]fs.FS{"acid": acidvalues.Files, "carbonation": carbonationvalues.Files, "facts": drinkvalues.Files, "": own}[of]
	if !ok {
		return nil, fmt.Errorf("there are no check values of %q", of)
	}
	return files, nil
}

// row is a line of a table by its headings.
type row map[string]string

func readRows(files fs.FS, name string) ([]row, error) {
	f, err := files.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(lines) < 2 {
		return nil, errors.New("has no rows")
	}
	var rows []row
	for _, line := range lines[1:] {
		cells := row{}
		for i, heading := range lines[0] {
			cells[heading] = line[i]
		}
		rows = append(rows, cells)
	}
	return rows, nil
}

func (t table) takes(r row) bool {
	for name, cells := range t.Rows {
		if !slices.Contains(cells, r[name]) {
			return false
		}
	}
	return true
}

// check is nil for a row without the value wanted.
func (t table) check(r row) (*Check, error) {
	f := filler{row: r}
	want := f.fill(t.Want)
	c := Check{ID: slug(f.fill(t.ID)), Model: slug(f.fill(t.Model)), Given: f.given(t.Given),
		Why: f.fill(t.Why), Source: f.fill(t.Source), Basis: beverage.Basis(f.fill(t.Basis))}
	allowed := f.fill(t.Allowed + t.AllowedPercent)
	if f.err != nil || want == "" {
		return nil, f.err
	}
	var okWant, okAllowed bool
	if c.Want, okWant = float(want); !okWant {
		return nil, fmt.Errorf("%q is not a number", want)
	}
	if c.Allowed, okAllowed = float(allowed); !okAllowed {
		return nil, fmt.Errorf("%q is not a number", allowed)
	}
	if t.AllowedPercent != "" {
		c.Allowed *= max(c.Want, -c.Want) / perHundred
	}
	return &c, nil
}

// filler puts cells in the place of {column} and keeps the first error.
type filler struct {
	row row
	err error
}

var column = regexp.MustCompile(`\{[^}]*\}`)

func (f *filler) fill(template string) string {
	return column.ReplaceAllStringFunc(template, func(name string) string {
		cell, ok := f.row[strings.Trim(name, "{}")]
		if !ok && f.err == nil {
			f.err = fmt.Errorf("no column %s", name)
		}
		return cell
	})
}

func (f *filler) given(templates map[string]any) map[string]any {
	values := map[string]any{}
	for key, v := range templates {
		if s, ok := v.(string); ok {
			v = f.fill(s)
		}
		if v != "" {
			values[key] = v
		}
	}
	return values
}

var notInID = regexp.MustCompile(`[^a-z0-9./+-]+`)

// slug makes an id of words: lower case, hyphens, no empty part.
func slug(s string) string {
	var parts []string
	for _, p := range strings.Split(notInID.ReplaceAllString(strings.ToLower(s), "-"), "/") {
		if p = strings.Trim(p, "-"); p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, "/")
}
