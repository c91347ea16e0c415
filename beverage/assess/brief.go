package assess

import (
	"context"
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
)

// standing is what a brief says of itself before all else.
const standing = "A request for review, not a scheduled process. It tells a co-packer and a process authority what the drink is, what is known of it and what is not; they decide."

// MakeBrief writes the brief of a drink for a co-packer and a process authority.
// disclose says how much of the formula it tells: full, classes (grams by kind of
// ingredient) or none. It fails for another word, and where a record that the
// spec names cannot be used.
func MakeBrief(ctx context.Context, d *beverage.Drink, disclose string, o Options) (*beverage.Brief, error) {
	how, err := disclosureOf(disclose)
	if err != nil {
		return nil, err
	}
	f, err := facts.Of(ctx, d, ingredient.Default())
	if err != nil {
		return nil, err
	}
	t, err := briefTables()
	if err != nil {
		return nil, err
	}
	return briefOf(f, how, t, o), nil
}

func briefOf(f *facts.Facts, how disclosure, t *tables, o Options) *beverage.Brief {
	a := assessment(f, o)
	s := subjectOf(f, a.Findings)
	b := &beverage.Brief{
		Schema: beverage.BriefSchema, Tool: o.tool(), Input: a.Input, Standing: standing,
		Drink: a.Drink, Disclosure: string(how), Formula: formula(f, how), Allergens: allergens(f), Class: a.AcidClass,
		Figures: t.figuresOf(s), Process: process(f, a), Critical: t.criticalOf(s), Routes: a.Routes,
		Missing: t.gapsOf(s), Plant: t.questionsTo("plant", s), CoPacker: t.questionsTo("co-packer", s),
		Authority: t.questionsTo("authority", s), Filings: filings(f), Organisms: a.Organisms, Findings: a.Findings, Cautions: a.Cautions,
	}
	if how == discloseFull {
		b.Assessment = a
		return b
	}
	veilOf(f).draw(b)
	return b
}

// allergens are what the library knows of the recipe's ingredients, with a word
// on those of which nobody knows.
func allergens(f *facts.Facts) []string {
	list := []string{}
	unknown := 0
	for _, l := range f.Recipe.Lines {
		if !l.Found {
			unknown++
		}
		for _, a := range l.Allergens {
			list = appendOnce(list, a)
		}
	}
	if unknown > 0 || len(f.Recipe.Lines) == 0 {
		list = append(list, fmt.Sprintf("not known of %d of %d ingredients: ask the supplier", unknown, len(f.Recipe.Lines)))
	}
	return list
}

func appendOnce(list []string, word string) []string {
	if slices.Contains(list, word) {
		return list
	}
	return append(list, word)
}
