package report

import (
	"slices"
	"strings"
)

const (
	columnGap     = 2
	leastOfColumn = 12 // columns that words need to stay readable
)

// table sets a table in columns; where even broken words do not fit, each row
// becomes a list of its cells.
func (p *page) table(t Table) {
	t = p.sayTable(t)
	lead := indent
	if len(t.Heads) > 0 {
		lead += indent
	}
	widths, fits := p.fit(t, lead)
	if !fits {
		p.stack(t)
		return
	}
	p.row(lead, t.Columns, titles(t), widths)
	p.row(lead, t.Columns, rules(widths), widths)
	for i, r := range t.Rows {
		p.head(t, i)
		p.row(lead, t.Columns, r, widths)
	}
}

// head writes the line over row i, where there is one.
func (p *page) head(t Table, i int) {
	h := t.HeadAt(i)
	if h == "" {
		return
	}
	if i > 0 {
		p.line("")
	}
	p.hang(indent, indent+indent, h)
}

func (p *page) sayTable(t Table) Table {
	out := Table{Columns: slices.Clone(t.Columns), Heads: each(t.Heads, func(h Head) Head { return Head{h.Row, p.say(h.Text)} })}
	for i := range out.Columns {
		out.Columns[i].Title = p.say(out.Columns[i].Title)
	}
	for _, r := range t.Rows {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = p.say(c)
		}
		out.Rows = append(out.Rows, cells)
	}
	return out
}

func titles(t Table) []string {
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Title
	}
	return out
}

func rules(widths []int) []string {
	out := make([]string, len(widths))
	for i, w := range widths {
		out[i] = strings.Repeat("-", w)
	}
	return out
}

// fit finds the columns' widths: as wide as their cells, then the widest
// column gives way until the line fits: first the headings over numbers, then
// all at spaces, then inside words.
func (p *page) fit(t Table, lead string) ([]int, bool) {
	wish, whole, broken := natural(t)
	widths := slices.Clone(wish)
	room := p.width - len(lead) - columnGap*(len(widths)-1)
	for _, least := range [][]int{headingsFirst(t, wish, whole), whole, broken} {
		for total(widths) > room {
			i := widest(widths, least)
			if i < 0 {
				break
			}
			widths[i]--
		}
	}
	return widths, total(widths) <= room
}

func headingsFirst(t Table, wish, whole []int) []int {
	least := slices.Clone(wish)
	for i, c := range t.Columns {
		if c.Number {
			least[i] = whole[i]
		}
	}
	return least
}

// natural is how wide each column would like to be, how narrow it may get with
// its words whole, and how narrow with words broken. Numbers are never broken.
func natural(t Table) (wish, whole, broken []int) {
	for i, c := range t.Columns {
		w, long, cells := width(c.Title), longestWord(c.Title), 0
		for _, r := range t.Rows {
			w, long, cells = max(w, width(r[i])), max(long, longestWord(r[i])), max(cells, width(r[i]))
		}
		least := min(long, leastOfColumn)
		if c.Number {
			long, least = max(long, cells), max(least, cells)
		}
		wish, whole, broken = append(wish, w), append(whole, long), append(broken, least)
	}
	return wish, whole, broken
}

func longestWord(s string) int {
	w := 0
	for _, f := range strings.Fields(s) {
		w = max(w, width(f))
	}
	return w
}

func total(widths []int) int {
	sum := 0
	for _, w := range widths {
		sum += w
	}
	return sum
}

// widest is the widest column that may still give way, or -1.
func widest(widths, least []int) int {
	best := -1
	for i, w := range widths {
		if w > least[i] && (best < 0 || w > widths[best]) {
			best = i
		}
	}
	return best
}

func (p *page) row(lead string, cols []Column, cells []string, widths []int) {
	broken := make([][]string, len(cells))
	height := 0
	for i, c := range cells {
		broken[i] = wrap(c, widths[i])
		height = max(height, len(broken[i]))
	}
	for n := range height {
		line := make([]string, len(cells))
		for i := range cells {
			part := ""
			if n < len(broken[i]) {
				part = broken[i][n]
			}
			line[i] = pad(part, widths[i], cols[i].Number)
		}
		p.line(lead + strings.Join(line, strings.Repeat(" ", columnGap)))
	}
}

// stack writes each row as "heading: cell" lines.
func (p *page) stack(t Table) {
	for n, r := range t.Rows {
		if n > 0 && t.HeadAt(n) == "" {
			p.line("")
		}
		p.head(t, n)
		for i, cell := range r {
			p.hang(indent, indent+indent, t.Columns[i].Title+": "+cell)
		}
	}
}
