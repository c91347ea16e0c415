package spec

import (
	"bytes"
	"errors"
	"slices"
	"sort"
	"unicode/utf8"

	toml "github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"posset/beverage"
	"posset/beverage/quantity"
)

// document is a parsed file.
type document struct {
	file     string
	data     []byte
	lines    []int // offset of the first byte of each line
	root     *node
	count    int       // keys, elements and tables so far
	last     int       // offset of the key last seen
	fatal    *Problem  // a file that no spec can be: nothing else is told
	problems []Problem // what is not TOML, and keys given twice
	broken   bool      // a line could not be read, so what seems missing may be there
}

// parseDocument builds the tree. A line that cannot be read is told, blanked,
// and the rest read without it, so that all problems are told at once.
func parseDocument(file string, data []byte) *document {
	var told []Problem
	for {
		d := &document{file: file, data: data, lines: lineStarts(data), root: &node{}}
		wrong, alone := d.parse()
		if wrong == nil && d.fatal == nil && len(told)+len(d.problems) == 0 {
			d.forbidden()
		}
		if wrong == nil || !alone || len(told) == mostShown {
			if wrong != nil {
				told = append(told, *wrong)
			}
			d.broken = len(told) > 0
			d.problems = append(told, d.problems...)
			return d
		}
		told = append(told, *wrong)
		data = d.without(wrong.Place.Line)
	}
}

// parse reads until the first line that is not TOML. alone tells that the rest
// can be read without that line.
func (d *document) parse() (wrong *Problem, alone bool) {
	var p unstable.Parser
	p.Reset(d.data)
	table := d.root
	for d.fatal == nil && p.NextExpression() {
		table = d.expression(p.Expression(), table)
	}
	var syntax *unstable.ParserError
	if !errors.As(p.Error(), &syntax) {
		return nil, false
	}
	line, column := d.position(int(p.Range(syntax.Highlight).Offset))
	source := d.source(line)
	alone = len(source) > 0 && source[0] != '[' && d.startsKey(line)
	return d.notTOML(line, column, syntax.Message), alone
}

// startsKey tells whether the line begins a key of its own rather than going
// on with a list or a long text from above.
func (d *document) startsKey(line int) bool {
	var p unstable.Parser
	p.Reset(d.data[:d.lines[line-1]])
	for p.NextExpression() {
		continue
	}
	return p.Error() == nil
}

// without returns the file with a line blanked.
func (d *document) without(line int) []byte {
	data := slices.Clone(d.data)
	end := len(data)
	if line < len(d.lines) {
		end = d.lines[line] - 1
	}
	for i := d.lines[line-1]; i < end; i++ {
		data[i] = ' '
	}
	return data
}

// forbidden finds what parses line by line but is not TOML as a whole: the
// decoder holds the tables against each other.
func (d *document) forbidden() {
	var nothing struct{}
	var wrong *toml.DecodeError
	if errors.As(toml.Unmarshal(d.data, &nothing), &wrong) {
		line, column := wrong.Position()
		d.problems = append(d.problems, *d.notTOML(line, column, wrong.Error()))
	}
}

func lineStarts(data []byte) []int {
	starts := make([]int, 1, bytes.Count(data, []byte{'\n'})+1)
	for i, c := range data {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// position turns an offset into line and column, both counted from 1.
func (d *document) position(offset int) (line, column int) {
	line = d.line(offset)
	return line, utf8.RuneCount(d.data[d.lines[line-1]:offset]) + 1
}

func (d *document) line(offset int) int { return sort.SearchInts(d.lines, offset+1) }

// source is the text of a line, for messages.
func (d *document) source(line int) string {
	end := len(d.data)
	if line < len(d.lines) {
		end = d.lines[line] - 1
	}
	return string(bytes.TrimSpace(d.data[d.lines[line-1]:end]))
}

// problem makes one at an offset.
func (d *document) problem(offset int, key, read, help string) Problem {
	line, column := d.position(offset)
	return Problem{Place: beverage.Place{File: d.file, Line: line, Key: key}, Column: column, Read: read, Help: help}
}

func (d *document) stop(read, help string) {
	p := d.problem(d.last, "", read, help)
	d.fatal = &p
}

// twice notes a key that is given again.
func (d *document) twice(n *node, at int) {
	if len(d.problems) >= mostKept {
		return
	}
	read := quantity.Quote(n.name) + " is given twice, first in line " + itoa(d.line(n.at))
	d.problems = append(d.problems, d.problem(at, n.path, read, "keep one of them"))
}
