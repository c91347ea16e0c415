package spec

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"

	"posset/beverage"
	"posset/beverage/quantity"
)

// Options say where a spec may be read from.
type Options struct {
	Stdin        io.Reader // what "-" reads
	AllowOutside bool      // records and ingredient files outside the spec's folder
}

// Read reads the spec file at path; "-" reads o.Stdin, with records named from
// the current folder. The error is a *Problems with every problem of the file.
func Read(path string, o Options) (*beverage.Drink, error) {
	data, problem := input(path, o.Stdin)
	if problem != nil {
		return nil, &Problems{File: path, List: []Problem{*problem}}
	}
	dir := filepath.Dir(path)
	if path == "-" {
		dir = "."
	}
	return Parse(data, path, dir, o)
}

func input(path string, stdin io.Reader) ([]byte, *Problem) {
	switch {
	case path != "-":
		return readFile(path, path)
	case stdin == nil:
		return nil, &Problem{Place: beverage.Place{File: path}, Read: "is standard input, and there is none", Help: "name a spec file"}
	}
	return readAll(stdin, path)
}

// Parse reads a spec from its bytes; file is how messages call it, and dir the
// folder that the files it names are in. The error is a *Problems.
func Parse(data []byte, file, dir string, o Options) (*beverage.Drink, error) {
	sum := sha256.Sum256(data)
	d := &beverage.Drink{File: file, Dir: dir, SHA256: hex.EncodeToString(sum[:])}
	if err := fill(d, data, o).error(file); err != nil {
		return nil, err
	}
	if len(d.Markets) == 0 {
		d.Markets = []beverage.Market{beverage.US}
	}
	return d, nil
}

// fill reads the file into the drink and returns what is wrong with it.
func fill(d *beverage.Drink, data []byte, o Options) *gathering {
	wrong := &gathering{}
	if doc := parsed(d.File, data, wrong); doc != nil {
		r := &reader{doc: doc, dir: d.Dir, outside: o.AllowOutside, keys: allKeys(), gathering: wrong}
		specFile.into(r, doc.root, d)
		r.needDrink()
	}
	return wrong
}

// parsed turns bytes into a tree; nil where they are no TOML file of ours.
func parsed(file string, data []byte, wrong *gathering) *document {
	plain, problem := plainText(file, data)
	if problem == nil && len(data) > mostBytes {
		read, help := tooLarge(int64(len(data)))
		problem = &Problem{Place: beverage.Place{File: file}, Read: read, Help: help}
	}
	if problem != nil {
		wrong.add(*problem)
		return nil
	}
	doc := parseDocument(file, plain)
	if doc.fatal != nil {
		wrong.add(*doc.fatal)
		return nil
	}
	for _, p := range doc.problems {
		wrong.add(p)
	}
	return doc
}

// needDrink refuses a file without the table that makes it a spec.
func (r *reader) needDrink() {
	if r.doc.root.child("drink") != nil || r.doc.broken {
		return
	}
	for _, s := range r.strange {
		if len(quantity.Nearest(s, []string{"drink"})) > 0 {
			return // told already, with the name to write
		}
	}
	read := "has no [drink] table"
	if len(r.doc.root.keys) == 0 {
		read = "is empty: it " + read
	}
	r.add(Problem{Place: beverage.Place{File: r.doc.file}, Read: read, Help: "write [drink], and under it name and serving"})
}

// IngredientFile reads a file of the user's own: [[ingredient]] tables without
// amount; path is how messages call it. The error is a *Problems.
func IngredientFile(path string, data []byte) ([]beverage.Ingredient, error) {
	wrong := &gathering{}
	list := ownIngredients(path, data, wrong)
	if err := wrong.error(path); err != nil {
		return nil, err
	}
	return list, nil
}

type ownList struct{ all []beverage.Ingredient }

var ownFile = table[ownList]{fields: []field[ownList]{
	several("ingredient", mostOwnIngredients, "An ingredient described by its user.", ownIngredient,
		func(_ *reader, _ *node, l *ownList, i beverage.Ingredient) { l.all = append(l.all, i) }),
}}

func ownIngredients(path string, data []byte, wrong *gathering) []beverage.Ingredient {
	var list ownList
	if doc := parsed(path, data, wrong); doc != nil {
		ownFile.into(&reader{doc: doc, gathering: wrong}, doc.root, &list)
	}
	return list.all
}

// Keys returns every table and key of the spec file, in the order in which the
// reference tells them.
func Keys() []KeyDoc { return slices.Clone(allKeys()) }

var allKeys = sync.OnceValue(func() []KeyDoc { return specFile.docs("") })

var drinkTable = regexp.MustCompile(`(?mi)^[ \t]*(\[[ \t]*["']?drink["']?[ \t]*[].]|["']?drink["']?[ \t]*[.=])`)

// HasDrinkTable tells whether the file at path looks like a spec: its name ends
// in .toml and a [drink] table stands in it, however spelt or encoded, so that
// one that cannot be read is named and not passed over.
func HasDrinkTable(path string) bool {
	if !strings.EqualFold(filepath.Ext(path), ".toml") {
		return false
	}
	head, ok := headOf(path)
	return ok && drinkTable.Match(head)
}
