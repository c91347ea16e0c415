// Package rule holds every finding posset can make, one declaration a file: its
// id, its level, the rows of law it rests on, its test on the Facts, and its
// words. What a finding means, its source and how to clear it are read from the
// declaration by the explanation, the reference page and the tests alike.
package rule

import (
	"cmp"
	"slices"
	"sync"

	"posset/beverage"
	"posset/beverage/facts"
)

// RouteEffect is what a hit says about the route that the facts describe.
type RouteEffect int

const (
	NoEffect   RouteEffect = iota // the finding does not speak about the route
	LeavesOpen                    // the route can neither be ruled out nor left standing
	RulesOut                      // the drink as described does not go down this route
)

// Rule is one finding: when it is made, and what is said of it.
type Rule struct {
	ID    string
	Level beverage.Level
	Title string
	Means string   // what it means, for somebody who never met it
	Clear string   // what clears it
	Law   []string // rows of beverage/law; the first is cited where a hit names none
	// OnRoutes says that the rule may rule a process route out or leave it open;
	// only such rules are asked when a route is tried.
	OnRoutes bool
	Check    func(f *facts.Facts) []Hit
}

// Hit is one occasion on which a rule speaks.
type Hit struct {
	Level   *beverage.Level   // where this hit's level is not the rule's own
	Detail  string            // a sentence: what was found, where the drink stands
	Markets []beverage.Market // nil: every market of the drink
	Values  Values
	Row     string          // row of law that this hit rests on
	Rows    []string        // rows to choose from for each market, in place of the rule's
	Source  beverage.Source // of a published window that decided, in place of a row
	Route   RouteEffect
}

// Values are the figures behind a finding; names end in their unit.
type Values map[string]any

// At returns the level as a hit holds it.
func at(l beverage.Level) *beverage.Level { return &l }

var declared []*Rule

// declare enters a rule; it is called once for each, when the program starts.
func declare(r Rule) *Rule {
	declared = append(declared, &r)
	return &r
}

// byID is every rule in the order of the ids, sorted once.
var byID = sync.OnceValue(func() []*Rule {
	list := slices.Clone(declared)
	slices.SortFunc(list, func(a, b *Rule) int { return cmp.Compare(a.ID, b.ID) })
	return list
})

// All returns every rule, by id.
func All() []*Rule { return slices.Clone(byID()) }

// Find returns the rule with an id.
func Find(id string) (*Rule, bool) {
	for _, r := range declared {
		if r.ID == id {
			return r, true
		}
	}
	return nil, false
}

// Findings holds every rule against the facts: stops first, then reviews, then
// notes, each in the order of their ids.
func Findings(f *facts.Facts) []beverage.Finding {
	return About(f, func(string) bool { return true })
}

// About is Findings of only those rules whose ids are wanted.
func About(f *facts.Facts, wanted func(id string) bool) []beverage.Finding {
	list := []beverage.Finding{}
	for _, r := range byID() {
		if !wanted(r.ID) {
			continue
		}
		for _, h := range r.Check(f) {
			list = append(list, r.finding(f, h))
		}
	}
	slices.SortStableFunc(list, func(a, b beverage.Finding) int { return cmp.Compare(a.Level, b.Level) })
	return list
}

func (r *Rule) finding(f *facts.Facts, h Hit) beverage.Finding {
	source := r.source(h, f.Drink.Markets)
	x := beverage.Finding{
		ID: r.ID, Level: r.Level, Title: r.Title, Detail: h.Detail, Markets: h.Markets,
		Values: h.Values, Source: source.Text, Basis: source.Basis,
	}
	if h.Level != nil {
		x.Level = *h.Level
	}
	if x.Markets == nil {
		x.Markets = f.Drink.Markets
	}
	if x.Values == nil {
		x.Values = Values{}
	}
	return x
}

// OnRoute holds the rules against the facts of a route and says whether it is
// ruled out, with the reasons. A route fits only as "not ruled out".
func OnRoute(f *facts.Facts) (beverage.Fit, []beverage.Reason) {
	fit, reasons := beverage.Fits, []beverage.Reason{}
	for _, r := range byID() {
		if !r.OnRoutes {
			continue
		}
		for _, h := range r.Check(f) {
			switch {
			case h.Route == RulesOut:
				fit = beverage.DoesNotFit
			case h.Route == LeavesOpen && fit == beverage.Fits:
				fit = beverage.FitUnknown
			case h.Route == NoEffect:
				continue
			}
			reasons = append(reasons, beverage.Reason{ID: r.ID, Text: h.Detail, Source: r.source(h, f.Drink.Markets).Text})
		}
	}
	return fit, reasons
}
