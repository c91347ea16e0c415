package main

import (
	"context"
	"errors"
	"testing"

	"posset/cmd/posset/internal/console"
)

func TestAnInterruptIsToldAndAResultIsKept(t *testing.T) {
	over, cancel := context.WithCancel(context.Background())
	cancel()
	broken := errors.New("a read was broken off")
	for _, c := range []struct {
		ctx  context.Context
		err  error
		want error
	}{
		{context.Background(), nil, nil},
		{context.Background(), broken, broken},
		{context.Background(), console.ErrOpen, console.ErrOpen},
		{over, broken, context.Canceled},
		{over, nil, nil},
	} {
		done := make(chan error, 1)
		done <- c.err
		if got := outcome(c.ctx, done); !errors.Is(got, c.want) || (got == nil) != (c.want == nil) {
			t.Errorf("%v: got %v, want %v", c.err, got, c.want)
		}
	}
	if got := outcome(over, make(chan error)); !errors.Is(got, context.Canceled) {
		t.Errorf("a command that never ends: got %v", got)
	}
}
