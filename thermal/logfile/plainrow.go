package logfile

import (
	"bytes"
	"encoding/binary"
	"math/bits"
	"slices"
)

// plainRow reads a row of nothing but a clock in one cell and plain numbers, as
// nearly all rows are, from the start of the text, and returns the rest. ok is
// false, with nothing read, for any other row: quotes, blanks, empty cells,
// exponents, error texts, a damaged clock, the last line of all.
func (r *rowReader) plainRow(w *window, text []byte) (rest []byte, ok bool) {
	at, t := 0, 0.
	for _, s := range r.plan {
		if s.columns > 0 {
			if at = r.plainNumbers(w, text, at, s); at < 0 {
				return text, false
			}
			continue
		}
		if s.clock {
			if t, at, ok = r.plainClock(text, at); !ok {
				return text, false
			}
		} else {
			cell := plainCell(text[min(at, len(text)):], r.sep)
			if cell == nil || len(cell) > 0 && cell[0] == '"' {
				return text, false
			}
			at += len(cell)
		}
		if at >= len(text) {
			return text, false
		}
		if text[at] == r.sep {
			at++
		}
	}
	n := lineEnd(text, at)
	if n < 0 || n > maxLine {
		return text, false
	}
	w.end(t, r.line+1)
	return text[n:], true
}

// lineEnd is the place after the line feed that ends the row whose wanted cells
// end at a place; -1 where there is none, or where a carriage return within a
// cell says that the cell goes on.
func lineEnd(text []byte, at int) int {
	switch {
	case at < len(text) && text[at] == '\n':
		return at + 1
	case at < len(text) && text[at] == '\r' && (at+1 == len(text) || text[at+1] != '\n'):
		return -1
	}
	end := bytes.IndexByte(text[min(at, len(text)):], '\n')
	if end < 0 {
		return -1
	}
	return at + end + 1
}

// plainClock reads the clock's cell at a place of the text, and returns the place
// after it.
func (r *rowReader) plainClock(text []byte, at int) (tS float64, next int, ok bool) {
	if n := at + r.clock.length; n < len(text) && text[n] == r.sep {
		if whole, fraction, ok := r.clock.sameMinute(text[at:n]); ok {
			return r.clock.since(whole, fraction), n, true
		}
	}
	cell := plainCell(text[min(at, len(text)):], r.sep)
	tS, ok = r.clock.seconds(cell, nil)
	return tS, at + len(cell), ok
}

// plainNumbers reads numbers of neighbouring columns that begin at a place of
// the text, and returns the place after the separator that follows; -1 when one
// of them is not plain.
func (r *rowReader) plainNumbers(w *window, text []byte, at int, run stretch) int {
	cells := w.cells[run.column*w.stride+lead+w.rows:]
	for k := 0; k < run.columns; {
		var n int
		if n, at = r.usualNumbers(cells[k*w.stride:], w.stride, run.columns-k, text, at); n > 0 {
			r.wrote(run.column+k, n)
			k += n
			continue
		}
		v, behind, n := plainNumber(text[min(at, len(text)):], r.mark)
		if at += n; n == 0 || at+1 >= len(text) || text[at] != r.sep && text[at] != '\n' && (text[at] != '\r' || text[at+1] != '\n') {
			return -1
		}
		cells[k*w.stride] = v
		r.behind = behind
		r.wrote(run.column+k, 1)
		if text[at] == r.sep {
			at++
		}
		k++
	}
	return at
}

// wrote remembers that some columns hold as many decimals as the latest number.
func (r *rowReader) wrote(column, columns int) {
	if r.behind <= r.fewest {
		return
	}
	for i := column; i < column+columns; i++ {
		r.decimals[i] = max(r.decimals[i], r.behind)
	}
	r.fewest = slices.Min(r.decimals)
}

// usualNumbers reads numbers of two or three digits before the mark and as many
// behind it as the latest had, a stride apart, until one is different. It
// returns how many they were and the place after them.
func (r *rowReader) usualNumbers(cells []float64, stride, most int, text []byte, at int) (n, next int) {
	if r.behind < 1 || r.behind > maxUsualBehind {
		return 0, at
	}
	forms := &r.forms[r.behind]
	for missed := 0; n < most && missed < len(forms); {
		k, to, ended := forms[r.before].read(cells[n*stride:], stride, most-n, text, at)
		if n, at = n+k, to; ended {
			break
		}
		if missed++; k > 0 {
			missed = 0
		}
		r.before ^= 1
	}
	return n, at
}

// plainCell is the text up to the separator or the end of the line; nil where a
// carriage return stands within it, or there is no end.
func plainCell(text []byte, sep byte) []byte {
	for i, c := range text {
		switch {
		case c == sep || c == '\n':
			return text[:i]
		case c == '\r' && i+1 < len(text) && text[i+1] == '\n':
			return text[:i]
		case c == '\r':
			return nil
		}
	}
	return nil
}

// Patterns for eight characters at a time, the first one lowest.
const (
	eightZeros = 0x3030303030303030 // "00000000"
	tenUp      = 0x7676767676767676 // added to a character less '0', it sets the high bit from 10 on
	highBits   = 0x8080808080808080
)

// plainNumber reads a number of at most seven digits without a sign, with or
// without a decimal mark, from the start of a text. n is its length, 0 when
// there is none or it needs the long way.
func plainNumber(text []byte, mark byte) (v float64, decimals, n int) {
	if len(text) < 8 {
		return 0, 0, 0
	}
	digits := binary.LittleEndian.Uint64(text) ^ eightZeros
	ends := ((digits + tenUp) | digits) & highBits
	first := bits.TrailingZeros64(ends) >> 3
	if first == 0 || first == 8 {
		return 0, 0, 0
	}
	if text[first] != mark {
		return float64(eightDigits(digits << (64 - 8*first))), 0, first
	}
	n = bits.TrailingZeros64(ends&(ends-1)) >> 3
	if n == 8 || n == first+1 {
		return 0, 0, 0
	}
	whole := digits & (1<<(8*first) - 1)
	behind := digits >> 8 &^ (1<<(8*first) - 1)
	decimals = n - first - 1
	return float64(eightDigits((whole|behind)<<(64-8*(n-1)))) / pow10[decimals], decimals, n
}

// eightDigits turns eight digits, the first one lowest, into their number.
func eightDigits(d uint64) uint64 {
	d = (d*10 + d>>8) & 0x00ff00ff00ff00ff
	d = (d*100 + d>>16) & 0x0000ffff0000ffff
	return (d*10000 + d>>32) & 0xffffffff
}
