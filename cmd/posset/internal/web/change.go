package web

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
)

// state is what is compared between two assessments. The page keeps it; the
// server keeps nothing.
type state struct {
	Class    string   `json:"class"`
	PH       string   `json:"ph"`
	Findings []string `json:"findings"` // "stop ph-above-limit"
	Left     []string `json:"left"`     // routes
}

func stateOf(a *beverage.Assessment) *state {
	s := &state{Class: a.AcidClass.Class.String(), PH: "not known", Findings: []string{}, Left: []string{}}
	if p := a.AcidClass.PH; p != nil {
		s.PH = fmt.Sprintf("%.2f", *p)
	}
	for _, f := range a.Findings {
		if one := f.Level.String() + " " + f.ID; !slices.Contains(s.Findings, one) {
			s.Findings = append(s.Findings, one)
		}
	}
	for _, r := range a.Routes {
		if r.Outcome == beverage.Fits {
			s.Left = append(s.Left, string(r.Route))
		}
	}
	return s
}

// changeSince tells what an assessment says that the one before did not, and
// what it no longer says.
func changeSince(before, now *state) string {
	if before == nil {
		return "First assessment: class " + now.Class + ", pH " + now.PH + ", " + plural(len(now.Findings), "finding") + "."
	}
	var said []string
	if before.Class != now.Class {
		said = append(said, "Class was "+before.Class+", is "+now.Class)
	}
	if before.PH != now.PH {
		said = append(said, "pH was "+before.PH+", is "+now.PH)
	}
	for _, list := range []struct {
		called string
		words  []string
	}{
		{"New", without(now.Findings, before.Findings)},
		{"Gone", without(before.Findings, now.Findings)},
		{"Ways no longer ruled out", without(now.Left, before.Left)},
		{"Ways now ruled out or not told", without(before.Left, now.Left)},
	} {
		if len(list.words) > 0 {
			said = append(said, list.called+": "+strings.Join(list.words, ", "))
		}
	}
	if len(said) == 0 {
		return "Assessed again: nothing changed in class, pH, findings or ways left."
	}
	return strings.Join(said, ". ") + "."
}

func without(list, other []string) []string {
	return slices.DeleteFunc(slices.Clone(list), func(s string) bool { return slices.Contains(other, s) })
}

func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return itoa(n) + " " + thing + "s"
}
