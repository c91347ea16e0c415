package chart

import (
	"math"
	"strconv"
	"strings"
)

// Field is a grid of cells over both axes of a panel. Neighbours that are
// told alike make a region, which is outlined and carries its words once.
type Field struct {
	XStep, YStep float64 // how wide and how high a cell is, in values of the axes
	Cells        []Cell
	Tones        []string // what each tone means, for the legend; "" is told nowhere
	Hatched      string   // what the hatch means
	Large        bool     // words as large as those of the axes
	Signs        []Mark   // what letters in the cells mean; their places are not looked at
}

// Cell is one place of a field. X and Y are its middle. Its words tell what the
// tone tells, and more.
type Cell struct {
	X, Y    float64
	Tone    int // 0 to Tones-1; 0 is bare
	Hatched bool

	Mark, Letters string // the mark first, or above
}

// mostCells bounds how far from the first cell another is looked for.
const mostCells = 1e6

// drawable are the cells that can be drawn.
func (f *Field) drawable() []Cell {
	if f == nil || !(f.XStep > 0 && f.YStep > 0) || !drawable(f.XStep) || !drawable(f.YStep) {
		return nil
	}
	var out []Cell
	for _, c := range f.Cells {
		if drawable(c.X) && drawable(c.Y) && math.Abs(c.X/f.XStep) < mostCells && math.Abs(c.Y/f.YStep) < mostCells {
			out = append(out, c)
		}
	}
	return out
}

// Tones is how many tones of a field are told apart.
const Tones = 4

// The words of a region: from line to line, the height of one, the width of a letter.
const (
	lineHigh   = 11.0
	cellWord   = 8.0
	letterWide = 7.2
)

// field draws the cells, over them hatches, outlines and words.
func (d *drawing) field(f *Field, y scale) {
	cells := f.drawable()
	if len(cells) == 0 {
		return
	}
	for _, c := range cells {
		x0, y0, w, h := d.cell(f, c, y)
		if tone := c.Tone % Tones; tone > 0 {
			d.add(`<path class="`, toneClass(c.Tone), `" d="M`, coordinate(x0), " ", coordinate(y0), "h", coordinate(w), "v", coordinate(h), "h", coordinate(-w), `z"/>`)
		}
		if c.Hatched {
			d.add(`<svg x="`, coordinate(x0), `" y="`, coordinate(y0), `" width="`, coordinate(w), `" height="`, coordinate(h), `"><path class="`, f.hatchClass(), `" d="`, rules(0, w, h), `"/></svg>`)
		}
	}
	g := newGrid(f, cells)
	if path := g.edges(func(c, from, to [2]float64) string { return d.edge(c, from, to, f, y) }); path != "" {
		d.add(`<path class="edge" d="`, path, `"/>`)
	}
	for _, r := range g.regions() {
		d.words(r, f, y)
	}
}

// edge goes on along an outline: from and to are corners, in steps from the middle c.
func (d *drawing) edge(c, from, to [2]float64, f *Field, y scale) string {
	at := func(p [2]float64) string {
		return coordinate(d.x.at(c[0]+float64(p[0]*f.XStep))) + " " + coordinate(y.at(c[1]+float64(p[1]*f.YStep)))
	}
	return "M" + at(from) + "L" + at(to)
}

// words writes a region's mark and letters where it is widest.
func (d *drawing) words(r region, f *Field, y scale) {
	wide := d.x.at(r.x+f.XStep*r.run/2) - d.x.at(r.x-f.XStep*r.run/2)
	lines := broken([]string{r.cell.Mark, r.cell.Letters}, max(1, int(wide/letterWide)))
	from := y.at(r.y) - lineHigh*float64(len(lines))/2 + cellWord
	for i, line := range lines {
		d.text(f.wordClass(), "middle", d.x.at(r.x), from+lineHigh*float64(i), line)
	}
}

func (f *Field) hatchClass() string {
	if f.Large {
		return "hatch"
	}
	return "faint"
}

func (f *Field) wordClass() string {
	if f.Large {
		return "letter"
	}
	return "cell"
}

// broken is all words in one line where there is room, else in lines that fit.
func broken(words []string, room int) []string {
	whole := strings.Join(words, "")
	if len(whole) <= room {
		words = []string{whole}
	}
	var lines []string
	for _, w := range words {
		for ; len(w) > room; w = w[room:] {
			lines = append(lines, w[:room])
		}
		if w != "" {
			lines = append(lines, w)
		}
	}
	return lines
}

// cell is the place of a cell in the drawing.
func (d *drawing) cell(f *Field, c Cell, y scale) (x0, y0, w, h float64) {
	x0, y0 = d.x.at(c.X-f.XStep/2), y.at(c.Y+f.YStep/2)
	return x0, y0, d.x.at(c.X+f.XStep/2) - x0, y.at(c.Y-f.YStep/2) - y0
}

func toneClass(tone int) string { return "tone" + strconv.Itoa(tone%Tones) }

func toneSwatch(tone int) string {
	return swatch(`<path class="` + toneClass(tone) + `" d="M0 0H38V14H0z"/><path class="edge" d="M.5 .5H37.5V13.5H.5z"/>`)
}

// signs are the legend's lines of a field.
func (f *Field) signs() []Entry {
	if f == nil {
		return nil
	}
	var out []Entry
	for i, t := range f.Tones {
		out = append(out, Entry{Swatch: toneSwatch(i), Text: t})
	}
	if f.Hatched != "" {
		out = append(out, Entry{Swatch: swatch(`<path class="` + f.hatchClass() + `" d="` + rules(0, 38, 14) + `"/>`), Text: f.Hatched})
	}
	for _, s := range f.Signs {
		out = append(out, Entry{Letter: s.Letter, Text: s.Name})
	}
	return out
}
