package quantity

import (
	"slices"
	"strings"
)

const (
	mostOffers  = 3
	longestWord = 80 // bytes; longer ones are nobody's slip of the pen
)

// Nearest returns the words of known that are likely meant by what was written,
// the likeliest first, at most three; none where nothing is near. Case counts
// less than letters.
func Nearest(written string, known []string) []string {
	if len(written) > longestWord {
		return nil
	}
	type near struct {
		word     string
		distance int
	}
	var all []near
	folded := strings.ToLower(written)
	for _, k := range known {
		d := min(apart(folded, strings.ToLower(k)), part(folded, strings.ToLower(k)))
		if d <= reach(written, k) && k != written && len(k) <= longestWord {
			all = append(all, near{k, d})
		}
	}
	slices.SortStableFunc(all, func(a, b near) int { return a.distance - b.distance })
	var words []string
	for _, n := range all {
		if len(words) < mostOffers && n.distance == all[0].distance {
			words = append(words, n.word)
		}
	}
	return words
}

// shortestPart is the least that names a longer word: "tunnel" of "tunnel
// pasteurization".
const shortestPart = 4

// part counts a word that stands whole in the other, or begins it, as one slip.
func part(a, b string) int {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(a) >= shortestPart && strings.Contains(b, a) {
		return 1
	}
	return longestWord
}

// reach is how many slips still count as near: one in three letters.
func reach(a, b string) int { return min(max(len(a), len(b))/3, 4) }

// apart counts insertions, deletions, changes and swaps of neighbours between
// two words.
func apart(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(y) > longestWord {
		return len(y)
	}
	before, last := make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row := make([]int, len(y)+1)
		row[0] = i
		for j := 1; j <= len(y); j++ {
			change := last[j-1]
			if x[i-1] != y[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(y)]
}
