package spec

import (
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"
)

// The shape of a file: no drink needs more, and what is bounded here cannot
// exhaust memory or stack further in.
const (
	deepest  = 8     // tables and lists inside each other
	mostKeys = 10000 // keys, list elements and tables of one file
)

// shape is what a node of the tree is.
type shape int

const (
	isTable shape = iota
	isList
	isText
	isNumber
	isBool
	isDate
	isTime // a time, or a date with one: used nowhere
)

func (s shape) String() string {
	return [...]string{"a table", "a list", "a text", "a number", "true or false", "a date", "a time"}[s]
}

// node is a value of the file with the place where it stands. Keys keep their
// spelling: "PH" and "ph" are two keys.
type node struct {
	name    string // last part of the key
	path    string // whole dotted key
	at      int    // offset of the key
	valueAt int    // offset of the value
	shape   shape
	text    string  // of a text, number, bool or date
	raw     string  // as written, for messages
	items   []*node // elements of a list, tables of an array of tables
	keys    []*node // of a table, in the order of the file
	headed  bool    // opened by its own header: [name] or [[name]]
}

// called is what a person would call the value.
func (n *node) called() string {
	if n.headed && n.shape == isList {
		return "a list of tables, [[" + n.name + "]]"
	}
	return n.shape.String()
}

func (n *node) child(name string) *node {
	for _, k := range n.keys {
		if k.name == name {
			return k
		}
	}
	return nil
}

// expression takes in one table header or one key with its value, and returns
// the table that the next key belongs to.
func (d *document) expression(e *unstable.Node, table *node) *node {
	switch e.Kind {
	case unstable.Table:
		return d.header(e.Key(), false)
	case unstable.ArrayTable:
		return d.header(e.Key(), true)
	case unstable.KeyValue:
		d.keyValue(e, table, 0)
	}
	return table
}

// header walks a header's dotted key from the root, making what is not there.
func (d *document) header(key unstable.Iterator, list bool) *node {
	from := d.root
	for depth := 1; key.Next() && d.within(depth, key.Node()); depth++ {
		part, last := key.Node(), key.IsLast()
		next := from.child(string(part.Data))
		if next == nil {
			next = d.add(from, part)
			if last && list {
				next.shape, next.headed = isList, true
			}
		}
		if last && !list {
			d.once(next, part)
		}
		from = d.enter(next, part, last && list)
	}
	return from
}

// once notes a table that has its own header twice.
func (d *document) once(n *node, part *unstable.Node) {
	if n.headed || n.shape != isTable {
		d.twice(n, int(part.Raw.Offset))
	}
	n.headed = true
}

// enter returns the table to go on in: a list of tables is continued in its
// last one, and its own header adds one.
func (d *document) enter(n *node, part *unstable.Node, add bool) *node {
	if n.shape != isList {
		return n
	}
	if add {
		d.count++
		at := int(part.Raw.Offset)
		n.items = append(n.items, &node{name: n.name, path: n.path, at: at, valueAt: at, headed: true})
	}
	if len(n.items) == 0 {
		return n
	}
	return n.items[len(n.items)-1]
}

func (d *document) add(table *node, part *unstable.Node) *node {
	d.count++
	n := &node{name: string(part.Data), at: int(part.Raw.Offset), valueAt: int(part.Raw.Offset)}
	n.path = n.name
	if table.path != "" {
		n.path = table.path + "." + n.name
	}
	table.keys = append(table.keys, n)
	return n
}

// keyValue takes in `a.b = value`. What stands there already is noted, and the
// first value kept.
func (d *document) keyValue(e *unstable.Node, table *node, depth int) {
	key := e.Key()
	for key.Next() {
		part := key.Node()
		depth++
		if !d.within(depth, part) {
			return
		}
		next := table.child(string(part.Data))
		switch {
		case next != nil && (key.IsLast() || next.shape != isTable):
			d.twice(next, int(part.Raw.Offset))
			return
		case next == nil:
			next = d.add(table, part)
		}
		if key.IsLast() {
			d.value(e.Value(), next, depth)
		}
		table = next
	}
}

// value fills a node from the parser's value.
func (d *document) value(v *unstable.Node, n *node, depth int) {
	d.count++
	if v.Raw.Length > 0 {
		n.valueAt = int(v.Raw.Offset)
		n.raw = string(d.data[v.Raw.Offset : v.Raw.Offset+v.Raw.Length])
	}
	n.text = string(v.Data)
	switch v.Kind {
	case unstable.Array:
		d.list(v, n, depth)
	case unstable.InlineTable:
		d.inline(v, n, depth)
	case unstable.String:
		n.shape = isText
	case unstable.Bool:
		n.shape = isBool
	case unstable.Float, unstable.Integer:
		n.shape = isNumber
	case unstable.LocalDate:
		n.shape = isDate
	default:
		n.shape = isTime
	}
}

func (d *document) list(v *unstable.Node, n *node, depth int) {
	n.shape = isList
	items := v.Children()
	for items.Next() {
		if !d.within(depth+1, nil) {
			return
		}
		item := &node{name: n.name, path: n.path, at: n.at, valueAt: n.valueAt}
		d.value(items.Node(), item, depth+1)
		n.items = append(n.items, item)
	}
}

func (d *document) inline(v *unstable.Node, n *node, depth int) {
	n.shape, n.headed = isTable, true
	pairs := v.Children()
	for pairs.Next() && d.fatal == nil {
		d.keyValue(pairs.Node(), n, depth)
	}
}

// within holds depth and size against what a spec may have; part is nil where
// the parser gives no place.
func (d *document) within(depth int, part *unstable.Node) bool {
	if part != nil {
		d.last = int(part.Raw.Offset)
	}
	switch {
	case d.fatal != nil:
	case depth > deepest:
		d.stop(fmt.Sprintf("is nested more than %d deep", deepest), "write the tables of a spec; none of them is deeper than three")
	case d.count > mostKeys:
		d.stop(fmt.Sprintf("holds more than %d keys and values", mostKeys), "write one drink to a file")
	}
	return d.fatal == nil
}
