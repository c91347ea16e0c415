package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/ingredient"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/console"
)

func ingredientsCommand(con *console.Console) *cobra.Command {
	var kind, check string
	cmd := &cobra.Command{
		Use:   "ingredients [NAME]",
		Short: "The library of ingredients and where its figures come from",
		Long: `Lists the library by kind, finds entries by any word of their names, and shows
one entry with every figure, its source, and what nobody has published of it.
--check holds a file of your own [[ingredient]] tables against what can be.`,
		Example: "  posset ingredients\n  posset ingredients \"citric acid\"\n  posset ingredients --kind protein\n  posset ingredients --check ours.toml",
		Args:    atMostOne("name"),
		RunE: func(_ *cobra.Command, names []string) error {
			if check != "" {
				return checkOwn(con, check)
			}
			entries, err := wantedEntries(ingredient.Default(), names, beverage.Kind(kind))
			if err != nil {
				return err
			}
			return emitEntries(con, entries, nil)
		},
	}
	cmd.Flags().StringVar(&kind, "kind", "", "only this `KIND` of ingredient")
	cmd.Flags().StringVar(&check, "check", "", "hold the ingredients of your own `FILE` against what can be")
	return cmd
}

// wantedEntries is the one entry that a name stands for, or all that it is part of.
func wantedEntries(lib *ingredient.Library, names []string, kind beverage.Kind) ([]ingredient.Entry, error) {
	if err := knownKind(kind); err != nil {
		return nil, err
	}
	entries := lib.All()
	if len(names) == 1 {
		if e, ok := lib.Lookup(names[0]); ok {
			return []ingredient.Entry{e}, nil
		}
		if entries = lib.Search(names[0]); len(entries) == 0 {
			return nil, errors.New("posset ingredients: " + quantity.Quote(names[0]) + " is not in the library" + offer(lib.Near(names[0], 3)) + "; a spec may describe it")
		}
	}
	if kind == "" {
		return entries, nil
	}
	var ofKind []ingredient.Entry
	for _, e := range entries {
		if e.Kind == kind {
			ofKind = append(ofKind, e)
		}
	}
	return ofKind, nil
}

func knownKind(kind beverage.Kind) error {
	var kinds []string
	for _, k := range beverage.Kinds {
		if kind == "" || k == kind {
			return nil
		}
		kinds = append(kinds, string(k))
	}
	return fmt.Errorf("posset ingredients: %s is no kind; write %s", quantity.Quote(string(kind)), quantity.Either(kinds))
}

// mostOwnBytes is the size from which on a file is none of ingredients.
const mostOwnBytes = 1 << 20

func ownFile(path string) ([]byte, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errors.New(path + ": is not there; check the name and the folder")
	}
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", path, errors.Unwrap(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, mostOwnBytes+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read: %w", path, errors.Unwrap(err))
	case len(data) > mostOwnBytes:
		return nil, errors.New(path + ": is too large for a file of ingredients; the most is 1 MB")
	}
	return data, nil
}

// checkOwn shows the user's own ingredients with what cannot be about them.
func checkOwn(con *console.Console, path string) error {
	data, err := ownFile(path)
	if err != nil {
		return err
	}
	own, err := spec.IngredientFile(path, data)
	if err != nil {
		return err
	}
	con.Reads(path)
	entries := ingredient.FromOwn(own)
	var problems []string
	for _, p := range ingredient.Check(entries) {
		problems = append(problems, p.String())
	}
	if err := emitEntries(con, entries, problems); err != nil || len(problems) == 0 {
		return err
	}
	return console.ErrOpen
}

func emitEntries(con *console.Console, entries []ingredient.Entry, problems []string) error {
	result := &report.IngredientsResult{Schema: report.IngredientsSchema, Tool: tool(), Problems: problems, Cautions: []string{libraryCaution}}
	for _, e := range entries {
		result.Ingredients = append(result.Ingredients, entryOf(e))
	}
	return con.Emit(false, console.Result{Value: result, Doc: func(u report.Units) report.Doc { return report.Ingredients(result, u) }})
}

const libraryCaution = "Figures are of published or typical lots; your supplier's own certificate decides, and a process authority decides on the drink."

func entryOf(e ingredient.Entry) report.IngredientEntry {
	out := report.IngredientEntry{Name: e.Name, Synonyms: e.Synonyms, ENumber: e.ENumber, Kind: e.Kind, Nature: e.Nature.String(),
		Formula: e.Formula, Allergens: e.Allergens, Spores: e.Spores, Unknown: e.Unknown()}
	for _, f := range e.Figures {
		g := report.IngredientFigure{Field: f.Field, Text: f.Text, Source: f.Source.Text, Basis: f.Source.Basis, Note: f.Note}
		if f.Text == "" {
			g.Low, g.Typical, g.High = &f.Low, &f.Typical, &f.High
		}
		out.Figures = append(out.Figures, g)
	}
	return out
}
