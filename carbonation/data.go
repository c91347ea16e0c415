package carbonation

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strings"
)

//go:embed data/*.csv
var files embed.FS

// table reads one of the data files: its rows without the heading, each as long
// as that.
func table(name string) ([][]string, error) {
	text, err := files.ReadFile("data/" + name)
	if err != nil {
		return nil, err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("carbonation: data file %s: %w", name, err)
	}
	if len(rows) < 2 {
		return nil, fmt.Errorf("carbonation: data file %s has no rows", name)
	}
	return rows[1:], nil
}
