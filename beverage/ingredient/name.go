package ingredient

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// maxNameBytes bounds what is looked at of a name; the longest of the trade
// stays far below.
const maxNameBytes = 200

// letters writes names of the trade in plain letters; spellings makes one of
// the two that a word has.
var (
	letters = strings.NewReplacer(
		"β", "beta ", "α", "alpha ", "κ", "kappa ", "ι", "iota ", "γ", "gamma ", "δ", "delta ", "é", "e", "è", "e", "ü", "u", "ï", "i",
		"₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7",
	)
	spellings = [][2]string{{"sulph", "sulf"}, {"colour", "color"}, {"flavour", "flavor"}, {"fibre", "fiber"}, {"lysed", "lyzed"}, {"lysate", "lyzate"}, {"tised", "tized"}}
)

// words cuts a name into the words that tell it apart: lower case, letters and
// digits parted, punctuation gone, plural and the isomer letters L and DL off.
func words(name string) []string {
	if len(name) > maxNameBytes {
		name = name[:maxNameBytes]
	}
	text := strings.ToLower(name)
	if strings.ContainsFunc(text, func(r rune) bool { return r > unicode.MaxASCII }) {
		text = letters.Replace(text)
	}
	for _, s := range spellings {
		text = strings.ReplaceAll(text, s[0], s[1])
	}
	out := split(text)
	for i, w := range out {
		out[i] = plainWord(w)
	}
	return slices.DeleteFunc(out, func(w string) bool { return w == "" })
}

// plainWord writes a word in the one way it is looked up by; "" where it tells
// nothing apart.
func plainWord(w string) string {
	switch w {
	case "l", "dl", "and", "of", "with", "the":
		return ""
	case "percent", "pct":
		return "%"
	}
	if w[0] >= '0' && w[0] <= '9' {
		return strings.TrimSuffix(w, ".0")
	}
	return singular(w)
}

// split parts text at punctuation and between letters and digits; a decimal
// point stays inside its number.
func split(text string) []string {
	const mostWords = 8 // of a name of the trade; longer ones grow
	out := make([]string, 0, mostWords)
	start, last := 0, apart
	cut := func(end int) {
		if last != apart && end > start {
			out = append(out, strings.TrimSuffix(text[start:end], "."))
		}
		start = end
	}
	for i, r := range text {
		c := classOf(r)
		if r == '.' && last == digit {
			c = digit
		}
		if c != last || c == sign {
			cut(i)
			last = c
		}
	}
	cut(len(text))
	return out
}

type class int

const (
	apart class = iota
	letter
	digit
	sign // a percent sign is a word of its own
)

func classOf(r rune) class {
	switch {
	case r >= 'a' && r <= 'z':
		return letter
	case r >= '0' && r <= '9':
		return digit
	case r == '%':
		return sign
	case r > unicode.MaxASCII && unicode.IsLetter(r):
		return letter
	}
	return apart
}

func singular(w string) string {
	const shortest = 4
	switch {
	case len(w) < shortest || w[len(w)-1] != 's' || strings.HasSuffix(w, "ss") || strings.HasSuffix(w, "us") || strings.HasSuffix(w, "is"):
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

// gradeWords are the words that name a grade, or a form that only a dry
// ingredient has, and leave an ingredient what it is.
type gradeWords struct{ grade, dry wordSet }

// wordSet is single words, and phrases of several.
type wordSet struct{ words, phrases []string }

func (s *wordSet) add(text string) {
	if strings.Contains(text, " ") {
		s.phrases = append(s.phrases, text)
		return
	}
	s.words = append(s.words, text)
}

// strip takes the set out of words.
func (s *wordSet) strip(ws []string) []string {
	text := " " + strings.Join(ws, " ") + " "
	for _, p := range s.phrases {
		text = strings.ReplaceAll(text, " "+p+" ", " ")
	}
	return without(strings.Fields(text), func(w string) bool { return slices.Contains(s.words, w) })
}

func (g *gradeWords) add(word, kind string) error {
	text := strings.Join(words(word), " ")
	switch kind {
	case "grade":
		g.grade.add(text)
	case "dry form":
		g.dry.add(text)
	default:
		return fmt.Errorf("grades.csv: %q is neither grade nor dry form", kind)
	}
	return nil
}

// strip takes the grade words out of a name, and the words of dry forms where
// dry is true. A name that is nothing but such words stays.
func (g *gradeWords) strip(ws []string, dry bool) []string {
	out := g.grade.strip(ws)
	if dry {
		out = g.dry.strip(out)
	}
	if len(out) == 0 {
		return ws
	}
	return out
}

// hydrates are the words that tell how much water a crystal holds.
var hydrates = []string{"anhydrous", "monohydrate", "hemihydrate", "dihydrate", "trihydrate", "tetrahydrate", "pentahydrate", "hexahydrate", "heptahydrate", "nonahydrate", "decahydrate", "hydrate"}

func isHydrate(w string) bool { return slices.Contains(hydrates, w) }
