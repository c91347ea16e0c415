// Package report shows any result as text, JSON, NDJSON, CSV or one HTML file.
// A builder a result (assessment.go, lethality.go ...) turns it into a Doc; the
// renderers (text.go, csv.go, html.go) know Docs only, and JSON is the result
// itself. The package knows no chemistry and decides nothing.
package report

import "posset/beverage"

// NotARelease stands in the first line of everything that judges a drink.
const NotARelease = "not a scheduled process, not a release"

// Doc is a result made ready for a reader: what is open first, then sections,
// then cautions. Its strings may hold anything that a file held; renderers
// make them harmless.
type Doc struct {
	Title    string
	Headline string
	Tool     beverage.Tool
	Inputs   []beverage.Input // what was read, with the hash of its bytes
	Sections []Section
	Cautions []string
	Sheet    Table     // what CSV writes: one header, one row a fact
	Further  []Further // sheets of a workbook beside it
}

// Section is a titled run of blocks. A section without blocks is not shown.
type Section struct {
	Title  string
	Blocks []Block
}

// Block is one of Para, Figures, Items, Table and Picture.
type Block interface{ empty() bool }

// Para is a paragraph of words.
type Para string

// Figures is a list of named figures.
type Figures []Figure

// Figure is one named figure. Words go before the number, the note after it; a
// figure with neither words nor a value is shown as not known.
type Figure struct {
	Name             string
	Words            string
	Value, Low, High *float64 // in Unit
	Unit             string
	Decimals         int
	Note             string
}

// Items is a list of things that a reader takes one by one: findings, gaps.
type Items []Item

// Item is one of them. Mark is the level as a word, or empty. What is to be said
// more than once under one title stands in Parts, in place of Text and Foot.
type Item struct {
	Mark  string
	ID    string
	Title string
	Text  string
	Foot  string // source, basis, markets
	Parts []Part
}

// Part is one of several things that an item says.
type Part struct{ Text, Foot string }

// Table has as many cells in each row as it has columns.
type Table struct {
	Columns []Column
	Rows    [][]string
	Heads   []Head // by row
}

// Head is a line over the rows from Row on, up to the next.
type Head struct {
	Row  int
	Text string
}

// Column is a heading; numbers are set flush right and never broken.
type Column struct {
	Title  string
	Number bool
}

func (p Para) empty() bool    { return p == "" }
func (f Figures) empty() bool { return len(f) == 0 }
func (i Items) empty() bool   { return len(i) == 0 }
func (t Table) empty() bool   { return len(t.Rows) == 0 }

// Written is a block that text alone shows: a page has it with a picture.
type Written struct{ Block }

func (w Written) empty() bool { return w.Block.empty() }

// Columns makes columns of words from their titles.
func columns(titles ...string) []Column {
	cols := make([]Column, len(titles))
	for i, t := range titles {
		cols[i].Title = t
	}
	return cols
}

// numbers marks the columns from i on as numbers.
func numbers(cols []Column, from, to int) []Column {
	for i := from; i < to; i++ {
		cols[i].Number = true
	}
	return cols
}

// add appends a section that has something to show.
func (d *Doc) add(title string, blocks ...Block) {
	kept := blocks[:0]
	for _, b := range blocks {
		if !b.empty() {
			kept = append(kept, b)
		}
	}
	if len(kept) > 0 {
		d.Sections = append(d.Sections, Section{Title: title, Blocks: kept})
	}
}
