package main

import (
	"context"
	"errors"
	"io"
	"os"

	"posset/beverage"
	"posset/beverage/assess"
)

// mostPipedBytes bounds a log that is piped in.
const mostPipedBytes = 1 << 30

// errPipedTooLong ends reading from standard input.
var errPipedTooLong = errors.New("is larger than 1 GB; name a file")

// readPiped reads a log from standard input as it comes. Held against a target,
// it may have to be read again, so that it is kept in a file for as long as it
// takes.
func readPiped(ctx context.Context, stdin io.Reader, reader *assess.LogReader) (beverage.LogResult, error) {
	in := &spool{in: stdin}
	if reader.Result(nil).Target == "" {
		return reader.ReadFrom(ctx, struct{ io.Reader }{in}, "-")
	}
	f, err := os.CreateTemp("", "posset-*.log")
	if err != nil {
		return beverage.LogResult{}, err
	}
	defer os.Remove(f.Name())
	defer f.Close()
	in.kept = f
	return reader.ReadFrom(ctx, in, "-")
}

// spool is standard input that can be read a second time where it is kept.
type spool struct {
	in    io.Reader
	kept  *os.File // nil keeps nothing
	n     int64
	again bool
}

func (s *spool) Read(p []byte) (int, error) {
	if s.again {
		return s.kept.Read(p)
	}
	n, err := s.in.Read(p)
	if s.n += int64(n); s.n > mostPipedBytes {
		return 0, errPipedTooLong
	}
	if s.kept != nil {
		if _, err := s.kept.Write(p[:n]); err != nil {
			return n, err
		}
	}
	return n, err
}

// Seek goes back to the start, the only place that is asked for.
func (s *spool) Seek(int64, int) (int64, error) {
	s.again = true
	return s.kept.Seek(0, io.SeekStart)
}
