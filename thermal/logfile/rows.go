package logfile

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
)

// readText reads a divided text from its opening on.
func readText(ctx context.Context, text *bufio.Reader, name string, o Options) (*Log, error) {
	l, err := understand(text, name, o, false)
	if err != nil {
		return nil, err
	}
	return readRows(ctx, text, l, name, o)
}

// understand finds out from the opening of a text where its clock and its
// temperatures stand. It reads nothing off.
func understand(text *bufio.Reader, name string, o Options, workbook bool) (*layout, error) {
	head, err := text.Peek(sniffBytes)
	if err != nil && err != io.EOF {
		return nil, fmt.Errorf("%s: cannot be read: %w", name, err)
	}
	t, err := findTable(name, head, err == io.EOF)
	if err != nil {
		return nil, err
	}
	hs := t.headings()
	form, err := findTime(name, &t, hs, o, workbook)
	if err != nil {
		return nil, err
	}
	l, err := findColumns(name, t, form, hs, o)
	l.table.lines, l.table.later, l.table.rest = nil, nil, nil // they go when reading goes on
	return &l, err
}

// rowReader turns lines into rows of windows.
type rowReader struct {
	name       string
	layout     *layout
	clock      clockReader
	plan       []stretch
	sep, mark  byte
	alwaysLong bool // no row is plain

	line         int
	rows         int // handed on
	skipped      int
	firstSkipped int // line
	cells        [][]byte
	decimals     []int // most decimals written in each column
	fewest       int   // of these, as known to plainNumbers
	behind       int   // decimals of the latest number
	before       int   // the form that fits, of those for these decimals
	forms        [maxUsualBehind + 1][2]form
	texts        []string
}

// longRowsOnly leaves no row to the short way; for tests.
var longRowsOnly = false

// stretch is a run of neighbouring cells of a row: numbers of neighbouring
// columns, or one cell that is the clock or is passed over.
type stretch struct {
	column, columns int
	clock           bool
}

func newRowReader(l *layout, name string) *rowReader {
	r := &rowReader{
		name: name, layout: l, clock: clockReader{form: l.time}, sep: l.table.sep, mark: l.table.mark, alwaysLong: l.time.b >= 0 || longRowsOnly,
		decimals: make([]int, len(l.columns)), texts: make([]string, 0, maxTexts),
		forms: usualForms(l.table.mark, l.table.sep),
	}
	next := 0
	for i := 0; i <= max(l.time.a, l.columns[len(l.columns)-1].index); i++ {
		s := stretch{clock: i == l.time.a}
		if next < len(l.columns) && l.columns[next].index == i {
			s.column, s.columns = next, 1
			next++
		}
		if n := len(r.plan); s.columns == 1 && n > 0 && r.plan[n-1].columns > 0 {
			r.plan[n-1].columns++
			continue
		}
		r.plan = append(r.plan, s)
	}
	return r
}

// take reads the lines of a block into the window, as far as it holds them, and
// returns what is left of the block.
func (r *rowReader) take(w *window, text []byte) (rest []byte, err error) {
	for len(text) > 0 && !w.full() {
		if r.line >= r.layout.table.first && !r.alwaysLong {
			if rest, ok := r.plainRow(w, text); ok {
				r.line++
				text = rest
				continue
			}
		}
		line := text
		if n := bytes.IndexByte(text, '\n'); n >= 0 {
			line, text = text[:n], text[n+1:]
		} else {
			text = nil
		}
		r.line++
		if len(line) > maxLine {
			return nil, fmt.Errorf("%s:%d: %w", r.name, r.line, errLongLine)
		}
		if r.line > r.layout.table.first {
			r.row(w, trimEnd(line))
		}
	}
	return text, nil
}

// failed says why reading ended before the file did.
func (r *rowReader) failed(err error) error {
	if errors.Is(err, errLongLine) {
		return fmt.Errorf("%s:%d: %w", r.name, r.line+1, err)
	}
	return fmt.Errorf("%s: cannot be read after line %d: %w", r.name, r.line, err)
}

// row reads one line into the window, or counts it among the skipped.
func (r *rowReader) row(w *window, line []byte) {
	if len(trimBlank(line)) == 0 {
		return
	}
	l := r.layout
	r.cells = splitCells(r.cells[:0], line, l.table.sep)
	t, ok := r.clock.seconds(r.cell(l.time.a), r.cell(l.time.b))
	if !ok {
		if r.skipped++; r.skipped == 1 {
			r.firstSkipped = r.line
		}
		return
	}
	for i, c := range l.columns {
		w.set(i, r.value(i, r.cell(c.index)))
	}
	w.end(t, r.line)
}

func (r *rowReader) cell(i int) []byte {
	if i >= 0 && i < len(r.cells) {
		return r.cells[i]
	}
	return nil
}

func (r *rowReader) value(column int, cell []byte) float64 {
	if v, decimals, ok := parseNumber(cell, r.layout.table.mark); ok && !math.IsInf(v, 0) {
		r.decimals[column] = max(r.decimals[column], decimals)
		return v
	}
	if isMissing(cell) {
		return missing
	}
	return textCell(r.textOf(string(cell)))
}

// textOf remembers an error text; when there are too many the last stands for
// the rest.
func (r *rowReader) textOf(text string) int {
	for i, t := range r.texts {
		if t == text {
			return i
		}
	}
	if len(r.texts) < maxTexts {
		r.texts = append(r.texts, clip(text, 20))
	}
	return len(r.texts) - 1
}

// hand finishes a window for judging: what the reader goes on changing is copied.
func (r *rowReader) hand(w *window, last bool) {
	r.rows += w.rows
	copy(w.decimals, r.decimals)
	w.texts, w.base, w.last = r.texts, r.clock.base, last
}
