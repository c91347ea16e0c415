package report

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"posset/beverage/report/chart"
)

// Picture is a chart with the data behind it. A page shows the chart and folds
// the data under it; text shows the data where they are told there, else
// nothing of it.
type Picture struct {
	Chart chart.Chart
	Data  Table
	Told  bool   // the data stand in the text too
	Why   string // why there is no picture
	id    string // unique on a page
}

func (p Picture) empty() bool { return !p.Chart.Drawable() && len(p.Data.Rows) == 0 && p.Why == "" }

// Drawn is the chart as SVG. The package chart escapes every word in it.
func (p Picture) Drawn() template.HTML {
	if !p.Chart.Drawable() {
		return ""
	}
	return template.HTML(p.Chart.SVG(p.id))
}

// HTML is the picture with its legend and its data, for a page that has the style
// sheet chart.Style; id names it within the page.
func (p Picture) HTML(id string) (template.HTML, error) {
	t, err := parsePage()
	if err != nil {
		return "", err
	}
	p = printablePicture(p)
	p.id = id
	var b strings.Builder
	err = t.ExecuteTemplate(&b, "picture", p)
	return template.HTML(b.String()), err
}

// Sign is one line of a picture's legend.
type Sign struct {
	Swatch template.HTML
	Letter string
	Text   string
}

// Legend explains the picture's lines, hatches and letters.
func (p Picture) Legend() []Sign {
	return each(p.Chart.Legend(), func(e chart.Entry) Sign { return Sign{template.HTML(e.Swatch), e.Letter, e.Text} })
}

// Dense tells whether a small screen needs the chart in its full width, to be
// moved over: its words stand in fields and bands.
func (p Picture) Dense() bool {
	return slices.ContainsFunc(p.Chart.Panels, func(p chart.Panel) bool {
		return p.Field != nil || slices.ContainsFunc(p.Lanes, func(l chart.Lane) bool { return l.Name != "" })
	})
}

// shortRows is how many rows are printed even where the reader left them folded.
const shortRows = 32

// Short tells whether the data are few enough to be printed with the picture.
func (p Picture) Short() bool { return len(p.Data.Rows) <= shortRows }

// numbered gives each picture of a page a name of its own.
func numbered(docs []Doc) {
	n := 0
	for _, d := range docs {
		for _, s := range d.Sections {
			for i, b := range s.Blocks {
				if p, ok := b.(Picture); ok {
					n++
					p.id = "p" + strconv.Itoa(n)
					s.Blocks[i] = p
				}
			}
		}
	}
}

// printablePicture is p with every word in it made harmless to look at.
func printablePicture(p Picture) Picture {
	c := p.Chart
	c.Title, c.About, c.X.Title = printable(c.Title), printable(c.About), printable(c.X.Title)
	c.Panels = each(c.Panels, printablePanel)
	return Picture{Chart: c, Data: printableTable(p.Data), Told: p.Told, Why: printable(p.Why), id: p.id}
}

func printablePanel(p chart.Panel) chart.Panel {
	line := func(l chart.Line) chart.Line {
		l.Label, l.Name = printable(l.Label), printable(l.Name)
		return l
	}
	span := func(s chart.Span) chart.Span { s.Name = printable(s.Name); return s }
	mark := func(m chart.Mark) chart.Mark { m.Letter, m.Name = printable(m.Letter), printable(m.Name); return m }
	p.Y.Title, p.Field = printable(p.Y.Title), printableField(p.Field)
	p.Curves = each(p.Curves, func(k chart.Curve) chart.Curve { k.Name = printable(k.Name); return k })
	p.Levels, p.Uprights = each(p.Levels, line), each(p.Uprights, line)
	p.Spans, p.Marks = each(p.Spans, span), each(p.Marks, mark)
	p.Lanes = each(p.Lanes, func(l chart.Lane) chart.Lane {
		return chart.Lane{Label: printable(l.Label), Name: printable(l.Name), Ends: l.Ends, Spans: each(l.Spans, span), Marks: each(l.Marks, mark)}
	})
	return p
}

func printableField(f *chart.Field) *chart.Field {
	if f == nil {
		return nil
	}
	g := *f
	g.Hatched, g.Tones = printable(g.Hatched), each(g.Tones, printable)
	g.Signs = each(g.Signs, func(m chart.Mark) chart.Mark { m.Letter, m.Name = printable(m.Letter), printable(m.Name); return m })
	g.Cells = each(g.Cells, func(c chart.Cell) chart.Cell { c.Mark, c.Letters = printable(c.Mark), printable(c.Letters); return c })
	return &g
}
