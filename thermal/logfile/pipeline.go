package logfile

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"sync"
)

// windowsInFlight is how many windows may wait between parsing and judging.
const windowsInFlight = 3

// parsed is a window ready to be judged, or why there is none.
type parsed struct {
	w   *window
	err error
}

// blockBuffers are used again from file to file.
var blockBuffers = sync.Pool{New: func() any { return new([blockBytes]byte) }}

// readRows reads all rows and judges them. A file that ends within its first
// block is read in one go; a longer one is read, parsed and judged in turns that
// overlap.
func readRows(ctx context.Context, text io.Reader, l *layout, name string, o Options) (*Log, error) {
	r := newRowReader(l, name)
	a := newAnalysis(l, o)
	blocks := blockReader{r: text}
	buf := blockBuffers.Get().(*[blockBytes]byte)
	first := blocks.next(buf[:])
	if first.err != nil && first.err != io.EOF {
		return nil, r.failed(first.err)
	}
	if err := judgeAll(ctx, r, a, first, &blocks); err != nil {
		return nil, err
	}
	blockBuffers.Put(buf)
	return a.finish(r)
}

// judgeAll reads and parses in goroutines of their own and judges in this one.
func judgeAll(ctx context.Context, r *rowReader, a *analysis, first block, blocks *blockReader) error {
	if first.err == io.EOF {
		return judgeBlock(r, a, first.text)
	}
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	ready, free := make(chan parsed, windowsInFlight), make(chan *window, windowsInFlight)
	for range windowsInFlight {
		free <- newWindow(len(r.layout.columns), windowRows)
	}
	go r.parse(ctx, first, stream(ctx, blocks), ready, free)
	for p := range ready {
		if p.err != nil {
			return p.err
		}
		if err := a.window(p.w); err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
		p.w.rows = 0
		free <- p.w
	}
	if err := ctx.Err(); err != nil {
		return fmt.Errorf("%s: stopped: %w", r.name, err)
	}
	for len(free) > 0 {
		(<-free).release()
	}
	return nil
}

// parse turns blocks into windows until the file ends, something fails or ctx
// ends.
func (r *rowReader) parse(ctx context.Context, b block, blocks *blockStream, ready chan<- parsed, free <-chan *window) {
	defer close(ready)
	w := <-free
	send := func(p parsed) bool {
		select {
		case ready <- p:
			return true
		case <-ctx.Done():
			return false
		}
	}
	for {
		text, err := b.text, error(nil)
		for len(text) > 0 {
			if text, err = r.take(w, text); err != nil {
				send(parsed{err: err})
				return
			}
			if !w.full() {
				continue
			}
			r.hand(w, false)
			if !send(parsed{w: w}) {
				return
			}
			select {
			case w = <-free:
			case <-ctx.Done():
				return
			}
		}
		switch {
		case b.err == io.EOF:
			r.hand(w, true)
			send(parsed{w: w})
			return
		case b.err != nil:
			send(parsed{err: r.failed(b.err)})
			return
		}
		if b, err = blocks.next(ctx, b); err != nil {
			return
		}
	}
}

// judgeBlock reads a file of one block.
func judgeBlock(r *rowReader, a *analysis, text []byte) error {
	w := newWindow(len(r.layout.columns), bytes.Count(text, []byte("\n"))+1)
	for {
		rest, err := r.take(w, text)
		if err != nil {
			return err
		}
		r.hand(w, len(rest) == 0)
		if err := a.window(w); err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
		if w.last {
			w.release()
			return nil
		}
		text = rest
		w.rows = 0
	}
}
