package report

import (
	"io"
	"slices"
	"strconv"

	"github.com/xuri/excelize/v2"
)

// Further is a table of a result that has a sheet of its own in a workbook.
type Further struct {
	Name string
	Table
}

// The sheets of a workbook that every result has.
const (
	rowsSheet     = "rows"
	cautionsSheet = "cautions"
)

// XLSX writes what CSV writes as a workbook: a sheet of rows, one of each further
// table, one of what must stand beside them. Figures are numbers and words are
// words: no cell is a formula. All docs are of one kind of result.
func XLSX(w io.Writer, docs ...Doc) error {
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	for _, t := range joined(docs) {
		if err := b.table(t.Name, t.Table); err != nil {
			return err
		}
	}
	if err := b.table(cautionsSheet, beside(docs)); err != nil {
		return err
	}
	if err := b.file.DeleteSheet(firstSheet); err != nil {
		return err
	}
	return b.file.Write(w)
}

// joined are the sheets of all docs, those of one name under one header.
func joined(docs []Doc) []Further {
	var out []Further
	for _, d := range docs {
		for _, f := range append([]Further{{rowsSheet, d.Sheet}}, d.Further...) {
			i := slices.IndexFunc(out, func(o Further) bool { return o.Name == f.Name })
			if i < 0 {
				out = append(out, Further{f.Name, Table{Columns: f.Columns, Rows: slices.Clone(f.Rows)}})
				continue
			}
			out[i].Rows = append(out[i].Rows, f.Rows...)
		}
	}
	return out
}

// beside is what is open, the cautions and the hashes.
func beside(docs []Doc) Table {
	t := Table{Columns: columns("of", "what it says")}
	for _, d := range docs {
		t.Rows = append(t.Rows, []string{d.Title, d.Headline})
	}
	for _, line := range trailers(docs) {
		t.Rows = append(t.Rows, []string{"", line})
	}
	for _, d := range docs {
		for _, in := range d.Inputs {
			t.Rows = append(t.Rows, []string{in.File, "sha256 " + in.SHA256})
		}
	}
	return t
}

// book is a workbook being written.
type book struct {
	file   *excelize.File
	header int // the style of a header; 0 until it is made
}

// Widths of columns, in letters.
const (
	leastWide = 8
	mostWide  = 48
	sampled   = 200 // rows that a width is taken from
)

// table writes a sheet whose header stays in sight and can be filtered by.
func (b *book) table(name string, t Table) error {
	if _, err := b.file.NewSheet(name); err != nil {
		return err
	}
	s, err := b.file.NewStreamWriter(name)
	if err != nil {
		return err
	}
	for i := range t.Columns {
		if err := s.SetColWidth(i+1, i+1, float64(wideOf(t, i))); err != nil {
			return err
		}
	}
	if err := s.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	out := &evidenceSheet{stream: s}
	if err := out.put(each(titles(t), func(s string) any { return excelize.Cell{StyleID: b.bold(), Value: printable(s)} })); err != nil {
		return err
	}
	for _, r := range t.Rows {
		if err := out.put(each(r, cellOfText)); err != nil {
			return err
		}
	}
	return s.Flush()
}

func (b *book) bold() int {
	if b.header == 0 {
		// A style that cannot be made leaves the header plain.
		b.header, _ = b.file.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	}
	return b.header
}

func wideOf(t Table, column int) int {
	w := width(t.Columns[column].Title)
	for _, r := range t.Rows[:min(len(t.Rows), sampled)] {
		w = max(w, width(r[column]))
	}
	return min(max(w+2, leastWide), mostWide)
}

// cellOfText is a number where the text is one as this package prints it, else
// words, else nothing.
func cellOfText(s string) any {
	switch {
	case s == "":
		return nil
	case number.MatchString(s):
		if v, err := strconv.ParseFloat(s, 64); err == nil && isFinite(v) {
			return v
		}
	}
	return shortened(printable(s))
}

// shortened keeps a text within what a cell holds.
func shortened(s string) string {
	if letters := []rune(s); len(letters) > excelize.TotalCellChars {
		return string(letters[:excelize.TotalCellChars])
	}
	return s
}
