package ingredient

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"posset/beverage"
)

//go:embed data
var dataFiles embed.FS

// row is one line of a data table by heading.
type row struct {
	file  string
	heads []string
	cells []string
}

func (r row) get(head string) string {
	for i, h := range r.heads {
		if h == head {
			return r.cells[i]
		}
	}
	return ""
}

// eachRow calls do for every line of an embedded table.
func eachRow(file string, do func(row) error) error {
	text, err := dataFiles.ReadFile("data/" + file)
	if err != nil {
		return err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	r.ReuseRecord = true
	heads, err := r.Read()
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	heads = append([]string(nil), heads...)
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := do(row{file: file, heads: heads, cells: cells}); err != nil {
			return fmt.Errorf("%s: %s: %w", file, cells[0], err)
		}
	}
}

// span reads "1.2", "1..2" or "1..1.4..2": low, typical and high.
func span(cell string) (beverage.Interval, error) {
	parts := strings.Split(cell, "..")
	v := make([]float64, len(parts))
	for i, p := range parts {
		f, err := strconv.ParseFloat(p, 64)
		if err != nil {
			return beverage.Interval{}, fmt.Errorf("%q is not a figure: write 1.2, 1..2 or 1..1.4..2", cell)
		}
		v[i] = f
	}
	switch len(v) {
	case 1:
		return beverage.Point(v[0], beverage.Library), nil
	case 2:
		return ordered(cell, v[0], (v[0]+v[1])/2, v[1])
	case 3:
		return ordered(cell, v[0], v[1], v[2])
	}
	return beverage.Interval{}, fmt.Errorf("%q is not a figure: write 1.2, 1..2 or 1..1.4..2", cell)
}

func ordered(cell string, low, mid, high float64) (beverage.Interval, error) {
	if !(low <= mid && mid <= high) {
		return beverage.Interval{}, fmt.Errorf("%q does not rise: write the low end first", cell)
	}
	return beverage.Interval{Low: low, Mid: mid, High: high, Basis: beverage.Library}, nil
}
