package main

import (
	"context"
	"errors"
	"io"
	"os"
	"strings"

	"posset/beverage"
	"posset/beverage/assess"
)

// mostPipedBytes bounds a log that is piped in.
const mostPipedBytes = 1 << 30

// readPiped reads a log from standard input. A workbook is read from its end,
// so what was piped is kept in a file for as long as it takes.
func readPiped(ctx context.Context, stdin io.Reader, reader *assess.LogReader) (beverage.LogResult, error) {
	f, err := os.CreateTemp("", "posset-*.log")
	if err != nil {
		return beverage.LogResult{}, err
	}
	defer os.Remove(f.Name())
	defer f.Close()
	n, err := io.Copy(f, io.LimitReader(stdin, mostPipedBytes+1))
	switch {
	case err != nil:
		return beverage.LogResult{}, errors.New("-: cannot be read: " + err.Error())
	case n > mostPipedBytes:
		return beverage.LogResult{}, errors.New("-: is larger than 1 GB; name a file")
	}
	l, err := reader.Read(ctx, f.Name())
	if err != nil {
		return l, errors.New(strings.ReplaceAll(err.Error(), f.Name(), "-"))
	}
	l.File = "-"
	return l, nil
}
