package web

import (
	"regexp"
	"slices"
	"strings"

	"posset/beverage/spec"
	"posset/cmd/posset/internal/web/tomltext"
)

// keyGroup is one table of the spec as a form.
type keyGroup struct {
	Title  string
	Fields []keyField
}

// keyField is one key of it.
type keyField struct {
	Key, Label, Means, Example, Default, Value string
	Values                                     []string
}

// ID is what the field is called within a page.
func (f keyField) ID() string { return "k-" + strings.ReplaceAll(f.Key, ".", "-") }

// rowFields is one ingredient of the text.
type rowFields struct{ Name, Amount keyField }

// formTables are the tables that the form shows, in its order; the others stand
// in the text alone.
var formTables = []string{"drink", "measured", "carbonation", "package", "process", "storage", "market"}

// isPlain tells whether one field of a form can hold a key of this form.
func isPlain(f spec.Form) bool {
	switch f {
	case spec.FormText, spec.FormQuantity, spec.FormNumber, spec.FormBool, spec.FormWord, spec.FormWords, spec.FormDate:
		return true
	}
	return false
}

func keyGroups(text *tomltext.Text) []keyGroup {
	var list []keyGroup
	for _, table := range formTables {
		g := keyGroup{Title: table}
		for _, doc := range spec.Keys() {
			under, last, ok := strings.Cut(doc.Key, ".")
			if ok && under == table && !strings.Contains(last, ".") && isPlain(doc.Form) {
				g.Fields = append(g.Fields, fieldOf(doc, doc.Key, text))
			}
		}
		list = append(list, g)
	}
	return list
}

func fieldOf(doc spec.KeyDoc, path string, text *tomltext.Text) keyField {
	value, _ := text.Get(path)
	f := keyField{Key: path, Label: strings.ReplaceAll(path[strings.LastIndexByte(path, '.')+1:], "_", " "), Means: doc.Means,
		Example: strings.Trim(doc.Example, `"[]`), Default: doc.Default, Value: value, Values: doc.Values}
	switch {
	case doc.Form == spec.FormBool:
		f.Values = []string{"true", "false"}
	case doc.Form == spec.FormWords:
		f.Values, f.Example = nil, strings.Join(doc.Values, ", ")
	}
	return f
}

func recipeFields(text *tomltext.Text) []rowFields {
	rows := []rowFields{}
	name, _ := keyDoc("ingredient.0.name")
	amount, _ := keyDoc("ingredient.0.amount")
	for i := range min(text.Count(ingredientField), mostRows) {
		at := ingredientField + "." + itoa(i)
		rows = append(rows, rowFields{fieldOf(name, at+".name", text), fieldOf(amount, at+".amount", text)})
	}
	return rows
}

var rowNumber = regexp.MustCompile(`^ingredient\.[0-9]{1,3}\.`)

// keyDoc finds the declaration of a key that the form may change.
func keyDoc(path string) (spec.KeyDoc, bool) {
	key := rowNumber.ReplaceAllString(path, "ingredient.")
	keys := spec.Keys()
	i := slices.IndexFunc(keys, func(d spec.KeyDoc) bool { return d.Key == key })
	if i < 0 || !isPlain(keys[i].Form) || slices.ContainsFunc(fileKeys, func(f string) bool { return strings.HasPrefix(key, f) }) {
		return spec.KeyDoc{}, false
	}
	return keys[i], true
}

var dateText = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`)

// writtenAs is what was typed as TOML; what has not the look of its form goes
// in quotes, and the reader of specs says what is wrong with it.
func writtenAs(form spec.Form, value string) string {
	switch {
	case form == spec.FormNumber && bareNumber.MatchString(value),
		form == spec.FormBool && (value == "true" || value == "false"),
		form == spec.FormDate && dateText.MatchString(value):
		return value
	case form == spec.FormWords:
		var words []string
		for _, w := range strings.Split(value, ",") {
			if w = strings.TrimSpace(w); w != "" {
				words = append(words, tomltext.Quote(w))
			}
		}
		return "[" + strings.Join(words, ", ") + "]"
	}
	return tomltext.Quote(value)
}
