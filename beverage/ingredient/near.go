package ingredient

import (
	"cmp"
	"slices"
	"strings"
)

// Near offers at most n names that may have been meant, likeliest first. Names
// that differ only by hydrate, strength or number are alike; an E number offers
// all that share it.
func (l *Library) Near(name string, n int) []string {
	ws := words(name)
	if len(ws) == 0 || n <= 0 {
		return nil
	}
	var out []string
	for _, i := range l.index.withE(ws) {
		out = append(out, l.names[i].Name)
	}
	if len(out) == 0 {
		out = l.alike(ws)
	}
	return out[:min(n, len(out))]
}

// alike lists the names that are worth offering, likeliest first.
func (l *Library) alike(ws []string) []string {
	type scored struct {
		name  string
		score float64
	}
	const worthOffering = 0.5
	want := newShape(ws)
	var all []scored
	for i, shapes := range l.shapesOf() {
		best := 0.0
		for _, s := range shapes {
			best = max(best, want.likeness(s))
		}
		if best >= worthOffering {
			all = append(all, scored{l.names[i].Name, best})
		}
	}
	slices.SortStableFunc(all, func(a, b scored) int {
		return cmp.Or(cmp.Compare(b.score, a.score), strings.Compare(a.name, b.name))
	})
	out := make([]string, len(all))
	for i, s := range all {
		out[i] = s.name
	}
	return out
}

// shapesOf are the shapes of every entry's names, worked out at first need.
func (l *Library) shapesOf() [][]shape {
	l.shaped.Do(func() {
		for _, e := range l.names {
			var own []shape
			for _, n := range e.names() {
				own = append(own, newShape(words(n)))
			}
			l.shapes = append(l.shapes, own)
		}
	})
	return l.shapes
}

// shape is what names are compared by: words and pairs of letters, both sorted,
// without the words and numbers of hydrates and strengths.
type shape struct {
	words []string
	pairs []uint16
}

func newShape(ws []string) shape {
	s := shape{words: without(ws, func(w string) bool { return isHydrate(w) || w == "%" || w[0] >= '0' && w[0] <= '9' })}
	for _, w := range s.words {
		for i := 1; i < len(w); i++ {
			s.pairs = append(s.pairs, uint16(w[i-1])<<8|uint16(w[i]))
		}
	}
	slices.Sort(s.words)
	slices.Sort(s.pairs)
	return s
}

// likeness is 1 for equal shapes and falls to 0. Letters weigh more than whole
// words: a misspelt word still has most of its letter pairs.
func (s shape) likeness(t shape) float64 {
	const wordWeight = 0.3
	return wordWeight*common(s.words, t.words) + (1-wordWeight)*common(s.pairs, t.pairs)
}

// common is twice the number of items that two sorted lists have in common, over
// the number of all.
func common[T cmp.Ordered](a, b []T) float64 {
	all := len(a) + len(b)
	if all == 0 {
		return 0
	}
	n := 0
	for len(a) > 0 && len(b) > 0 {
		switch {
		case a[0] == b[0]:
			n++
			a, b = a[1:], b[1:]
		case a[0] < b[0]:
			a = a[1:]
		default:
			b = b[1:]
		}
	}
	return 2 * float64(n) / float64(all)
}
