package spec

import (
	"cmp"
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
	if problems := fill(d, data, o); len(problems) > 0 {
		return nil, gathered(file, problems)
	}
	if len(d.Markets) == 0 {
		d.Markets = []beverage.Market{beverage.US}
	}
	return d, nil
}

// fill reads the file into the drink and returns what is wrong with it.
func fill(d *beverage.Drink, data []byte, o Options) []Problem {
	plain, problem := plainText(d.File, data)
	if problem == nil && len(data) > mostBytes {
		read, help := tooLarge(int64(len(data)))
		problem = &Problem{Place: beverage.Place{File: d.File}, Read: read, Help: help}
	}
	if problem != nil {
		return []Problem{*problem}
	}
	doc := parseDocument(d.File, plain)
	if doc.fatal != nil {
		return []Problem{*doc.fatal}
	}
	r := &reader{doc: doc, dir: d.Dir, outside: o.AllowOutside, keys: Keys(), problems: doc.problems}
	specFile.into(r, doc.root, d)
	r.needDrink()
	return r.problems
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
	r.problems = append(r.problems, Problem{Place: beverage.Place{File: r.doc.file}, Read: read, Help: "write [drink], and under it name and serving"})
}

// gathered puts problems in the order of the file and cuts their number.
func gathered(file string, all []Problem) *Problems {
	slices.SortStableFunc(all, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(rank(a, file), rank(b, file)), cmp.Compare(a.Place.File, b.Place.File),
			cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Column, b.Column))
	})
	p := &Problems{File: file, List: all}
	if len(all) > mostShown {
		p.List, p.More = all[:mostShown], len(all)-mostShown
	}
	return p
}

// rank puts the spec itself before the files that it names.
func rank(p Problem, file string) int {
	if p.Place.File == file {
		return 0
	}
	return 1
}

// IngredientFile reads a file of the user's own: [[ingredient]] tables without
// amount; path is how messages call it. The error is a *Problems.
func IngredientFile(path string, data []byte) ([]beverage.Ingredient, error) {
	list, problems := ownIngredients(path, data)
	if len(problems) > 0 {
		return nil, gathered(path, problems)
	}
	return list, nil
}

type ownList struct{ all []beverage.Ingredient }

var ownFile = table[ownList]{fields: []field[ownList]{
	several("ingredient", mostOwnIngredients, "An ingredient described by its user.", ownIngredient,
		func(_ *reader, _ *node, l *ownList, i beverage.Ingredient) { l.all = append(l.all, i) }),
}}

func ownIngredients(path string, data []byte) ([]beverage.Ingredient, []Problem) {
	plain, problem := plainText(path, data)
	if problem != nil {
		return nil, []Problem{*problem}
	}
	doc := parseDocument(path, plain)
	if doc.fatal != nil {
		return nil, []Problem{*doc.fatal}
	}
	r := &reader{doc: doc, problems: doc.problems}
	var list ownList
	ownFile.into(r, doc.root, &list)
	return list.all, r.problems
}

// Keys returns every table and key of the spec file, in the order in which the
// reference tells them.
var Keys = sync.OnceValue(func() []KeyDoc { return specFile.docs("") })

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
