// Package starter writes a first spec for a drink that somebody has in mind: a
// usual recipe of its kind, what the owner knows, and a list of what is still to
// be found out and by whom. What nobody said stays out of the spec.
package starter

import (
	"context"
	"embed"
	"fmt"
	"strings"
	"sync"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/quantity"
	"posset/beverage/spec"
)

// The kinds are specs themselves, each with its title as first line; order.txt
// names them in the order in which they are offered.
//
//go:embed kinds
var kindFiles embed.FS

// Kind is a kind of drink with its usual recipe.
type Kind struct {
	ID    string
	Title string

	drink    *beverage.Drink
	proteinG float64 // g/L, of the ingredients that are there for their protein
	otherG   float64 // g/L, of all others
}

var kinds = sync.OnceValues(func() ([]Kind, error) {
	order, err := kindFiles.ReadFile("kinds/order.txt")
	if err != nil {
		return nil, err
	}
	var list []Kind
	for _, id := range strings.Fields(string(order)) {
		k, err := readKind(id)
		if err != nil {
			return nil, fmt.Errorf("kind %s: %w", id, err)
		}
		list = append(list, k)
	}
	return list, nil
})

func readKind(id string) (Kind, error) {
	data, err := kindFiles.ReadFile("kinds/" + id + ".toml")
	if err != nil {
		return Kind{}, err
	}
	d, err := spec.Parse(data, id+".toml", ".", spec.Options{})
	if err != nil {
		return Kind{}, err
	}
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	if err != nil {
		return Kind{}, err
	}
	title, _, _ := strings.Cut(string(data), "\n")
	k := Kind{ID: id, Title: strings.TrimPrefix(title, "# "), drink: d}
	for _, p := range f.Protein.Parts {
		if p.Line.Kind == beverage.KindProtein {
			k.proteinG += p.GPerL.Mid
		} else {
			k.otherG += p.GPerL.Mid
		}
	}
	return k, nil
}

// Kinds returns every kind in the order in which they are offered; none where
// the program's own files cannot be read.
func Kinds() []Kind {
	list, _ := kinds()
	return list
}

// Find returns the kind with an id, or an error that offers near ones.
func Find(id string) (Kind, error) {
	list, err := kinds()
	if err != nil {
		return Kind{}, err
	}
	var ids []string
	for _, k := range list {
		if k.ID == id {
			return k, nil
		}
		ids = append(ids, k.ID)
	}
	if near := quantity.Nearest(id, ids); len(near) > 0 {
		return Kind{}, fmt.Errorf("%s is no kind of drink; did you mean %s?", quantity.Quote(id), quantity.Either(near))
	}
	return Kind{}, fmt.Errorf("%s is no kind of drink; write %s", quantity.Quote(id), quantity.Either(ids))
}

// gassed tells whether the kind is carbonated.
func (k Kind) gassed() bool { return k.drink.Carbonation != nil }

// isProtein tells whether an ingredient of the kind is there for its protein.
func (k Kind) isProtein(name string) bool {
	x := ingredient.Default().Resolve([]beverage.Ingredient{{Name: name}}, nil)[0]
	return x.Found && x.Kind == beverage.KindProtein
}
