package logfile

import "sync"

// scratch is room that judging a log needs for a while, used again from file to
// file.
type scratch struct {
	steps, scatter, slopes []float64
	moves                  []move
	rows                   []int
	brk                    []bool
	calm                   calmSpans
}

var scratches = sync.Pool{New: func() any { return &scratch{} }}

// giveBack leaves the room for the next log, once nobody looks at this one.
func (a *analysis) giveBack() {
	s := a.scratch
	s.rows, s.brk = a.seq.order.rows, a.seq.order.brk
	a.scratch, a.seq.order = nil, order{}
	scratches.Put(s)
}
