package logfile

import (
	"bytes"
	"context"
	"fmt"
	"io"
)

// blockBytes is how much text is handed on at a time; no line is longer.
const blockBytes = 256 << 10

// block is whole lines of text; the last block of a file may end without a line
// feed. err is why there is no more, io.EOF at the end.
type block struct {
	text []byte
	err  error
}

// blockReader cuts a stream into blocks.
type blockReader struct {
	r    io.Reader
	rest []byte // of a line, left over from the block before
}

// next fills buf, which must hold blockBytes, with whole lines.
func (b *blockReader) next(buf []byte) block {
	n := copy(buf, b.rest)
	b.rest = b.rest[:0]
	for n < len(buf) {
		m, err := b.r.Read(buf[n:])
		n += m
		if err != nil {
			return block{buf[:n], err}
		}
	}
	end := bytes.LastIndexByte(buf, '\n') + 1
	if end == 0 {
		return block{buf, errLongLine}
	}
	b.rest = append(b.rest, buf[end:]...)
	return block{buf[:end], nil}
}

// errLongLine ends reading at a line too long for any recorder.
var errLongLine = fmt.Errorf("a line of more than %d bytes is no row of a recorder", maxLine)

// blocksInFlight is how many blocks may wait between reading and parsing.
const blocksInFlight = 6

// blockStream reads blocks ahead.
type blockStream struct {
	ready chan block
	free  chan []byte
}

// stream reads blocks in a goroutine of its own, until the file ends or ctx does.
func stream(ctx context.Context, blocks *blockReader) *blockStream {
	s := &blockStream{make(chan block, blocksInFlight), make(chan []byte, blocksInFlight)}
	for range blocksInFlight - 1 {
		s.free <- make([]byte, blockBytes)
	}
	go s.read(ctx, blocks)
	return s
}

func (s *blockStream) read(ctx context.Context, blocks *blockReader) {
	for {
		select {
		case <-ctx.Done():
			return
		case buf := <-s.free:
			b := blocks.next(buf[:blockBytes])
			select {
			case <-ctx.Done():
				return
			case s.ready <- b:
			}
			if b.err != nil {
				return
			}
		}
	}
}

// next hands a used block back and gives the one after it.
func (s *blockStream) next(ctx context.Context, used block) (block, error) {
	s.free <- used.text[:0] // never blocks: there is room for all of them
	select {
	case b := <-s.ready:
		return b, nil
	case <-ctx.Done():
		return block{}, ctx.Err()
	}
}
