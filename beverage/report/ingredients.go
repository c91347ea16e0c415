package report

import (
	"slices"
	"strconv"
	"strings"

	"posset/beverage"
)

// IngredientsResult is entries of the library, or of a file of the user's own.
type IngredientsResult struct {
	Schema      string            `json:"schema"`
	Tool        beverage.Tool     `json:"tool"`
	Ingredients []IngredientEntry `json:"ingredients"`
	Problems    []string          `json:"problems"` // figures that cannot be
	Cautions    []string          `json:"cautions"`
}

// IngredientEntry is one ingredient with where its figures come from.
type IngredientEntry struct {
	Name      string             `json:"name"`
	Synonyms  []string           `json:"synonyms"`
	ENumber   string             `json:"e_number"`
	Kind      beverage.Kind      `json:"kind"`
	Nature    string             `json:"nature"`
	Formula   string             `json:"formula"`
	Allergens []string           `json:"allergens"`
	Spores    string             `json:"spores"`
	Figures   []IngredientFigure `json:"figures"`
	Unknown   []string           `json:"unknown"`
}

// IngredientFigure is one figure; a field's name ends in its unit.
type IngredientFigure struct {
	Field   string         `json:"field"`
	Low     *float64       `json:"low"`
	Typical *float64       `json:"typical"`
	High    *float64       `json:"high"`
	Text    string         `json:"text"`
	Source  string         `json:"source"`
	Basis   beverage.Basis `json:"basis"`
	Note    string         `json:"note"`
}

// Ingredients is one entry in full, or a list by kind.
func Ingredients(r *IngredientsResult, _ Units) Doc {
	d := Doc{Title: "Ingredients", Headline: counted(len(r.Ingredients), "ingredient"), Tool: r.Tool, Cautions: r.Cautions, Sheet: figureSheet(r.Ingredients)}
	d.add("Figures that cannot be", listOf(r.Problems))
	if len(r.Ingredients) == 1 {
		d.entryInFull(r.Ingredients[0])
		return d
	}
	for _, k := range append([]beverage.Kind{""}, beverage.Kinds...) {
		d.add(kindTitle(k), entryTable(r.Ingredients, k))
	}
	return d
}

func kindTitle(k beverage.Kind) string {
	if k == "" {
		return "kind not known"
	}
	return string(k)
}

func entryTable(es []IngredientEntry, k beverage.Kind) Table {
	t := Table{Columns: columns("name", "E number", "also called")}
	for _, e := range es {
		if e.Kind == k {
			t.Rows = append(t.Rows, []string{e.Name, orDash(e.ENumber), orDash(strings.Join(e.Synonyms, ", "))})
		}
	}
	return t
}

func (d *Doc) entryInFull(e IngredientEntry) {
	d.Title, d.Headline = e.Name, e.Name+": "+orUnknown(string(e.Kind))
	d.add("Entry", Figures{
		{Name: "Also called", Words: orNone(e.Synonyms, "-")},
		{Name: "E number", Words: orDash(e.ENumber)},
		{Name: "As a food", Words: orUnknown(e.Nature)},
		{Name: "Formula", Words: orDash(e.Formula)},
		{Name: "Allergens", Words: orNone(e.Allergens, "none stated")},
	})
	sources := distinctSources(e.Figures)
	d.add("Figures, per mass of the ingredient as sold", figureTable(e.Figures, sources))
	d.add("Sources", sourceList(sources))
	d.add("Not known", Para(strings.Join(e.Unknown, ", ")))
}

// figureTable names each source once, by a number: one source gives most of
// an entry's figures.
func figureTable(fs []IngredientFigure, sources []string) Table {
	t := Table{Columns: numbers(columns("figure", "low", "typical", "high", "source", "note"), 1, 5)}
	for _, f := range fs {
		at := 1 + slices.Index(sources, sourceOf(f))
		t.Rows = append(t.Rows, []string{f.Field, figureCell(f.Low), figureCell(f.Typical), figureCell(f.High), strconv.Itoa(at), join("; ", f.Text, f.Note)})
	}
	return t
}

func sourceOf(f IngredientFigure) string { return join(", ", orUnknown(f.Source), string(f.Basis)) }

func distinctSources(fs []IngredientFigure) []string {
	var out []string
	for _, f := range fs {
		if s := sourceOf(f); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

func sourceList(sources []string) Figures {
	fs := make(Figures, len(sources))
	for i, s := range sources {
		fs[i] = Figure{Name: strconv.Itoa(i + 1), Words: s}
	}
	return fs
}

func figureCell(v *float64) string {
	if v == nil {
		return "-"
	}
	return significant(*v)
}

// figureSheet has one row a figure, and one for an entry without any.
func figureSheet(es []IngredientEntry) Table {
	t := Table{Columns: columns("name", "kind", "nature", "e_number", "synonyms", "field", "low", "typical", "high", "text", "source", "basis", "note")}
	for _, e := range es {
		head := []string{e.Name, string(e.Kind), e.Nature, e.ENumber, strings.Join(e.Synonyms, "; ")}
		for _, f := range e.Figures {
			t.Rows = append(t.Rows, append(head[:len(head):len(head)], f.Field, numeral(f.Low), numeral(f.Typical), numeral(f.High), f.Text, f.Source, string(f.Basis), f.Note))
		}
		if len(e.Figures) == 0 {
			t.Rows = append(t.Rows, append(head[:len(head):len(head)], "", "", "", "", "", "", "", ""))
		}
	}
	return t
}
