package ingredient

import (
	"embed"
	"fmt"
	"strconv"
	"strings"

	"posset/beverage"
)

//go:embed data
var dataFiles embed.FS

// table is one data file: its headings, shared by all of its rows.
type table struct {
	file  string
	heads []string
}

// row is one line of a table, cut into cells only when it is read.
type row struct {
	*table
	line string
}

// eachRow calls do for every line of an embedded table that is neither empty
// nor a comment. The first such line holds the headings.
func eachRow(file string, do func(row) error) error {
	data, err := dataFiles.ReadFile("data/" + file)
	if err != nil {
		return err
	}
	var t *table
	for rest := string(data); rest != ""; {
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		switch {
		case line == "" || line[0] == '#':
		case t == nil:
			t = &table{file, cells(line)}
		default:
			if err := do(row{t, line}); err != nil {
				return fmt.Errorf("%s: %w", file, err)
			}
		}
	}
	return nil
}

// cells cuts a line at its commas; a cell in double quotes may hold commas, and
// two double quotes for one.
func cells(line string) []string {
	out := make([]string, 0, strings.Count(line, ",")+1)
	for {
		cell, rest, more := nextCell(line)
		out = append(out, cell)
		if !more {
			return out
		}
		line = rest
	}
}

func nextCell(line string) (cell, rest string, more bool) {
	if !strings.HasPrefix(line, `"`) {
		return strings.Cut(line, ",")
	}
	var b strings.Builder
	for line = line[1:]; ; {
		part, after, closed := strings.Cut(line, `"`)
		b.WriteString(part)
		if !closed || !strings.HasPrefix(after, `"`) {
			return b.String(), strings.TrimPrefix(after, ","), strings.HasPrefix(after, ",")
		}
		b.WriteByte('"')
		line = after[1:]
	}
}

// name is the first cell, which every table of ingredients is looked up by.
func (r row) name() string {
	cell, _, _ := nextCell(r.line)
	return cell
}

// read gives the row's cells by heading.
func (r row) read() (record, error) {
	c := cells(r.line)
	if len(c) != len(r.heads) {
		return record{}, fmt.Errorf("%s: %d cells under %d headings", r.name(), len(c), len(r.heads))
	}
	return record{r.table, c}, nil
}

// record is a row cut into cells.
type record struct {
	*table
	cells []string
}

func (r record) get(head string) string {
	for i, h := range r.heads {
		if h == head {
			return r.cells[i]
		}
	}
	return ""
}

// span reads "1.2", "1..2" or "1..1.4..2": low, typical and high.
func span(cell string) (beverage.Interval, error) {
	low, rest, ranged := strings.Cut(cell, "..")
	mid, high, full := strings.Cut(rest, "..")
	v := [3]float64{}
	texts := [3]string{low, mid, high}
	if !ranged {
		texts = [3]string{low, low, low}
	} else if !full {
		texts = [3]string{low, low, mid}
	}
	for i, text := range texts {
		f, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return beverage.Interval{}, fmt.Errorf("%q is not a figure: write 1.2, 1..2 or 1..1.4..2", cell)
		}
		v[i] = f
	}
	if ranged && !full {
		v[1] = (v[0] + v[2]) / 2
	}
	if !(v[0] <= v[1] && v[1] <= v[2]) {
		return beverage.Interval{}, fmt.Errorf("%q does not rise: write the low end first", cell)
	}
	return beverage.Interval{Low: v[0], Mid: v[1], High: v[2], Basis: beverage.Library}, nil
}
