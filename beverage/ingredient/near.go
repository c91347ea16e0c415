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
	for _, e := range l.names {
		best := 0.0
		for _, s := range e.names() {
			best = max(best, want.likeness(newShape(words(s))))
		}
		if best >= worthOffering {
			all = append(all, scored{e.Name, best})
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

// shape is what names are compared by: words and pairs of letters, without the
// words and numbers of hydrates and strengths.
type shape struct{ words, pairs []string }

func newShape(ws []string) shape {
	s := shape{words: without(ws, func(w string) bool { return isHydrate(w) || w == "%" || w[0] >= '0' && w[0] <= '9' })}
	for _, w := range s.words {
		for i := 0; i+2 <= len(w); i++ {
			s.pairs = append(s.pairs, w[i:i+2])
		}
	}
	return s
}

// likeness is 1 for equal shapes and falls to 0. Letters weigh more than whole
// words: a misspelt word still has most of its letter pairs.
func (s shape) likeness(t shape) float64 {
	const wordWeight = 0.3
	return wordWeight*common(s.words, t.words) + (1-wordWeight)*common(s.pairs, t.pairs)
}

// common is twice the number of common items over the number of all.
func common(a, b []string) float64 {
	if len(a)+len(b) == 0 {
		return 0
	}
	left := slices.Clone(b)
	n := 0
	for _, w := range a {
		if i := slices.Index(left, w); i >= 0 {
			left[i] = left[len(left)-1]
			left = left[:len(left)-1]
			n++
		}
	}
	return 2 * float64(n) / float64(len(a)+len(b))
}
