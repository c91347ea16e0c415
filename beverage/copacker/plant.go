package copacker

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/law"
)

// plant holds against the line what hangs on no process: where it may sell, what
// it is licensed for, what it handles, what it can pack.
func (j *judge) plant(l *Line) {
	j.markets(l)
	j.distribution(l)
	j.licences(l)
	j.allergens(l)
	j.run(l)
	j.gas(l)
	j.body(l)
	j.packs(l)
}

// markets asks for every market of the drink but Codex, which is a standard and
// no place of sale.
func (j *judge) markets(l *Line) {
	for _, m := range j.f.Drink.Markets {
		switch {
		case m == beverage.Codex:
		case !l.Markets.Known:
			j.line("market", "line.markets", beverage.Place{}, l.Place, fmt.Sprintf("the drink is for %s, and the line does not say for which markets it packs", m))
		case !slices.Contains(l.Markets.V, m):
			j.line("market", "line.markets", l.Markets.Place, l.Place, fmt.Sprintf("the drink is for %s, and the line packs for %s", m, listed(l.Markets.V)))
		}
	}
}

func (j *judge) distribution(l *Line) {
	d := j.f.Drink.Storage.Distribution
	switch {
	case !d.Known:
		j.spec("distribution", "storage.distribution", d.Place, "the spec does not say how the drink is kept and shipped", "")
	case !l.Distribution.Known:
		j.line("distribution", "line.distribution", beverage.Place{}, l.Place, fmt.Sprintf("%s is asked, and the line does not say how it stores and ships", d.V))
	case !slices.Contains(l.Distribution.V, d.V):
		j.line("distribution", "line.distribution", l.Distribution.Place, l.Place, fmt.Sprintf("%s is asked, and the line stores and ships %s", d.V, listed(l.Distribution.V)))
	}
}

// registrations asks, market by market, for what the law wants of a plant that
// packs such a drink by such a route; the process of this very drink is still to be filed.
func (j *judge) registrations(l *Line) {
	kinds := append([]law.FiledAs{law.FiledAny}, assess.FiledAs(j.f)...)
	for _, m := range j.f.Drink.Markets {
		for _, kind := range kinds {
			word := registration(m, kind)
			if kind == law.FiledDairy || !asks(m, kind) || slices.Contains(l.Registrations.V, word) {
				continue
			}
			first := duties(m, kind)[0]
			j.line("registration", "line.registrations", l.Registrations.Place, l.Place, fmt.Sprintf("%q is not said of the plant: %s (%s)", word, first.Duty, law.MustGet(first.RowID).Cite()))
		}
	}
}

func (j *judge) licences(l *Line) {
	if j.f.Circumstances().Milk && !l.DairyLicence.Or(false) {
		j.line("dairy licence", "line.dairy_licence", l.DairyLicence.Place, l.Place, "milk or milk protein is in the drink"+dairyDuties(j.f.Drink.Markets)+saysNo(l.DairyLicence))
	}
	if a := j.f.Drink.AlcoholPercent; a.Known && a.V >= law.AlcoholPercent() && !l.AlcoholLicence.Or(false) {
		j.line("alcohol licence", "line.alcohol_licence", l.AlcoholLicence.Place, l.Place, fmt.Sprintf("the drink holds %.2g %% alcohol%s", a.V, saysNo(l.AlcoholLicence)))
	}
}

func saysNo(g beverage.Given[bool]) string {
	if g.Known {
		return ", and the line has none"
	}
	return ", and the line does not say that it has one"
}

// dairyDuties names the texts by which the markets ask something of a plant that
// uses milk.
func dairyDuties(markets []beverage.Market) string {
	var list []string
	for _, m := range markets {
		for _, d := range duties(m, law.FiledDairy) {
			list = append(list, fmt.Sprintf("%s: %s", m, law.MustGet(d.RowID).Cite()))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return " (for its licence see " + strings.Join(list, "; ") + ")"
}

// allergens asks that the line handles what the drink holds, and notes what the
// line handles beside it.
func (j *judge) allergens(l *Line) {
	for _, a := range j.contains() {
		switch {
		case !l.Allergens.Known:
			j.line("allergen", "line.allergens", beverage.Place{}, l.Place, fmt.Sprintf("%s is in the drink, and the line does not say which allergens it handles", a))
		case !slices.Contains(l.Allergens.V, a):
			j.line("allergen", "line.allergens", l.Allergens.Place, l.Place, fmt.Sprintf("%s is in the drink, and the line handles %s", a, listed(l.Allergens.V)))
		}
	}
	for _, name := range j.untold() {
		j.request("allergen", "--allergens", fmt.Sprintf("the allergens of %s are not known: ask its supplier, then say them with --allergens, or none", name))
	}
	var beside []string
	for _, a := range l.Allergens.V {
		if a != none && !slices.Contains(j.contains(), a) {
			beside = append(beside, a)
		}
	}
	if len(beside) > 0 {
		j.note("handles " + strings.Join(beside, ", ") + " beside what the drink holds: ask how the line is cleared, and look at the label")
	}
}

// contains is what the library knows of the recipe, and what the request adds.
func (j *judge) contains() []string {
	var list []string
	for _, l := range j.f.Recipe.Lines {
		for _, a := range l.Allergens {
			if !slices.Contains(list, a) {
				list = append(list, a)
			}
		}
	}
	for _, a := range j.o.Allergens {
		if a != none && !slices.Contains(list, a) {
			list = append(list, a)
		}
	}
	return list
}

// untold names the ingredients of which nobody knows the allergens.
func (j *judge) untold() []string {
	if len(j.o.Allergens) > 0 {
		return nil
	}
	var names []string
	for _, l := range j.f.Recipe.Lines {
		if !l.Found {
			names = append(names, l.Line.Name)
		}
	}
	if len(j.f.Recipe.Lines) == 0 {
		names = append(names, "a recipe that is not given")
	}
	return names
}

// run holds the planned run against the least that the plant makes.
func (j *judge) run(l *Line) {
	least := l.MinimumRunML
	switch {
	case j.o.RunML == nil && least.Known:
		j.note("makes " + fills(least.V) + " at least; no run was asked for")
	case j.o.RunML == nil:
	case !least.Known:
		j.line("minimum run", "line.minimum_run", beverage.Place{}, l.Place, fmt.Sprintf("a run of %s is asked, and the line does not say its least", fills(*j.o.RunML)))
	case *j.o.RunML < least.V:
		j.line("minimum run", "line.minimum_run", least.Place, l.Place, fmt.Sprintf("a run of %s is asked, and the line makes %s at least", fills(*j.o.RunML), fills(least.V)))
	}
}

func listed[T ~string](list []T) string {
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = string(w)
	}
	return strings.Join(words, ", ")
}
