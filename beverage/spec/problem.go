// Package spec reads a drink's spec file, TOML, into a beverage.Drink. Every
// problem of a file is told at once, each with file, line, column, key, what was
// read and what would do. Nothing is filled in that the file does not say.
package spec

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
)

// mostShown is how many problems are told one by one.
const mostShown = 10

// Problem is one thing in a file that cannot be used.
type Problem struct {
	Place  beverage.Place
	Column int    // 0: unknown
	Read   string // `"2.4 bar" is neither gauge nor absolute`
	Help   string // `write "2.4 barg" or "2.4 bara"`
}

// longestLine is where a line of a message is cut, in letters.
const longestLine = 900

// String is one line without control characters.
func (p Problem) String() string {
	line := []rune(p.whole())
	if len(line) > longestLine {
		return string(line[:longestLine]) + "..."
	}
	return string(line)
}

func (p Problem) whole() string {
	text := printable(p.Place.File)
	if p.Place.Line > 0 {
		text += ":" + strconv.Itoa(p.Place.Line)
		if p.Column > 0 {
			text += ":" + strconv.Itoa(p.Column)
		}
	}
	if p.Place.Key != "" {
		text += ": " + printable(p.Place.Key)
	}
	text += ": " + p.Read
	if p.Help != "" {
		text += "; " + p.Help
	}
	return text
}

// Problems is the error of a file that cannot be used.
type Problems struct {
	File string
	List []Problem // the first ten, in the order of the file
	More int       // how many further ones there are
}

// Error tells the problems one a line, and then how many more there are.
func (p *Problems) Error() string {
	lines := make([]string, 0, len(p.List)+1)
	for _, one := range p.List {
		lines = append(lines, one.String())
	}
	if p.More > 0 {
		lines = append(lines, fmt.Sprintf("%s: and %d more %s", printable(p.File), p.More, plural("problem", p.More)))
	}
	return strings.Join(lines, "\n")
}

// mostKept bounds the work on a file that is wrong throughout: further problems
// are only counted.
const mostKept = 200

// gathering collects the problems of a spec and of the files that it names.
type gathering struct {
	list []Problem
	more int
}

func (g *gathering) add(p Problem) {
	if g.full() {
		return
	}
	g.list = append(g.list, p)
}

// full counts a problem that is one too many.
func (g *gathering) full() bool {
	if len(g.list) < mostKept {
		return false
	}
	g.more++
	return true
}

// error puts the problems in the order of the file, and those of the files that
// it names after them, and cuts their number. Without problems it is nil.
func (g *gathering) error(file string) error {
	if len(g.list) == 0 {
		return nil
	}
	slices.SortStableFunc(g.list, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(rank(a, file), rank(b, file)), cmp.Compare(a.Place.File, b.Place.File),
			cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Column, b.Column))
	})
	shown := min(len(g.list), mostShown)
	return &Problems{File: file, List: g.list[:shown], More: len(g.list) - shown + g.more}
}

// rank puts the spec itself before the files that it names.
func rank(p Problem, file string) int {
	if p.Place.File == file {
		return 0
	}
	return 1
}

func plural(word string, n int) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

const longestPrinted = 200 // runes of a path or key in a message

// printable is a name as it may stand on a terminal: what does not print is
// escaped, and a very long name loses its middle, so that its end can be read.
func printable(s string) string {
	quoted := strconv.Quote(s)
	s = strings.ReplaceAll(quoted[1:len(quoted)-1], `\"`, `"`)
	s = strings.ReplaceAll(s, `\\`, `\`)
	if r := []rune(s); len(r) > longestPrinted {
		s = string(r[:longestPrinted/3]) + "..." + string(r[len(r)-longestPrinted*2/3:])
	}
	return s
}
