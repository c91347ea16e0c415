package chart

// Entry is one line of the legend.
type Entry struct {
	Swatch string // SVG of what the entry explains, or empty
	Letter string // where it explains a mark
	Text   string
}

// Legend explains cells, curves, hatches, lines and marks, each once, in that order.
func (c Chart) Legend() []Entry {
	var out []Entry
	seen := map[Entry]bool{}
	put := func(e Entry) {
		if e.Text != "" && !seen[e] {
			seen[e] = true
			out = append(out, e)
		}
	}
	c.each(func(p Panel) {
		for _, e := range p.Field.signs() {
			put(e)
		}
	})
	c.each(func(p Panel) {
		for _, k := range p.Curves {
			put(Entry{Swatch: curveSwatch(k.Style), Text: k.Name})
		}
	})
	c.each(func(p Panel) {
		for _, s := range p.spans() {
			put(Entry{Swatch: hatchSwatch(s.Hatch), Text: s.Name})
		}
	})
	c.each(func(p Panel) {
		for _, l := range append(p.Levels[:len(p.Levels):len(p.Levels)], p.Uprights...) {
			put(Entry{Swatch: lineSwatch, Text: l.explained()})
		}
	})
	c.each(func(p Panel) {
		for _, m := range p.marks() {
			put(Entry{Letter: m.Letter, Text: m.Name})
		}
	})
	return out
}

// explained is the line's name after what stands beside it in the picture. A
// line without a name explains itself there.
func (l Line) explained() string {
	if l.Label == "" || l.Name == "" {
		return l.Name
	}
	return l.Label + ": " + l.Name
}

func (c Chart) each(f func(Panel)) {
	for _, p := range c.Panels {
		f(p)
	}
}

func (p Panel) spans() []Span {
	all := p.Spans
	for _, l := range p.Lanes {
		all = append(all[:len(all):len(all)], l.Spans...)
	}
	return all
}

func (p Panel) marks() []Mark {
	all := p.Marks
	for _, l := range p.Lanes {
		all = append(all[:len(all):len(all)], l.Marks...)
	}
	return all
}

// swatch frames a sample for the legend, which a screen reader passes over: the
// text beside it says what it is.
func swatch(inside string) string {
	return `<svg class="swatch" aria-hidden="true" viewBox="0 0 38 14">` + inside + `</svg>`
}

const lineSwatchPath = `<path class="level" d="M2 7L36 7"/>`

var lineSwatch = swatch(lineSwatchPath)

func curveSwatch(style int) string {
	class := curveClass(style)
	return swatch(`<path class="` + class + `" d="M2 7L36 7"/><path class="` + class + ` dot" d="` + shape(style, 19, 7) + `"/>`)
}

func hatchSwatch(hatch int) string {
	return swatch(`<path class="tint" d="M0 0H38V14H0z"/><path class="hatch" d="` + rules(hatch, 38, 14) + `"/>`)
}
