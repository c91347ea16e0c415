package report

import (
	"encoding/csv"
	"io"
	"regexp"
	"strings"
)

// CSV writes the sheets of all docs under one header, then every caution once,
// as lines that begin with '#'. All docs are of one kind of result.
func CSV(w io.Writer, docs ...Doc) error {
	var b strings.Builder
	c := csv.NewWriter(&b)
	for i, d := range docs {
		if i == 0 {
			c.Write(titles(d.Sheet)) // a strings.Builder cannot fail
		}
		for _, r := range d.Sheet.Rows {
			c.Write(harmless(r))
		}
	}
	c.Flush()
	for _, t := range trailers(docs) {
		b.WriteString("# " + printable(t) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// trailers are the cautions of all docs, each once, and what made them.
func trailers(docs []Doc) []string {
	var out []string
	seen := map[string]bool{}
	for _, d := range docs {
		for _, t := range append(d.Cautions, toolLine(d.Tool.Name, d.Tool.Version)) {
			if t != "" && !seen[t] {
				seen[t] = true
				out = append(out, t)
			}
		}
	}
	return out
}

// harmless makes cells that a spreadsheet would run as a formula plain text,
// by the apostrophe that spreadsheets themselves use. Numbers stay numbers.
func harmless(cells []string) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		if runsAsFormula(c) {
			c = "'" + c
		}
		out[i] = printable(c)
	}
	return out
}

// runsAsFormula also looks behind blanks, which some spreadsheets drop.
func runsAsFormula(cell string) bool {
	if cell == "" {
		return false
	}
	if strings.ContainsAny(cell[:1], "\t\r\n") {
		return true
	}
	t := strings.TrimLeft(printable(cell), " ")
	return t != "" && strings.ContainsAny(t[:1], "=+-@") && !number.MatchString(t)
}

// number is a decimal number as this package prints it: -1.25, -1.2e-07.
var number = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?(e[+-][0-9]+)?$`)
