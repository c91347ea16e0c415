package protein

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"posset/beverage"
)

//go:embed data
var dataFiles embed.FS

// row is one row of a data table, by heading.
type row map[string]string

// readTable reads an embedded table whose first line holds the headings.
func readTable(name string) ([]row, error) {
	text, err := fs.ReadFile(dataFiles, "data/"+name)
	if err != nil {
		return nil, err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var rows []row
	for _, line := range lines[min(1, len(lines)):] {
		one := row{}
		for i, cell := range line {
			one[lines[0][i]] = cell
		}
		rows = append(rows, one)
	}
	return rows, nil
}

// readTOML reads an embedded TOML file and refuses keys it has no use for.
func readTOML(name string, into any) error {
	meta, err := toml.DecodeFS(dataFiles, "data/"+name, into)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	if left := meta.Undecoded(); len(left) > 0 {
		return fmt.Errorf("%s: key %q is unknown", name, left[0])
	}
	return nil
}

// number reads a cell that must hold a number.
func (r row) number(heading string) (float64, error) {
	v, err := strconv.ParseFloat(r[heading], 64)
	if err != nil {
		return 0, fmt.Errorf("%s: %q is not a number", heading, r[heading])
	}
	return v, nil
}

// numberOr reads a cell that may be empty.
func (r row) numberOr(heading string, empty float64) (float64, error) {
	if r[heading] == "" {
		return empty, nil
	}
	return r.number(heading)
}

// source is the row's own source.
func (r row) source() beverage.Source {
	return beverage.Source{Text: r["source"], Basis: beverage.Basis(r["basis"])}
}
