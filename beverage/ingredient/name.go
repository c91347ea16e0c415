package ingredient

import (
	"slices"
	"strings"
	"unicode"
)

// maxNameBytes bounds what is looked at of a name; the longest of the trade
// stays far below.
const maxNameBytes = 200

// spellings makes one of the spellings of the trade.
var spellings = strings.NewReplacer(
	"β", "beta", "α", "alpha", "κ", "kappa", "ι", "iota", "γ", "gamma", "δ", "delta", "é", "e", "è", "e", "ü", "u", "ï", "i",
	"sulph", "sulf", "colour", "color", "flavour", "flavor", "fibre", "fiber", "lysed", "lyzed", "lysate", "lyzate", "aluminium", "aluminum",
	"percent", "%", "pct", "%", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7",
)

// words cuts a name into the words that tell it apart: lower case, letters and
// digits parted, punctuation gone, plural and the isomer letters L and DL off.
func words(name string) []string {
	if len(name) > maxNameBytes {
		name = name[:maxNameBytes]
	}
	text := spellings.Replace(strings.ToLower(name))
	var out []string
	for _, w := range split(text) {
		if w = singular(w); w != "l" && w != "dl" && w != "and" && w != "of" {
			out = append(out, w)
		}
	}
	return out
}

// split parts text at punctuation and between letters and digits; a decimal
// point stays inside its number.
func split(text string) []string {
	var out []string
	var word []rune
	flush := func() {
		if len(word) > 0 {
			out = append(out, strings.TrimSuffix(strings.TrimSuffix(string(word), "."), ".0"))
			word = word[:0]
		}
	}
	digits := false
	for _, r := range text {
		switch {
		case r == '%':
			flush()
			out = append(out, "%")
		case unicode.IsDigit(r) || r == '.' && digits && len(word) > 0:
			if !digits {
				flush()
			}
			digits, word = true, append(word, r)
		case unicode.IsLetter(r):
			if digits {
				flush()
			}
			digits, word = false, append(word, r)
		default:
			flush()
		}
	}
	flush()
	return out
}

func singular(w string) string {
	const shortest = 4
	switch {
	case len(w) < shortest || strings.HasSuffix(w, "ss") || strings.HasSuffix(w, "us") || strings.HasSuffix(w, "is"):
		return w
	case strings.HasSuffix(w, "ies"):
		return strings.TrimSuffix(w, "ies") + "y"
	}
	return strings.TrimSuffix(w, "s")
}

// key is the same for names that differ by case, spacing, plural or the order
// of their words.
func key(ws []string) string {
	ws = slices.Clone(ws)
	slices.Sort(ws)
	return strings.Join(slices.Compact(ws), " ")
}
