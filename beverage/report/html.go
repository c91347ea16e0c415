package report

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"io"
	"slices"
	"sync"

	"posset/beverage"
	"posset/beverage/report/chart"
)

//go:embed report.css
var ownStyle string

// style is one sheet: that of charts, and that of the page around them.
var style = chart.Style + ownStyle

//go:embed report.html.tmpl
var pageSource string

// page of HTML: nothing is fetched, nothing runs, and the one style sheet is
// named by its hash.
type htmlPage struct {
	Title  string
	Policy string
	Style  template.CSS
	Docs   []Doc
	Many   bool
}

// parsePage is put off until a page is wanted: most runs print text.
var parsePage = sync.OnceValues(func() (*template.Template, error) {
	return template.New("page").Funcs(template.FuncMap{"is": isBlock}).Parse(pageSource)
})

func isBlock(kind string, b Block) bool {
	switch b.(type) {
	case Para:
		return kind == "para"
	case Figures:
		return kind == "figures"
	case Items:
		return kind == "items"
	case Table:
		return kind == "table"
	case Picture:
		return kind == "picture"
	}
	return false
}

// HTML writes docs as one file that needs nothing else.
func HTML(w io.Writer, docs ...Doc) error {
	t, err := parsePage()
	if err != nil {
		return err
	}
	shown := make([]Doc, len(docs))
	for i, d := range docs {
		shown[i] = printableDoc(d)
	}
	numbered(shown)
	var b bytes.Buffer
	err = t.Execute(&b, htmlPage{Title: pageTitle(shown), Policy: policy(), Style: template.CSS(style), Docs: shown, Many: len(docs) > 1})
	if err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}

func policy() string {
	sum := sha256.Sum256([]byte(style))
	return "default-src 'none'; base-uri 'none'; form-action 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

func pageTitle(docs []Doc) string {
	if len(docs) == 1 {
		return docs[0].Title
	}
	return counted(len(docs), "result")
}

// HeadAt is the line over row i, or empty.
func (t Table) HeadAt(i int) string {
	for _, h := range t.Heads {
		if h.Row == i {
			return h.Text
		}
	}
	return ""
}

// Answer is everything after the figure's name.
func (f Figure) Answer() string { return f.answer() }

// printableDoc is d with every string made harmless to look at; the template
// makes it harmless as HTML.
func printableDoc(d Doc) Doc {
	d.Title, d.Headline = printable(d.Title), printable(d.Headline)
	d.Inputs = each(d.Inputs, func(in beverage.Input) beverage.Input {
		return beverage.Input{File: printable(in.File), SHA256: printable(in.SHA256)}
	})
	d.Cautions = each(d.Cautions, printable)
	d.Sections = slices.DeleteFunc(each(d.Sections, printableSection), func(s Section) bool { return len(s.Blocks) == 0 })
	return d
}

// printableSection is what of a section stands in a page.
func printableSection(s Section) Section {
	blocks := slices.DeleteFunc(slices.Clone(s.Blocks), func(b Block) bool { _, only := b.(Written); return only })
	return Section{Title: printable(s.Title), Blocks: each(blocks, printableBlock)}
}

func printableBlock(b Block) Block {
	switch b := b.(type) {
	case Para:
		return Para(printable(string(b)))
	case Figures:
		return Figures(each(b, func(f Figure) Figure {
			f.Name, f.Words, f.Note = printable(f.Name), printable(f.Words), printable(f.Note)
			return f
		}))
	case Items:
		return Items(each(b, func(it Item) Item {
			parts := each(it.Parts, func(p Part) Part { return Part{printable(p.Text), printable(p.Foot)} })
			return Item{printable(it.Mark), printable(it.ID), printable(it.Title), printable(it.Text), printable(it.Foot), parts}
		}))
	case Table:
		return printableTable(b)
	case Picture:
		return printablePicture(b)
	}
	return b
}

func printableTable(t Table) Table {
	return Table{Columns: each(t.Columns, func(c Column) Column { return Column{printable(c.Title), c.Number} }),
		Rows:  each(t.Rows, func(r []string) []string { return each(r, printable) }),
		Heads: each(t.Heads, func(h Head) Head { return Head{h.Row, printable(h.Text)} })}
}

func each[A, B any](in []A, f func(A) B) []B {
	out := make([]B, len(in))
	for i, a := range in {
		out[i] = f(a)
	}
	return out
}
