package rule

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"posset/beverage"
	"posset/beverage/facts"
)

// phWords tells the deciding pH as an interval with its basis.
func phWords(f *facts.Facts) string {
	p := f.PH.Decides
	if !p.Known() {
		return "the pH is not known"
	}
	low, high := p.Outward(2)
	return fmt.Sprintf("%s pH %.2f to %.2f", p.Basis, low, high)
}

// phValues are the figures behind a finding that hangs on the pH.
func phValues(f *facts.Facts) Values {
	p := f.PH.Decides
	if !p.Known() {
		return Values{"ph_low": nil, "ph_high": nil}
	}
	return Values{"ph_low": p.Low, "ph_high": p.High}
}

// routeWords names the route, or says that none is given.
func routeWords(f *facts.Facts) string {
	switch r := f.Process.Route; r {
	case "":
		return "no process route is given"
	case beverage.NoProcess:
		return "the route is none"
	default:
		return "the route is " + string(r)
	}
}

// keptWords says how the pack is kept, and that unsaid counts as warm.
func keptWords(f *facts.Facts) string {
	if d := f.Drink.Storage.Distribution; d.Known {
		return "kept " + string(d.V)
	}
	return "distribution is not given, which counts as ambient"
}

// listWords joins names, at most five of them.
func listWords(names []string) string {
	if len(names) > 5 {
		return strings.Join(names[:5], ", ") + fmt.Sprintf(" and %d more", len(names)-5)
	}
	return strings.Join(names, ", ")
}

// upper begins a sentence.
func upper(s string) string {
	if s == "" {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// sortByDetail puts hits of one rule in an order that does not hang on maps.
func sortByDetail(hits []Hit) {
	slices.SortFunc(hits, func(a, b Hit) int { return strings.Compare(a.Detail, b.Detail) })
}
