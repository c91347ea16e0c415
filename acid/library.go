package acid

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/*.csv
var dataFiles embed.FS

// library is the constants as read from data/, ready for the solver.
type library struct {
	files      fs.FS
	components []Component
	index      map[string]int
	hydroxides [metals]*complexInfo
	minerals   []Mineral
	solutes    []WaterSolute
	titratable []TitratableAcid
	doubts     map[doubtKey]doubt
}

// loadLibrary reads the embedded data once. It fails only when a data file is
// damaged, which the tests rule out.
var loadLibrary = sync.OnceValues(func() (*library, error) { return readLibrary(dataFiles) })

func readLibrary(files fs.FS) (*library, error) {
	lib := &library{files: files, index: map[string]int{}, doubts: map[doubtKey]doubt{}}
	steps := []func(*library) error{readDoubt, readComponents, readDissociation, readFunctions, readComplexes,
		readSolubility, readSolutes, readTitratable}
	for _, step := range steps {
		if err := step(lib); err != nil {
			return nil, err
		}
	}
	return lib, nil
}

// row is one line of a data file by column name.
type row struct {
	file string
	line int
	cell map[string]string
	err  error
}

func (r *row) text(column string) string {
	v, ok := r.cell[column]
	if !ok && r.err == nil {
		r.err = fmt.Errorf("acid: data/%s has no column %q", r.file, column)
	}
	return v
}

func (r *row) number(column string) float64 {
	v, err := strconv.ParseFloat(r.text(column), 64)
	if (err != nil || math.IsNaN(v) || math.IsInf(v, 0)) && r.err == nil {
		r.err = fmt.Errorf("acid: data/%s line %d: %q is not a number for %s", r.file, r.line, r.cell[column], column)
	}
	return v
}

func (r *row) integer(column string) int { return int(r.number(column)) }

func (r *row) fail(format string, args ...any) error {
	if r.err != nil {
		return r.err
	}
	return fmt.Errorf("acid: data/%s line %d: "+format, append([]any{r.file, r.line}, args...)...)
}

// eachRow reads a data file and hands its rows to use, in order.
func (lib *library) eachRow(file string, use func(*row) error) error {
	f, err := lib.files.Open("data/" + file)
	if err != nil {
		return fmt.Errorf("acid: %w", err)
	}
	defer f.Close()
	reader := csv.NewReader(f)
	reader.Comment = '#'
	head, err := reader.Read()
	if err != nil {
		return fmt.Errorf("acid: data/%s: %w", file, err)
	}
	for {
		record, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return fmt.Errorf("acid: data/%s: %w", file, err)
		}
		r := &row{file: file, cell: make(map[string]string, len(head))}
		r.line, _ = reader.FieldPos(0)
		for i, name := range head {
			r.cell[name] = strings.TrimSpace(record[i])
		}
		if err := use(r); err != nil {
			return err
		}
		if r.err != nil {
			return r.err
		}
	}
}
