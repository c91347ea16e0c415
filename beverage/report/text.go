package report

import (
	"io"
	"strings"
)

// Style is how a terminal wants its text.
type Style struct {
	Width  int  // columns; 0 is 100
	Colour bool // never the only sign: each level is a word too
	ASCII  bool // for a locale that is not UTF-8
}

const (
	usualWidth    = 100
	narrowest     = 30 // columns below which lines are no longer shortened
	indent        = "  "
	widestName    = 30 // columns that the names of figures may take
	widestMark    = 8
	noteSeparator = "; "
)

// Text writes each Doc for a person, in order, with a rule between them.
func Text(w io.Writer, st Style, docs ...Doc) error {
	p := newPage(st)
	for i, d := range docs {
		if i > 0 {
			p.line("")
			p.line(strings.Repeat("-", p.width))
			p.line("")
		}
		p.doc(d)
	}
	_, err := io.WriteString(w, p.b.String())
	return err
}

// page gathers the lines of a text.
type page struct {
	b     strings.Builder
	st    Style
	width int
}

func newPage(st Style) *page {
	if st.Width <= 0 {
		st.Width = usualWidth
	}
	return &page{st: st, width: min(max(st.Width, narrowest), usualWidth)}
}

// say makes a string from a result fit for this terminal.
func (p *page) say(s string) string {
	s = printable(s)
	if p.st.ASCII {
		s = ascii(s)
	}
	return s
}

func (p *page) line(s string) {
	p.b.WriteString(strings.TrimRight(s, " "))
	p.b.WriteByte('\n')
}

// hang writes text after a first prefix, its further lines after another of
// the same width.
func (p *page) hang(first, rest, text string) {
	for i, l := range wrap(text, p.width-width(rest)) {
		if i == 0 {
			p.line(first + l)
			continue
		}
		p.line(rest + l)
	}
}

func (p *page) doc(d Doc) {
	for _, l := range wrap(p.say(d.Headline), p.width) {
		p.line(p.strong(l))
	}
	p.line("")
	p.hang("", indent, p.say(d.Title))
	for _, in := range d.Inputs {
		p.hang(indent, indent+indent, p.say(inputLine(in.File, in.SHA256)))
	}
	for _, s := range d.Sections {
		p.section(s)
	}
	p.heading("Cautions")
	for _, c := range d.Cautions {
		p.hang(indent+"- ", indent+indent, p.say(c))
	}
	p.line("")
	p.line(p.say(toolLine(d.Tool.Name, d.Tool.Version)))
}

func inputLine(file, sha256 string) string {
	if sha256 == "" {
		return file
	}
	return file + ", sha256 " + sha256
}

func toolLine(name, version string) string { return join(" ", name, version) }

func (p *page) heading(title string) {
	p.line("")
	for _, l := range wrap(p.say(title), p.width) {
		p.line(p.strong(l))
	}
}

func (p *page) section(s Section) {
	blocks := told(s.Blocks)
	if len(blocks) == 0 {
		return
	}
	p.heading(s.Title)
	for i, b := range blocks {
		if i > 0 {
			p.line("")
		}
		p.block(b)
	}
}

// told is what of a section stands in a text: of pictures their data, where they
// are told in words too.
func told(blocks []Block) []Block {
	var out []Block
	for _, b := range blocks {
		if w, ok := b.(Written); ok {
			b = w.Block
		}
		if pic, ok := b.(Picture); ok {
			if b = pic.Data; !pic.Told || b.empty() {
				continue
			}
		}
		out = append(out, b)
	}
	return out
}

func (p *page) block(b Block) {
	switch b := b.(type) {
	case Para:
		p.hang(indent, indent, p.say(string(b)))
	case Figures:
		p.figures(b)
	case Items:
		p.items(b)
	case Table:
		p.table(b)
	}
}

func (p *page) figures(fs Figures) {
	w := 0
	for _, f := range fs {
		w = max(w, width(p.say(f.Name)))
	}
	w = min(w, widestName, p.width/3)
	rest := strings.Repeat(" ", len(indent)+w+2)
	for _, f := range fs {
		names := wrap(p.say(f.Name), w)
		for _, n := range names[:len(names)-1] {
			p.line(indent + n)
		}
		p.hang(indent+pad(names[len(names)-1], w, false)+indent, rest, p.say(f.answer()))
	}
}

func (p *page) items(items Items) {
	w := 0
	for _, it := range items {
		w = max(w, len(it.Mark))
	}
	w = min(w, widestMark)
	rest := indent + indent
	if w > 0 {
		rest += strings.Repeat(" ", w)
	}
	for _, it := range items {
		p.item(it, w, rest)
	}
}

// item writes the mark in words and, where the terminal has it, in colour.
func (p *page) item(it Item, w int, rest string) {
	first := indent
	if it.Mark == "" && it.ID == "" {
		first = indent + "- "
	}
	if w > 0 {
		first += p.level(it.Mark, pad(p.say(strings.ToUpper(it.Mark)), w, false)) + indent
	}
	for i, l := range wrap(p.say(join(": ", it.ID, it.Title)), p.width-len(rest)) {
		if i == 0 {
			p.line(first + p.strong(l))
			continue
		}
		p.line(rest + p.strong(l))
	}
	for _, t := range []string{it.Text, it.Foot} {
		if t != "" {
			p.hang(rest, rest, p.say(t))
		}
	}
	for _, part := range it.Parts {
		p.hang(rest+"- ", rest+indent, p.say(part.Text))
		if part.Foot != "" {
			p.hang(rest+indent, rest+indent, p.say(part.Foot))
		}
	}
}
