package quantity

import (
	"slices"
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

// want is what a quantity is wanted as: one of the dimensions (none: any), and
// the example that an error offers ("": that of the dimension).
type want struct {
	dims    []Dimension
	example string
}

// such names what is wanted with an example: `a volume such as "330 mL"`.
func (w want) such() string {
	switch {
	case len(w.dims) == 0:
		return `a number and a unit, such as "330 mL"`
	case len(w.dims) == 1 && w.example != "":
		return w.dims[0].String() + " such as " + Quote(w.example)
	case len(w.dims) == 1:
		return w.dims[0].String() + " such as " + Quote(w.dims[0].Example())
	}
	examples := make([]string, 0, mostOffers)
	for _, d := range w.dims[:min(len(w.dims), mostOffers)] {
		examples = append(examples, d.Example())
	}
	return "it as " + Either(examples)
}

// units offers a bare number with the units that were likely meant.
func (w want) units(figure string) string {
	units := w.likely()
	if len(units) == 0 {
		return "the unit too, such as " + Quote(figure+" mL")
	}
	for i, u := range units {
		units[i] = figure + " " + u
	}
	return Either(units)
}

// likely are the units of the example and the dimensions wanted. The example's
// alone counts where it is of another size than the usual: a shelf life is not
// in seconds.
func (w want) likely() (units []string) {
	if len(w.dims) == 1 {
		usual := dimensions[w.dims[0]].units
		if of := unitOf(w.example); of != "" && !slices.Contains(usual[:], of) {
			return []string{of}
		}
		return usual[:]
	}
	for _, d := range w.dims[:min(len(w.dims), mostOffers)] {
		units = append(units, dimensions[d].units[0])
	}
	return units
}

// unitOf is the unit of an example.
func unitOf(example string) string {
	return strings.TrimSpace(example[scanNumber(example):])
}
