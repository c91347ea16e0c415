package spec

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage/quantity"
)

// KeyDoc tells one key of the spec. The same declaration reads the key, offers
// it when one is mistyped, and stands in the reference and the JSON Schema.
type KeyDoc struct {
	Key      string // "measured.ph"
	Form     Form
	Type     string   // "a bare number from 0 to 14", "a volume"
	Values   []string // where only certain words will do
	Low      float64  // of a bare number
	High     float64
	Default  string // what an absent key counts as; empty: unknown
	Means    string
	Example  string // as written in a spec, quotes included
	Required bool
}

// Form is how a key's value is written.
type Form int

// The forms of values.
const (
	FormTable Form = iota
	FormTables
	FormText
	FormQuantity
	FormNumber
	FormBool
	FormDate
	FormWord
	FormTexts // a list of texts, or one
	FormWords // a list of words, or one
	FormMap   // keys of the user's own
	FormBound // a quantity, or a bare number
)

// field is a key of a table that fills a T.
type field[T any] struct {
	KeyDoc
	read  func(r *reader, n *node, into *T)
	inner func() []KeyDoc // of a table
}

// must marks a key that its table cannot be without.
func (f field[T]) must() field[T] {
	f.Required = true
	return f
}

// otherwise says what an absent key counts as.
func (f field[T]) otherwise(value string) field[T] {
	f.Default = value
	return f
}

// table is the declaration of a table of the file.
type table[T any] struct {
	fields []field[T]
	check  func(r *reader, n *node, it *T) // what only shows with the whole table; may be nil
}

// into reads a table's keys and tells what is unknown or missing.
func (t table[T]) into(r *reader, n *node, it *T) {
	if n.shape != isTable {
		r.wrong(n, "is "+n.called(), "write one table ["+n.path+"]")
		return
	}
	var offered []string
	for _, k := range n.keys {
		if f := t.find(k.name); f != nil {
			f.read(r, k, it)
		} else {
			offered = append(offered, r.unknown(n, k, t.names())...)
		}
	}
	for _, f := range t.fields {
		if f.Required && n.child(f.Key) == nil && !slices.Contains(offered, f.Key) {
			r.missing(n, f.KeyDoc)
		}
	}
	if t.check != nil {
		t.check(r, n, it)
	}
}

func (t table[T]) find(name string) *field[T] {
	for i := range t.fields {
		if t.fields[i].Key == name {
			return &t.fields[i]
		}
	}
	return nil
}

func (t table[T]) names() []string {
	names := make([]string, len(t.fields))
	for i, f := range t.fields {
		names[i] = f.Key
	}
	return names
}

// docs returns the table's keys under a prefix, inner tables after them.
func (t table[T]) docs(prefix string) []KeyDoc {
	var all []KeyDoc
	for _, f := range t.fields {
		doc := f.KeyDoc
		doc.Key = join(prefix, doc.Key)
		all = append(all, doc)
		if f.inner != nil {
			for _, in := range f.inner() {
				in.Key = join(doc.Key, in.Key)
				all = append(all, in)
			}
		}
	}
	return all
}

func join(prefix, key string) string { return strings.TrimPrefix(prefix+"."+key, ".") }

// one declares a table that fills a part of the drink.
func one[T, P any](key, means string, t table[P], part func(*T) *P) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormTable, Type: "a table", Means: means},
		read:   func(r *reader, n *node, it *T) { t.into(r, n, part(it)) },
		inner:  func() []KeyDoc { return t.docs("") },
	}
}

// several declares a list of tables, at most so many.
func several[T, P any](key string, most int, means string, t table[P], add func(r *reader, n *node, it *T, one P)) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormTables, Type: "tables, " + fmt.Sprint(most) + " at most", Means: means},
		inner:  func() []KeyDoc { return t.docs("") },
		read: func(r *reader, n *node, it *T) {
			for _, item := range r.tables(n, most) {
				var one P
				t.into(r, item, &one)
				add(r, item, it, one)
			}
		},
	}
}

// tables returns the tables of a list, as far as they are tables.
func (r *reader) tables(n *node, most int) []*node {
	if n.shape != isList {
		r.wrong(n, "is "+n.called(), "write each as [["+n.path+"]]")
		return nil
	}
	if len(n.items) > most {
		r.wrong(n.items[most], fmt.Sprintf("is one more than %d", most), fmt.Sprintf("write %d at most", most))
		return n.items[:most]
	}
	return n.items
}

// unknown tells a key that the table does not have, with the nearest that it
// has, or where else the key belongs. It returns the nearest.
func (r *reader) unknown(table, k *node, known []string) (near []string) {
	if table.path == "" && k.shape == isTable {
		r.strange = append(r.strange, k.name)
	}
	read := "unknown key " + quantity.Quote(k.name)
	if k.headed && k.at == k.valueAt {
		read = "unknown table " + quantity.Quote(k.name)
	}
	near = quantity.Nearest(k.name, known)
	homes := r.homes(k.name)
	switch {
	case len(near) > 0 && strings.EqualFold(near[0], k.name):
		r.wrongKey(k, read, "keys are spelt exactly: write "+quantity.Either(near))
	case len(near) > 0:
		r.wrongKey(k, read, "write "+quantity.Either(near))
	case len(homes) > 0:
		r.wrongKey(k, read+" here", "it belongs "+strings.Join(homes, " or "))
	default:
		r.wrongKey(k, read, "write "+oneOf(known))
	}
	return near
}

func oneOf(words []string) string {
	if len(words) == 1 {
		return quantity.Quote(words[0])
	}
	return "one of " + quantity.Either(words)
}

// homes lists the tables that have a key of this name.
func (r *reader) homes(name string) []string {
	var homes []string
	for _, doc := range r.keys {
		home, last := split(doc.Key)
		if last == name && len(homes) < 3 {
			homes = append(homes, r.bracketed(home))
		}
	}
	return homes
}

func split(key string) (home, last string) {
	if dot := strings.LastIndexByte(key, '.'); dot >= 0 {
		return key[:dot], key[dot+1:]
	}
	return "", key
}

func (r *reader) bracketed(home string) string {
	if home == "" {
		return "at the top of the file"
	}
	for _, doc := range r.keys {
		if doc.Key == home && doc.Form == FormTables {
			return "in [[" + home + "]]"
		}
	}
	return "in [" + home + "]"
}
