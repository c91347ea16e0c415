package report

import (
	"strings"

	"github.com/rivo/uniseg"
)

// width is how many columns of a terminal s takes.
func width(s string) int {
	if isPlain(s) {
		return len(s)
	}
	return uniseg.StringWidth(s)
}

// isPlain tells whether s is printable ASCII, as nearly all of our text is:
// then nothing needs to be looked up.
func isPlain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// wrap breaks s at spaces into lines of at most limit columns; a word that is
// longer is broken where it must be. The empty string is one empty line.
func wrap(s string, limit int) []string {
	limit = max(limit, 1)
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && width(line)+1+width(word) <= limit {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		broken := split(word, limit)
		lines = append(lines, broken[:len(broken)-1]...)
		line = broken[len(broken)-1]
	}
	return append(lines, line)
}

// split cuts a word into pieces of at most limit columns, between characters
// as a reader sees them.
func split(word string, limit int) []string {
	var pieces []string
	piece, taken := "", 0
	g := uniseg.NewGraphemes(word)
	for g.Next() {
		if taken > 0 && taken+g.Width() > limit {
			pieces = append(pieces, piece)
			piece, taken = "", 0
		}
		piece += g.Str()
		taken += g.Width()
	}
	return append(pieces, piece)
}

// pad fills s with spaces to w columns, on the left for numbers.
func pad(s string, w int, left bool) string {
	fill := strings.Repeat(" ", max(0, w-width(s)))
	if left {
		return fill + s
	}
	return s + fill
}
