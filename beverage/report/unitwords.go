package report

import (
	"regexp"
	"slices"
	"strings"

	"posset/beverage/quantity"
)

// Told puts the units of the reader beside those that stand inside sentences:
// "at 66 °C (150.8 °F)". Sentences come with the figures of their sources, so
// what they say stays as it is. Names of files and probes are left alone.
func Told(d Doc, u Units) Doc {
	if u == Metric {
		return d
	}
	d.Headline = besides(d.Headline)
	d.Sections = each(d.Sections, func(s Section) Section { return Section{Title: besides(s.Title), Blocks: each(s.Blocks, blockBesides)} })
	d.Sheet = tableBesides(d.Sheet)
	d.Further = each(d.Further, func(f Further) Further { return Further{f.Name, tableBesides(f.Table)} })
	return d
}

func blockBesides(b Block) Block {
	switch b := b.(type) {
	case Para:
		return Para(besides(string(b)))
	case Figures:
		return Figures(each(b, func(f Figure) Figure { f.Words, f.Note = besides(f.Words), besides(f.Note); return f }))
	case Items:
		return Items(each(b, itemBesides))
	case Table:
		return tableBesides(b)
	case Written:
		return Written{blockBesides(b.Block)}
	case Picture:
		b.Data, b.Chart.About, b.Why = tableBesides(b.Data), besides(b.Chart.About), besides(b.Why)
		return b
	}
	return b
}

func itemBesides(it Item) Item {
	it.Title, it.Text = besides(it.Title), besides(it.Text)
	it.Parts = each(it.Parts, func(p Part) Part { return Part{besides(p.Text), p.Foot} })
	return it
}

// namesInColumns are the columns whose words are names.
var namesInColumns = []string{"file", "log", "probe", "container", "drink", "sha256"}

func tableBesides(t Table) Table {
	t.Rows = each(t.Rows, func(r []string) []string {
		return slices.Collect(func(yield func(string) bool) {
			for i, c := range r {
				if !slices.Contains(namesInColumns, t.Columns[i].Title) {
					c = besides(c)
				}
				if !yield(c) {
					return
				}
			}
		})
	})
	return t
}

// metricWords are a figure or a range with a unit that United States custom
// writes otherwise. A plain C is a temperature after "at" and a difference after
// "z"; anywhere else it is left alone.
var metricWords = regexp.MustCompile(`(at |z )?(-?[0-9]+(?:\.[0-9]+)?)(?: to (-?[0-9]+(?:\.[0-9]+)?))? ?(°C|C°|C\b|barg\b|bara\b|mL\b|L\b)`)

var wordMeasures = map[string]measure{"°C": temperature, "C°": difference, "barg": gauge, "bara": absolute, "mL": volume, "L": gallons}

// gallons are what litres are told in.
var gallons = measured(volume.metric.dim, "L", 2, "gal", 2)

// beforeFigure is what may stand right before a figure; after anything else it is
// part of a name.
const beforeFigure = " (,;:<>=~"

// besides adds the other unit after each figure of a sentence.
func besides(s string) string {
	if !strings.ContainsAny(s, "0123456789") {
		return s
	}
	var b strings.Builder
	end := 0
	for _, at := range metricWords.FindAllStringSubmatchIndex(s, -1) {
		if next := s[at[1]:]; strings.HasPrefix(next, "/") || strings.HasPrefix(next, "·") || strings.HasPrefix(next, " (") && strings.Contains(next[:min(len(next), 14)], "°F") {
			continue
		}
		other := otherUnit(part(s, at, 1), part(s, at, 2), part(s, at, 3), part(s, at, 4))
		if other == "" || at[0] > 0 && at[2] < 0 && !strings.ContainsRune(beforeFigure, rune(s[at[0]-1])) {
			continue
		}
		b.WriteString(s[end:at[1]] + " (" + other + ")")
		end = at[1]
	}
	return b.String() + s[end:]
}

func part(s string, at []int, group int) string {
	if at[2*group] < 0 {
		return ""
	}
	return s[at[2*group]:at[2*group+1]]
}

func otherUnit(before, low, high, unit string) string {
	m, ok := wordMeasures[unit]
	switch {
	case unit == "C" && before == "at ":
		m = temperature
	case unit == "C" && before == "z ":
		m = difference
	case !ok:
		return ""
	}
	text, ok := converted(m, low)
	if high != "" && ok {
		top, known := converted(m, high)
		text, ok = text+" to "+top, known
	}
	if !ok {
		return ""
	}
	return text + " " + m.us.unit
}

// converted is a metric figure in the other unit, without decimals that say nothing.
func converted(m measure, figure string) (string, bool) {
	q, err := quantity.ParseAs(figure+" "+m.metric.unit, m.metric.dim)
	if err != nil {
		return "", false
	}
	return strings.TrimSuffix(fixed(q.InUnit(m.us.unit), m.us.decimals), ".0"), true
}
