package console

import (
	"context"
	"io"
)

// Input is standard input that an interrupt ends, too: a read of a pipe that
// nobody writes to would otherwise go on for ever.
func (c *Console) Input(ctx context.Context) io.Reader {
	return &interruptible{ctx: ctx, from: c.In}
}

type interruptible struct {
	ctx  context.Context
	from io.Reader
}

type piece struct {
	data []byte
	err  error
}

func (r *interruptible) Read(p []byte) (int, error) {
	if err := r.ctx.Err(); err != nil {
		return 0, err
	}
	got := make(chan piece, 1)
	go func() {
		own := make([]byte, len(p)) // p is the caller's again once an interrupt returns
		n, err := r.from.Read(own)
		got <- piece{own[:n], err}
	}()
	select {
	case <-r.ctx.Done():
		return 0, r.ctx.Err()
	case one := <-got:
		return copy(p, one.data), one.err
	}
}
