package ingredient

import (
	"cmp"
	"slices"
	"strings"
)

// Near offers at most n names that may have been meant, likeliest first: those
// that differ only by hydrate or strength come before those that are spelt alike.
func (l *Library) Near(name string, n int) []string {
	ws := words(name)
	if len(ws) == 0 || n <= 0 {
		return nil
	}
	type scored struct {
		name  string
		score float64
	}
	var all []scored
	for _, e := range l.entries {
		best := 0.0
		for _, s := range append([]string{e.Name}, e.Synonyms...) {
			best = max(best, likeness(ws, words(s)))
		}
		const worthwhile = 0.4
		if best >= worthwhile {
			all = append(all, scored{e.Name, best})
		}
	}
	slices.SortStableFunc(all, func(a, b scored) int {
		return cmp.Or(cmp.Compare(b.score, a.score), strings.Compare(a.name, b.name))
	})
	var out []string
	for _, s := range all[:min(n, len(all))] {
		out = append(out, s.name)
	}
	return out
}

// likeness is 1 for equal names and falls to 0: the mean share of letter pairs
// and of words that two names have in common, hydrates and numbers left out.
func likeness(a, b []string) float64 {
	a, b = plain(a), plain(b)
	return (dice(a, b) + dice(pairs(a), pairs(b))) / 2
}

func plain(ws []string) []string {
	return slices.DeleteFunc(slices.Clone(ws), func(w string) bool {
		return isHydrate(w) || w == "%" || w[0] >= '0' && w[0] <= '9'
	})
}

func pairs(ws []string) []string {
	var out []string
	for _, w := range ws {
		for i := 0; i+2 <= len(w); i++ {
			out = append(out, w[i:i+2])
		}
	}
	return out
}

// dice is twice the common part over both sizes.
func dice(a, b []string) float64 {
	if len(a)+len(b) == 0 {
		return 0
	}
	left := slices.Clone(b)
	common := 0
	for _, w := range a {
		if i := slices.Index(left, w); i >= 0 {
			left = slices.Delete(left, i, i+1)
			common++
		}
	}
	return 2 * float64(common) / float64(len(a)+len(b))
}
