package quantity

import (
	"strconv"
	"strings"
)

// Error says what was read, what is wrong with it, and what would do.
type Error struct {
	Text  string // as written
	Is    string // "has no unit"
	Write string // `write "93 C"`
}

// Error is one line without control characters.
func (e *Error) Error() string { return Quote(e.Text) + " " + e.Is + "; " + e.Write }

const longestQuote = 70 // bytes as shown

// Quote shows what a user wrote on one line: quoted, what does not print
// escaped, and cut when long.
func Quote(s string) string {
	shown := 0
	for i, c := range s {
		if shown += len(strconv.Quote(string(c))) - 2; shown > longestQuote {
			return strconv.Quote(s[:i]) + "..."
		}
	}
	return strconv.Quote(s)
}

// Either joins offers for an error: `"a", "b" or "c"`.
func Either(offers []string) string {
	quoted := make([]string, len(offers))
	for i, o := range offers {
		quoted[i] = Quote(o)
	}
	if len(quoted) < 2 {
		return strings.Join(quoted, "")
	}
	last := len(quoted) - 1
	return strings.Join(quoted[:last], ", ") + " or " + quoted[last]
}

// such names the dimensions with an example: `a volume such as "330 mL"`.
func such(wanted []Dimension) string {
	if len(wanted) == 0 {
		return `a number and a unit, such as "330 mL"`
	}
	if len(wanted) == 1 {
		return wanted[0].String() + " such as " + Quote(wanted[0].Example())
	}
	examples := make([]string, 0, mostOffers)
	for _, d := range wanted[:min(len(wanted), mostOffers)] {
		examples = append(examples, d.Example())
	}
	return "it as " + Either(examples)
}

// withUnits offers a bare number with the units that were likely meant.
func withUnits(n string, wanted []Dimension) string {
	var offers []string
	for _, d := range wanted[:min(len(wanted), mostOffers)] {
		about := dimensions[d]
		offers = append(offers, n+" "+about.units[0])
		if len(wanted) == 1 && about.units[1] != "" {
			offers = append(offers, n+" "+about.units[1])
		}
	}
	if len(offers) == 0 {
		return "the unit too, such as " + Quote(n+" mL")
	}
	return Either(offers)
}
