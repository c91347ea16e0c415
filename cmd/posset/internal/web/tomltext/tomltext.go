// Package tomltext changes single values in the text of a spec and leaves every
// other byte, comments and all, as its author wrote it.
package tomltext

import (
	"errors"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Value is a key of a text with its value. Tables of a list are numbered from
// 0 in its path: "ingredient.1.amount".
type Value struct {
	Path string
	Text string // of a scalar, without quotes; "" for tables and lists
	Line int    // counted from 1

	from, to int  // of the value as written; equal where it has no place of its own
	key      int  // where the key begins
	whole    bool // one key = one scalar on lines of its own, so that it can be changed
}

// table is a header of the text, or its beginning.
type table struct {
	path string
	end  int // where a key can be added: behind its last key, or its header
}

// Text is a spec taken apart. A text that is not TOML cannot be changed.
type Text struct {
	src    string
	values []Value
	tables []table
	lists  map[string]int // how many tables each list has
}

// ErrNotTOML is a text with a line that is no TOML.
var ErrNotTOML = errors.New("the text is not TOML as it stands; mend the line that is told, then use the form again")

// mostValues bounds the work on a text; no spec has as many.
const mostValues = 10000

// Read takes a text apart. Where a line is no TOML it returns what stands before
// it, and ErrNotTOML.
func Read(src string) (*Text, error) {
	t := &Text{src: src, lists: map[string]int{}, tables: []table{{}}}
	var p unstable.Parser
	p.Reset([]byte(src))
	for p.NextExpression() && len(t.values) < mostValues {
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			t.header(e)
		case unstable.KeyValue:
			t.keyValue(e, t.tables[len(t.tables)-1].path, true)
		}
	}
	if p.Error() != nil || len(t.values) >= mostValues {
		return t, ErrNotTOML
	}
	return t, nil
}

// Values are all keys in the order of the text, those of inline tables too.
func (t *Text) Values() []Value { return t.values }

// Count is how many tables a list has.
func (t *Text) Count(list string) int { return t.lists[list] }

// Get is the text of a scalar.
func (t *Text) Get(path string) (string, bool) {
	if v := t.find(path); v != nil {
		return v.Text, true
	}
	return "", false
}

func (t *Text) find(path string) *Value {
	for i := range t.values {
		if t.values[i].Path == path {
			return &t.values[i]
		}
	}
	return nil
}

// header opens a table. A dotted header below a list goes on in its last table.
func (t *Text) header(e *unstable.Node) {
	path, at := "", 0
	for key := e.Key(); key.Next(); {
		part := key.Node()
		path, at = join(path, string(part.Data)), int(part.Raw.Offset+part.Raw.Length)
		if e.Kind == unstable.ArrayTable && key.IsLast() {
			t.lists[path]++
		}
		if n := t.lists[path]; n > 0 {
			path = join(path, strconv.Itoa(n-1))
		}
	}
	t.tables = append(t.tables, table{path: path, end: lineEnd(t.src, at)})
}

func (t *Text) keyValue(e *unstable.Node, under string, own bool) {
	path, at := under, -1
	parts := 0
	for key := e.Key(); key.Next(); parts++ {
		part := key.Node()
		if at < 0 {
			at = int(part.Raw.Offset)
		}
		path = join(path, string(part.Data))
	}
	v := e.Value()
	one := Value{Path: path, key: at, Line: strings.Count(t.src[:at], "\n") + 1}
	if v.Raw.Length > 0 {
		one.from, one.to = int(v.Raw.Offset), int(v.Raw.Offset+v.Raw.Length)
	}
	container := v.Kind == unstable.InlineTable || v.Kind == unstable.Array
	if !container {
		one.Text, one.whole = string(v.Data), own
	}
	t.values = append(t.values, one)
	t.inner(v, path)
	if own {
		t.tables[len(t.tables)-1].end = lineEnd(t.src, t.lastByte(e, at))
	}
}

// inner notes the keys within a value.
func (t *Text) inner(v *unstable.Node, path string) {
	items := v.Children()
	for n := 0; items.Next() && len(t.values) < mostValues; n++ {
		switch item := items.Node(); {
		case v.Kind == unstable.InlineTable:
			t.keyValue(item, path, false)
		case v.Kind == unstable.Array && (item.Kind == unstable.InlineTable || item.Kind == unstable.Array):
			t.inner(item, join(path, strconv.Itoa(n)))
		case v.Kind == unstable.Array:
			last := &t.values[len(t.values)-1]
			last.Text = strings.TrimPrefix(last.Text+", "+string(item.Data), ", ")
		}
	}
}

// lastByte is the last place of an expression that the parser tells of.
func (t *Text) lastByte(e *unstable.Node, at int) int {
	v := e.Value()
	last := at
	if v.Raw.Length > 0 {
		last = int(v.Raw.Offset + v.Raw.Length - 1)
	}
	items := v.Children()
	for items.Next() {
		n := items.Node()
		if n.Kind == unstable.KeyValue {
			last = max(last, t.lastByte(n, last))
		} else if n.Raw.Length > 0 {
			last = max(last, int(n.Raw.Offset+n.Raw.Length-1))
		}
	}
	return last
}

// lineEnd is the place behind the line break at or after a place.
func lineEnd(s string, at int) int {
	if i := strings.IndexByte(s[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(s)
}

func join(path, part string) string {
	if path == "" {
		return part
	}
	return path + "." + part
}
