package spec

import (
	"path/filepath"
	"slices"
	"strings"

	"posset/beverage"
)

// Written is one key as it stands in a spec.
type Written struct {
	Key  string // "process.hold_temperature"
	Item string // which of several tables: an ingredient's name, a record's file, a limit's subject, else its number; "" for the only one
	Text string // the value, texts without their quotes, lists with commas
	Line int
}

// ReadWritten is Read that also returns every key as it was written, in the order
// of the file.
func ReadWritten(path string, o Options) (*beverage.Drink, []Written, error) {
	data, problem := input(path, o.Stdin)
	if problem != nil {
		return nil, nil, &Problems{File: path, List: []Problem{*problem}}
	}
	dir := filepath.Dir(path)
	if path == "-" {
		dir = "."
	}
	d, err := Parse(data, path, dir, o)
	if err != nil {
		return nil, nil, err
	}
	return d, writtenIn(path, data), nil
}

// writtenIn lists the keys of a file that is a sound spec.
func writtenIn(file string, data []byte) []Written {
	doc := parsed(file, data, &gathering{})
	if doc == nil {
		return nil
	}
	w := writing{doc: doc}
	w.table(doc.root, "", "")
	slices.SortStableFunc(w.all, func(a, b Written) int { return a.Line - b.Line })
	return w.all
}

type writing struct {
	doc *document
	all []Written
}

func (w *writing) table(n *node, key, item string) {
	for _, k := range n.keys {
		w.value(k, join(key, k.name), item)
	}
}

func (w *writing) value(n *node, key, item string) {
	switch {
	case n.shape == isTable:
		w.table(n, key, item)
	case n.shape == isList && len(n.items) > 0 && n.items[0].shape == isTable:
		seen := map[string]int{}
		for i, one := range n.items {
			w.table(one, key, called(one, i, seen))
		}
	default:
		w.all = append(w.all, Written{Key: key, Item: item, Text: writtenText(n), Line: w.doc.line(n.at)})
	}
}

// called is what one of several tables goes by: the key that tells them apart,
// with a number where it does not, else its number.
func called(table *node, i int, seen map[string]int) string {
	for _, key := range []string{"name", "file", "what"} {
		if k := table.child(key); k != nil && k.shape == isText {
			name := strings.Join(strings.Fields(k.text), " ")
			seen[name]++
			if seen[name] > 1 {
				return name + " (" + itoa(seen[name]) + ")"
			}
			return name
		}
	}
	return itoa(i + 1)
}

func writtenText(n *node) string {
	if n.shape != isList {
		return n.text
	}
	parts := make([]string, len(n.items))
	for i, item := range n.items {
		parts[i] = writtenText(item)
	}
	return strings.Join(parts, ", ")
}
