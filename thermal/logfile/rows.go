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

// windowRows is how many rows are judged at a time.
const windowRows = 8192

// window is a stretch of rows, column by column, in the file's own unit.
type window struct {
	t        []float64 // seconds since the first row
	line     []int     // 1-based line of the file
	cols     [][]float64
	decimals []int    // most decimals written in each column so far
	texts    []string // the error texts that cells point at
}

func (w *window) clear() {
	w.t, w.line = w.t[:0], w.line[:0]
	for i := range w.cols {
		w.cols[i] = w.cols[i][:0]
	}
}

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
	lines := splitLines(bytes.Clone(head), err == io.EOF)
	if len(lines) == 0 && len(head) > 0 {
		return nil, longLine(name, 1)
	}
	t, err := findTable(name, lines)
	if err != nil {
		return nil, err
	}
	hs := t.headings()
	form, err := findTime(name, &t, hs, o, workbook)
	if err != nil {
		return nil, err
	}
	l, err := findColumns(name, t, form, hs, o)
	return &l, err
}

func readRows(ctx context.Context, text *bufio.Reader, l *layout, name string, o Options) (*Log, error) {
	r := &rowReader{name: name, layout: l, clock: clockReader{form: l.time}, text: text}
	return r.readAll(ctx, o)
}

func longLine(name string, line int) error {
	return fmt.Errorf("%s:%d: a line of more than %d bytes is no row of a recorder", name, line, maxLine)
}

// rowReader reads rows into windows.
type rowReader struct {
	name    string
	layout  *layout
	clock   clockReader
	text    *bufio.Reader
	line    int
	rows    int
	skipped int
	first   int // line of the first skipped row
	cells   [][]byte
}

func (r *rowReader) readAll(ctx context.Context, o Options) (*Log, error) {
	w := &window{cols: make([][]float64, len(r.layout.columns)), decimals: make([]int, len(r.layout.columns))}
	a := newAnalysis(r.layout, &r.clock, o)
	for {
		err := r.fill(w)
		if err != nil && err != io.EOF {
			return nil, err
		}
		if e := a.window(w, err == io.EOF); e != nil {
			return nil, fmt.Errorf("%s: %w", r.name, e)
		}
		w.clear()
		if err == io.EOF {
			break
		}
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("%s: stopped: %w", r.name, err)
		}
	}
	return a.finish(r)
}

// fill reads rows until the window is full or the file ends.
func (r *rowReader) fill(w *window) error {
	for len(w.t) < windowRows {
		line, err := r.text.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			return longLine(r.name, r.line+1)
		}
		if err != nil && err != io.EOF {
			return fmt.Errorf("%s: cannot be read after line %d: %w", r.name, r.line, err)
		}
		if len(line) > 0 {
			r.line++
			if r.line > r.layout.table.first {
				r.row(w, bytes.TrimRight(line, "\r\n"))
			}
		}
		if err == io.EOF {
			return io.EOF
		}
	}
	return nil
}

// row reads one line into the window, or counts it among the skipped.
func (r *rowReader) row(w *window, line []byte) {
	if len(trimBlank(line)) == 0 {
		return
	}
	l := r.layout
	r.cells = splitCells(r.cells[:0], line, l.table.sep)
	var b []byte
	if l.time.b >= 0 {
		b = r.cell(l.time.b)
	}
	t, ok := r.clock.seconds(r.cell(l.time.a), b)
	if !ok {
		if r.skipped++; r.skipped == 1 {
			r.first = r.line
		}
		return
	}
	r.rows++
	w.t, w.line = append(w.t, t), append(w.line, r.line)
	for i, c := range l.columns {
		w.cols[i] = append(w.cols[i], r.value(w, i, r.cell(c.index)))
	}
}

func (r *rowReader) cell(i int) []byte {
	if i < len(r.cells) {
		return r.cells[i]
	}
	return nil
}

func (r *rowReader) value(w *window, column int, cell []byte) float64 {
	if v, decimals, ok := parseNumber(cell, r.layout.table.mark); ok && !math.IsInf(v, 0) {
		w.decimals[column] = max(w.decimals[column], decimals)
		return v
	}
	if isMissing(cell) {
		return missing
	}
	return textCell(w.textOf(string(cell)))
}

// textOf remembers an error text; when there are too many the last stands for
// the rest.
func (w *window) textOf(text string) int {
	for i, t := range w.texts {
		if t == text {
			return i
		}
	}
	if len(w.texts) < maxTexts {
		w.texts = append(w.texts, clip(text, 20))
	}
	return len(w.texts) - 1
}
