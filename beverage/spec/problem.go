// Package spec reads a drink's spec file, TOML, into a beverage.Drink. Every
// problem of a file is told at once, each with file, line, column, key, what was
// read and what would do. Nothing is filled in that the file does not say.
package spec

import (
	"fmt"
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
