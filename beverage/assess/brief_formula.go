package assess

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
)

// disclosure is how much of the formula a brief tells.
type disclosure string

const (
	discloseFull    disclosure = "full"
	discloseClasses disclosure = "classes"
	discloseNone    disclosure = "none"
)

func disclosureOf(word string) (disclosure, error) {
	switch d := disclosure(word); d {
	case discloseFull, discloseClasses, discloseNone:
		return d, nil
	}
	return "", fmt.Errorf("disclose: %q is no disclosure; write full, classes or none", word)
}

// formula is the recipe at a disclosure; never nil.
func formula(f *facts.Facts, how disclosure) []beverage.FormulaLine {
	list := []beverage.FormulaLine{}
	switch how {
	case discloseFull:
		for _, l := range f.Recipe.Lines {
			list = append(list, beverage.FormulaLine{Name: l.Line.Name, Kind: l.Kind, GPerL: l.GPerL.MidOrNil()})
		}
	case discloseClasses:
		for _, k := range append(slices.Clone(beverage.Kinds), "") {
			if line, ok := classLine(f, k); ok {
				list = append(list, line)
			}
		}
	}
	return list
}

// classLine adds up the ingredients of a kind; the sum is unknown where one is.
func classLine(f *facts.Facts, k beverage.Kind) (beverage.FormulaLine, bool) {
	n, sum := 0, beverage.Point(0, beverage.Stated)
	for _, l := range f.Recipe.Lines {
		if l.Kind == k {
			n++
			sum = sum.Plus(l.GPerL)
		}
	}
	name := fmt.Sprintf("%s, %d of them", kindWord(k), n)
	if n == 1 {
		name = kindWord(k)
	}
	return beverage.FormulaLine{Name: name, Kind: k, GPerL: sum.MidOrNil()}, n > 0
}

func kindWord(k beverage.Kind) string {
	if k == "" {
		return "unknown"
	}
	return string(k)
}

// veil puts kind and number in the place of an ingredient's name, wherever a
// brief that does not tell the formula would say it.
type veil struct {
	name  *regexp.Regexp
	label map[string]string // by lower-case name
}

// staysNamed tells what stays named: water and gases say nothing, and what law limits
// or labels by name, a preservative, a sweetener, caffeine, cannot be judged
// without it.
func staysNamed(l facts.Line) bool {
	switch l.Kind {
	case beverage.KindPreservative, beverage.KindSweetener, beverage.KindPolyol, beverage.KindActive, beverage.KindAid:
		return true
	}
	return l.Name == "water" || l.Preservative != ""
}

func veilOf(f *facts.Facts) veil {
	v := veil{label: map[string]string{}}
	count := map[beverage.Kind]int{}
	for _, l := range f.Recipe.Lines {
		if staysNamed(l) {
			continue
		}
		count[l.Kind]++
		label := fmt.Sprintf("[%s %d]", kindWord(l.Kind), count[l.Kind])
		for _, name := range append([]string{l.Line.Name, l.Name}, l.Near...) {
			v.cover(name, label)
		}
	}
	v.compile()
	return v
}

// cover names a label for a name, unless the name already has one.
func (v veil) cover(name, label string) {
	if key := strings.ToLower(name); name != "" && v.label[key] == "" {
		v.label[key] = label
	}
}

// compile looks for whole names only, the longest first.
func (v *veil) compile() {
	if len(v.label) == 0 {
		return
	}
	var names []string
	for name := range v.label {
		names = append(names, wholeWord(name))
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a, b)) })
	v.name = regexp.MustCompile(`(?i)(?:` + strings.Join(names, "|") + `)`)
}

// wholeWord is the pattern of a name that is no part of a longer word.
func wholeWord(name string) string {
	pattern := regexp.QuoteMeta(name)
	if wordByte(name[0]) {
		pattern = `\b` + pattern
	}
	if wordByte(name[len(name)-1]) {
		pattern += `\b`
	}
	return pattern
}

func wordByte(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}

func (v veil) over(text string) string {
	if v.name == nil {
		return text
	}
	return v.name.ReplaceAllStringFunc(text, func(name string) string { return v.label[strings.ToLower(name)] })
}

// draw covers every text of the brief that speaks of the recipe. What is shared
// with the facts is copied first.
func (v veil) draw(b *beverage.Brief) {
	b.Class.Note = v.over(b.Class.Note)
	b.Process = v.all(b.Process)
	for i := range b.Filings {
		b.Filings[i].Value = beverage.Text(v.over(string(b.Filings[i].Value)))
	}
	for i := range b.Critical {
		b.Critical[i].Value = beverage.Text(v.over(string(b.Critical[i].Value)))
	}
	for i := range b.Findings {
		b.Findings[i].Detail = v.over(b.Findings[i].Detail)
		b.Findings[i].Source = v.over(b.Findings[i].Source)
		b.Findings[i].Values = v.values(b.Findings[i].Values)
	}
	for i := range b.Routes {
		for j := range b.Routes[i].Reasons {
			r := &b.Routes[i].Reasons[j]
			r.Text, r.Source = v.over(r.Text), v.over(r.Source)
		}
	}
}

func (v veil) all(texts []string) []string {
	covered := make([]string, len(texts))
	for i, t := range texts {
		covered[i] = v.over(t)
	}
	return covered
}

func (v veil) values(values map[string]any) map[string]any {
	covered := make(map[string]any, len(values))
	for k, x := range values {
		switch x := x.(type) {
		case string:
			covered[k] = v.over(x)
		case []string:
			covered[k] = v.all(x)
		default:
			covered[k] = x
		}
	}
	return covered
}
