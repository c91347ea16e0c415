package logfile

import (
	"slices"
	"sync"
)

// windowRows is how many rows are judged at a time.
var windowRows = 8192 // a variable for tests only, which judge short logs in many windows

// lead is room before a window's own rows for those looked at again.
const lead = 2 * lookahead

// window is a stretch of rows, column by column, in the file's own unit. Each
// column begins with lead places that are not its own.
type window struct {
	rows   int
	stride int       // places of a column
	cells  []float64 // column after column
	t      []float64 // s since the first row
	line   []int     // 1-based line of the file

	decimals []int    // most decimals written in each column so far
	texts    []string // the error texts so far, that cells point at
	base     int64    // whole seconds of the clock that t counts from
	last     bool     // the file ends with it
}

func newWindow(columns, rows int) *window {
	w := windows.Get().(*window)
	w.rows, w.stride, w.last = 0, lead+min(rows, windowRows), false
	w.cells, w.t, w.line, w.decimals = room(w.cells, columns*w.stride), room(w.t, w.stride), room(w.line, w.stride), room(w.decimals, columns)
	return w
}

// windows are used again from file to file.
var windows = sync.Pool{New: func() any { return &window{} }}

// largestKept is the size, in cells, up to which a window is kept for later: one
// of many columns would hold on to memory that few files need.
const largestKept = 1 << 19

// release gives a window back that nobody looks at any more.
func (w *window) release() {
	if w.texts = nil; cap(w.cells) <= largestKept {
		windows.Put(w)
	}
}

// room gives a slice of a length, in the same place where it fits. What stood in
// it stays.
func room[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

func (w *window) full() bool { return lead+w.rows == w.stride }

// set puts a cell into the row that is being read.
func (w *window) set(column int, v float64) { w.cells[column*w.stride+lead+w.rows] = v }

// end finishes the row that is being read.
func (w *window) end(t float64, line int) {
	w.t[lead+w.rows], w.line[lead+w.rows] = t, line
	w.rows++
}

// view is what is judged at a time: some settled rows of before, then new ones.
type view struct {
	t        []float64
	line     []int
	cols     [][]float64
	decimals []int
	texts    []string
	last     bool

	settled int // rows at the start that were put in order before
	done    int // of these, rows that were judged before
}

// view shows the window with some carried rows of the kept columns in its lead.
func (w *window) view(c *carried, kept []int) *view {
	v := &view{decimals: w.decimals, texts: w.texts, last: w.last, settled: len(c.t), done: c.done}
	from, to := lead-len(c.t), lead+w.rows
	v.t, v.line = w.t[from:to], w.line[from:to]
	copy(v.t, c.t)
	copy(v.line, c.line)
	for i := range w.decimals {
		col := w.cells[i*w.stride+from : i*w.stride+to]
		k := i
		if kept != nil {
			k = slices.Index(kept, i)
		}
		if k >= 0 && c.cols != nil {
			copy(col, c.cols[k])
		}
		v.cols = append(v.cols, col)
	}
	return v
}
