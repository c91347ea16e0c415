package logfile

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"sync"
)

// ReadFile reads a recorder's file and judges it: CSV or other divided text,
// .xlsx, either of them gzipped. It fails with one line when the file is no
// log, when its unit, date order or clock is not told, or when the options do
// not fit it.
func ReadFile(ctx context.Context, path string, o Options) (*Log, error) {
	f, err := Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return Read(ctx, f, path, o)
}

// Open opens a recorder's file for Read. It fails with one line.
func Open(path string) (*os.File, error) {
	f, err := os.Open(path)
	if err != nil {
		var p *os.PathError
		if errors.As(err, &p) {
			err = p.Err
		}
		return nil, fmt.Errorf("%s: cannot be opened: %w", path, err)
	}
	if info, err := f.Stat(); err == nil && info.IsDir() {
		f.Close()
		return nil, fmt.Errorf("%s: is a folder, not a log", path)
	}
	return f, nil
}

// Read is ReadFile for an open stream; name is used in messages only.
func Read(ctx context.Context, r io.Reader, name string, o Options) (*Log, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	sum := sha256.New()
	raw := io.TeeReader(&stoppable{ctx, r}, sum)
	br := readers.Get().(*bufio.Reader)
	br.Reset(raw)
	log, err := readPacked(ctx, br, name, o)
	if err != nil {
		return nil, err // its reader may still be at work and is left alone
	}
	readers.Put(br)
	if _, err := io.Copy(io.Discard, raw); err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", name, err)
	}
	log.File = name
	log.SHA256 = hex.EncodeToString(sum.Sum(nil))
	return log, nil
}

// check refuses options that no log could be read with.
func (o Options) check() error {
	switch {
	case !(o.ToleranceC >= 0) || math.IsInf(o.ToleranceC, 0):
		return fmt.Errorf("sensor tolerance %g C° is not zero or more", o.ToleranceC)
	case o.Unit != "" && !isTemperatureUnit(o.Unit):
		return fmt.Errorf("unit %q is none of C, F, K", o.Unit)
	case o.Dates != "" && o.Dates != string(dayFirst) && o.Dates != string(monthFirst) && o.Dates != string(yearFirst):
		return fmt.Errorf("date order %q is none of dmy, mdy, ymd", o.Dates)
	case len(o.Bases) == 0:
		return errors.New("no basis to integrate lethality on")
	}
	for _, b := range o.Bases {
		if !(b.Ref.ZC > 0) || math.IsInf(b.Ref.ZC, 0) || math.IsNaN(b.Ref.TrefC+b.MinC) || math.IsInf(b.Ref.TrefC+b.MinC, 0) {
			return fmt.Errorf("basis %q: reference temperature %g °C with z %g C° cannot be integrated on", b.Name, b.Ref.TrefC, b.Ref.ZC)
		}
		if b.Bound != nil && !(b.Bound.Below.ZC > 0 && b.Bound.Above.ZC > 0) {
			return fmt.Errorf("basis %q: its bound has no z", b.Name)
		}
	}
	for _, at := range o.StaysAtC {
		if math.IsNaN(at) || math.IsInf(at, 0) {
			return fmt.Errorf("stay at %g °C is not a temperature", at)
		}
	}
	return nil
}

// stoppable ends reading when its context does.
type stoppable struct {
	ctx context.Context
	r   io.Reader
}

func (s *stoppable) Read(p []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.r.Read(p)
}

const (
	gzipMagic = "\x1f\x8b"
	zipMagic  = "PK\x03\x04"
	oleMagic  = "\xd0\xcf\x11\xe0"
)

// readers are used again from file to file.
var readers = sync.Pool{New: func() any { return bufio.NewReaderSize(nil, sniffBytes) }}

// readPacked unpacks gzip, once, and reads what is inside.
func readPacked(ctx context.Context, br *bufio.Reader, name string, o Options) (*Log, error) {
	if magic, _ := br.Peek(2); string(magic) != gzipMagic {
		return readPlain(ctx, br, name, o)
	}
	unzipped, err := gzip.NewReader(br)
	if err != nil {
		return nil, fmt.Errorf("%s: damaged gzip: %w", name, err)
	}
	log, err := readPlain(ctx, bufio.NewReaderSize(unzipped, sniffBytes), name, o)
	if err == nil {
		log.Understood.Format += " in gzip"
	}
	return log, err
}

func readPlain(ctx context.Context, br *bufio.Reader, name string, o Options) (*Log, error) {
	magic, _ := br.Peek(4)
	switch {
	case bytes.Equal(magic, []byte(zipMagic)):
		return readWorkbook(ctx, br, name, o)
	case bytes.Equal(magic, []byte(oleMagic)):
		return nil, fmt.Errorf("%s: is a workbook of the old .xls kind; save it as .xlsx or CSV", name)
	}
	text, encoding, err := decodeText(br, name)
	if err != nil {
		return nil, err
	}
	log, err := readText(ctx, text, name, o)
	if err != nil {
		return nil, err
	}
	log.Understood.Format, log.Understood.Encoding = "text", encoding
	return log, nil
}
