package tomltext

import (
	"errors"
	"fmt"
	"strings"
)

// Quote writes a TOML text on one line.
func Quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// ErrNotAlone is a value that the form cannot reach: it is a list, or stands
// within another value.
var ErrNotAlone = errors.New("that value is written within another; change it in the text")

// Set returns the text with the value of a key replaced, or the key added to its
// table, or the table to the text. written is TOML.
func (t *Text) Set(path, written string) (string, error) {
	if v := t.find(path); v != nil {
		from, to, ok := t.span(v)
		if !ok {
			return "", ErrNotAlone
		}
		return t.src[:from] + written + t.src[to:], nil
	}
	under, key := split(path)
	if t.inline(under) {
		return "", ErrNotAlone
	}
	line := key + " = " + written + "\n"
	for i := len(t.tables) - 1; i > 0; i-- {
		if t.tables[i].path == under {
			return t.insert(t.tables[i].end, line), nil
		}
	}
	if strings.ContainsAny(under, "0123456789") {
		return "", fmt.Errorf("there is no %s in the text", under)
	}
	return t.insert(len(t.src), "\n["+under+"]\n"+line), nil
}

// span is where the value stands: a scalar by its own place, a list of scalars
// on one line by its brackets.
func (t *Text) span(v *Value) (from, to int, ok bool) {
	if v.whole && v.to > v.from {
		return v.from, v.to, true
	}
	end := strings.IndexByte(t.src[v.key:], '\n')
	if end < 0 {
		end = len(t.src) - v.key
	}
	line := t.src[v.key : v.key+end]
	from, to = strings.IndexByte(line, '['), strings.LastIndexByte(line, ']')
	if from < 0 || to < from || strings.ContainsAny(line, "{#") {
		return 0, 0, false
	}
	return v.key + from, v.key + to + 1, true
}

// inline tells whether a table is the value of a key, not a header.
func (t *Text) inline(path string) bool { return t.find(path) != nil }

// Remove returns the text without a key. A key that is not there is no error.
func (t *Text) Remove(path string) (string, error) {
	v := t.find(path)
	if v == nil {
		return t.src, nil
	}
	_, to, ok := t.span(v)
	start := strings.LastIndexByte(t.src[:v.key], '\n') + 1
	if !ok || strings.TrimSpace(t.src[start:v.key]) != "" {
		return "", ErrNotAlone
	}
	return t.src[:start] + t.src[lineEnd(t.src, to):], nil
}

// AddTable returns the text with one more table of a list, behind the last one.
func (t *Text) AddTable(list string, lines string) string {
	block := "[[" + list + "]]\n" + lines
	last := join(list, fmt.Sprint(t.lists[list]-1))
	for i := len(t.tables) - 1; i > 0; i-- {
		if t.tables[i].path == last {
			return t.insert(t.tables[i].end, "\n"+block)
		}
	}
	return t.insert(len(t.src), "\n"+block)
}

// insert puts whole lines at the beginning of a line.
func (t *Text) insert(at int, lines string) string {
	before := t.src[:at]
	if before != "" && !strings.HasSuffix(before, "\n") {
		before += "\n"
	}
	return before + lines + t.src[at:]
}

func split(path string) (under, key string) {
	i := strings.LastIndexByte(path, '.')
	if i < 0 {
		return "", path
	}
	return path[:i], path[i+1:]
}
