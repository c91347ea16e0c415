package logfile

import (
	"bytes"
	"fmt"
)

// Bounds of what is looked at to understand a file, and of what is a table.
const (
	sniffBytes = 128 << 10
	sniffLines = 300 // within which readings must begin
	sniffRun   = 24  // rows of readings that settle the shape
	maxColumns = 1024
	maxLine    = 64 << 10
)

// separators in the order in which they are tried.
var separators = []byte{';', '\t', ','}

// table is the shape of a text file: where its readings stand and what divides
// their cells.
type table struct {
	sep     byte
	mark    byte     // decimal mark
	cells   int      // of a row of readings
	first   int      // index of the first line of readings
	run     int      // rows of the same shape from there on
	heading int      // index of the heading's line, -1 without
	unitRow int      // index of the unit row's line, -1 without
	lines   [][]byte // up to a few rows of readings
	later   [][]byte // sniffed lines after them
	rest    []byte   // sniffed text after those
}

// splitLines cuts the opening of a file into lines without their ends, and gives
// what is left when there are many. An unfinished last line is left off unless
// the file ends there.
func splitLines(head []byte, atEnd bool) (lines [][]byte, rest []byte) {
	lines = make([][]byte, 0, min(sniffLines, bytes.Count(head, []byte("\n"))+1))
	for len(head) > 0 && len(lines) < sniffLines {
		n := bytes.IndexByte(head, '\n')
		if n < 0 {
			if atEnd {
				lines = append(lines, trimEnd(head))
			}
			break
		}
		lines = append(lines, trimEnd(head[:n]))
		head = head[n+1:]
	}
	return lines, head
}

func trimEnd(line []byte) []byte { return bytes.TrimRight(line, "\r") }

// splitCells cuts a line, honouring double quotes; cells come without quotes
// and outer blanks.
func splitCells(dst [][]byte, line []byte, sep byte) [][]byte {
	for {
		cell, rest, more := nextCell(line, sep)
		dst = append(dst, cell)
		if !more {
			return dst
		}
		line = rest
	}
}

// nextCell cuts the first cell off a line; more tells that a separator followed.
func nextCell(line []byte, sep byte) (cell, rest []byte, more bool) {
	if t := bytes.TrimLeft(line, " "); len(t) > 0 && t[0] == '"' {
		if cell, rest, more, ok := quotedCell(t[1:], sep); ok {
			return cell, rest, more
		}
	}
	n := bytes.IndexByte(line, sep)
	if n < 0 {
		return trimBlank(line), nil, false
	}
	return trimBlank(line[:n]), line[n+1:], true
}

// quotedCell reads up to the closing quote; ok is false when there is none on
// the line or something other than a separator follows it.
func quotedCell(b []byte, sep byte) (cell, rest []byte, more, ok bool) {
	doubled := false
	for i := 0; i < len(b); i++ {
		if b[i] != '"' {
			continue
		}
		if i+1 < len(b) && b[i+1] == '"' {
			doubled = true
			i++
			continue
		}
		cell, rest = trimBlank(b[:i]), bytes.TrimLeft(b[i+1:], " ")
		if doubled {
			cell = bytes.ReplaceAll(cell, []byte(`""`), []byte(`"`))
		}
		if len(rest) == 0 {
			return cell, nil, false, true
		}
		return cell, rest[1:], true, rest[0] == sep
	}
	return nil, nil, false, false
}

// trimBlank drops outer blanks, no-break spaces included.
func trimBlank(b []byte) []byte {
	for len(b) > 0 && (b[0] == ' ' || b[0] == '\r' || b[0] == '\t') {
		b = b[1:]
	}
	for len(b) > 0 && (b[len(b)-1] == ' ' || b[len(b)-1] == '\r' || b[len(b)-1] == '\t') {
		b = b[:len(b)-1]
	}
	return b
}

// cellKinds counts what a row is made of.
type cellKinds struct{ cells, numbers, stamps, texts int }

func kindsOf(cells [][]byte) cellKinds {
	k := cellKinds{cells: len(cells)}
	for _, c := range cells {
		switch {
		case isMissing(c):
		case isNumber(c):
			k.numbers++
		case isStamp(c):
			k.stamps++
		default:
			k.texts++
		}
	}
	return k
}

func isNumber(c []byte) bool {
	if _, _, ok := parseNumber(c, '.'); ok {
		return true
	}
	_, _, ok := parseNumber(c, ',')
	return ok
}

func isStamp(c []byte) bool {
	_, ok := lexStamp(c)
	return ok
}

// starts tells a row that readings can begin with; follows, one that can stand
// among them.
func (k cellKinds) starts() bool {
	return k.numbers+k.stamps >= 2 && k.texts <= k.numbers+k.stamps
}
func (k cellKinds) follows() bool { return k.numbers+k.stamps >= 1 }

// findTable finds the separator under which the longest run of rows are
// readings, and where that run begins.
func findTable(file string, head []byte, atEnd bool) (table, error) {
	lines, rest := splitLines(head, atEnd)
	if len(lines) == 0 && len(head) > 0 {
		return table{}, fmt.Errorf("%s:1: %w", file, errLongLine)
	}
	best := table{}
	for _, sep := range separators {
		if t := longestRun(lines, sep); t.run > best.run || (t.run == best.run && t.cells > best.cells) {
			best = t
		}
	}
	if best.run == 0 {
		return best, noReadings(file, lines)
	}
	if best.cells > maxColumns {
		return best, fmt.Errorf("%s: %d columns; at most %d are read", file, best.cells, maxColumns)
	}
	best.takeInFront(lines)
	best.lines = lines[:min(len(lines), best.first+sniffRun)]
	best.later, best.rest = lines[len(best.lines):], rest
	best.findHeading()
	best.findMark()
	return best, best.checkShape(file)
}

// longestRun finds the longest stretch of rows of readings of the same number
// of cells.
func longestRun(lines [][]byte, sep byte) table {
	best, cur := table{}, table{}
	var cells [][]byte
	for i, line := range lines {
		if len(trimBlank(line)) == 0 {
			continue
		}
		if bytes.IndexByte(line, sep) < 0 {
			cur.run = 0
			continue
		}
		cells = splitCells(cells[:0], line, sep)
		k := kindsOf(cells)
		switch {
		case cur.run > 0 && k.cells == cur.cells && k.follows():
			cur.run++
		case k.starts():
			cur = table{sep: sep, cells: k.cells, first: i, run: 1}
		default:
			cur.run = 0
		}
		if cur.run > best.run {
			best = cur
		}
		if best.run >= sniffRun {
			break
		}
	}
	return best
}

// takeInFront moves the first row up over rows that begin like it but have too
// few values to be known for readings by themselves: a probe that starts late.
func (t *table) takeInFront(lines [][]byte) {
	leads := func(i int) bool {
		cells := splitCells(nil, lines[i], t.sep)
		return len(cells) == t.cells && kindsOf(cells).follows() && (isNumber(cells[0]) || isStamp(cells[0]))
	}
	for t.first > 0 && leads(t.first) && leads(t.first-1) {
		t.first--
	}
}

// noReadings says why a file holds none.
func noReadings(file string, lines [][]byte) error {
	for _, line := range lines {
		if len(trimBlank(line)) > 0 {
			return fmt.Errorf("%s: no row of readings (a time and a temperature, divided by comma, semicolon or tab)", file)
		}
	}
	return fmt.Errorf("%s: the file is empty", file)
}
