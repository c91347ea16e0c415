package console

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Say writes one line to the error stream; what does not print is escaped, and
// a line that nobody would read to its end is cut.
func (c *Console) Say(line string) {
	fmt.Fprintln(c.Err, printable(line)) // nowhere is left to tell of a failure
}

// Sayf is Say with a format.
func (c *Console) Sayf(format string, args ...any) { c.Say(fmt.Sprintf(format, args...)) }

func printable(s string) string {
	var b strings.Builder
	for _, r := range s {
		if b.Len() > longestErrorLine {
			b.WriteString("...")
			break
		}
		switch {
		case r == utf8.RuneError:
			b.WriteByte('?')
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r == '\t':
			b.WriteByte(' ')
		default:
			b.WriteString(strings.Trim(fmt.Sprintf("%+q", r), "'"))
		}
	}
	return b.String()
}
