package report

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// printable makes a string from a file harmless on a terminal and in a table:
// line breaks and tabs become spaces, and whatever does not print (escape
// sequences, text-direction overrides, broken UTF-8) becomes U+FFFD.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsPrint(r):
			return r
		case unicode.IsSpace(r):
			return ' '
		}
		return utf8.RuneError
	}, s)
}

// plainText writes the signs that our own words use in ASCII, for terminals
// whose locale is not UTF-8.
var plainText = strings.NewReplacer("°", "", "µ", "u", "·", ".", "–", "-", "—", "-", "−", "-", "×", "x",
	"≤", "<=", "≥", ">=", "±", "+-", "²", "2", "³", "3", "’", "'", "“", `"`, "”", `"`, "₂", "2", "β", "beta", "α", "alpha")

// ascii is s without anything beyond ASCII: our signs in words, the rest "?".
func ascii(s string) string {
	return strings.Map(func(r rune) rune {
		if r < utf8.RuneSelf {
			return r
		}
		return '?'
	}, plainText.Replace(s))
}
