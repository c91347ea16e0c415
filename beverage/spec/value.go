package spec

import (
	"math"
	"strconv"
	"strings"
	"time"

	"posset/beverage"
	"posset/beverage/quantity"
)

func given[V any](r *reader, n *node, v V) beverage.Given[V] {
	return beverage.Given[V]{V: v, Known: true, Place: r.place(n)}
}

// text declares a key that holds a text.
func text[T any](key, means, example string, at func(*T) *beverage.Given[string]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormText, Type: "a text", Means: means, Example: strconv.Quote(example)},
		read: func(r *reader, n *node, it *T) {
			if s, ok := r.textOf(n, longestText); ok {
				*at(it) = given(r, n, s)
			}
		},
	}
}

// name declares a key that holds a name.
func name[T any](means, example string, at func(*T) *string) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: "name", Form: FormText, Type: "a text", Means: means, Example: strconv.Quote(example)},
		read: func(r *reader, n *node, it *T) {
			if s, ok := r.textOf(n, longestName); ok {
				*at(it) = s
			}
		},
	}
}

// flag declares a key that is true or false.
func flag[T any](key, means, example string, at func(*T) *beverage.Given[bool]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormBool, Type: "true or false", Means: means, Example: example},
		read: func(r *reader, n *node, it *T) {
			if b, ok := r.boolOf(n); ok {
				*at(it) = given(r, n, b)
			}
		},
	}
}

// number declares a key that holds a bare number.
func number[T any](key string, low, high float64, means, example string, at func(*T) *beverage.Given[float64]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormNumber, Type: bareSpan(low, high), Low: low, High: high, Means: means, Example: example},
		read: func(r *reader, n *node, it *T) {
			if v, ok := r.numberOf(n, low, high); ok {
				*at(it) = given(r, n, v)
			}
		},
	}
}

// word declares a key that holds one of the known words.
func word[T any, W ~string](key string, words []W, means string, at func(*T) *beverage.Given[W]) field[T] {
	known := plainWords(words)
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormWord, Type: "a word", Values: known, Means: means, Example: strconv.Quote(known[0])},
		read: func(r *reader, n *node, it *T) {
			if s, ok := r.wordOf(n, known); ok {
				*at(it) = given(r, n, W(s))
			}
		},
	}
}

func plainWords[W ~string](words []W) []string {
	plain := make([]string, len(words))
	for i, w := range words {
		plain[i] = string(w)
	}
	return plain
}

// date declares a key that holds a day: a TOML date, or a text year-month-day.
func date[T any](key, means, example string, at func(*T) *beverage.Given[string]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormDate, Type: "a date, year-month-day", Means: means, Example: example},
		read: func(r *reader, n *node, it *T) {
			day, err := time.Parse(time.DateOnly, n.text)
			if err != nil || (n.shape != isDate && n.shape != isText) || day.Year() < 1900 || day.Year() > 2200 {
				r.wrong(n, "is not a date", "write year-month-day, such as "+example)
				return
			}
			*at(it) = given(r, n, day.Format(time.DateOnly))
		},
	}
}

// span is the range that a value may have, in the unit of its key. It is wide:
// outside it is a slip of the pen, whatever the drink.
type span struct {
	low, high float64
	unit      string
	open      bool // low itself is out
}

func (s span) holds(v float64) bool {
	return v <= s.high && (v > s.low || v == s.low && !s.open) && !math.IsNaN(v)
}

func (s span) String() string {
	from, to := "from ", " to "
	if s.open {
		from, to = "above ", " and up to "
	}
	return from + quantity.Number(s.low, 0) + to + quantity.Number(s.high, 0) + " " + s.unit
}

// measure declares a key that holds a quantity of a dimension; it is kept in
// the unit of its span.
func measure[T any](key string, dim quantity.Dimension, within span, means, example string, at func(*T) *beverage.Given[float64]) field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormQuantity, Type: dim.String() + " " + within.String(), Means: means, Example: strconv.Quote(example)},
		read: func(r *reader, n *node, it *T) {
			if v, ok := r.measureOf(n, dim, within, example); ok {
				*at(it) = given(r, n, v)
			}
		},
	}
}

func (r *reader) measureOf(n *node, dim quantity.Dimension, within span, example string) (float64, bool) {
	q, ok := r.quantityOf(n, example, dim)
	if !ok {
		return 0, false
	}
	v := q.Value
	if within.unit != dim.Base() {
		v = q.InUnit(within.unit)
	}
	if q.As != "" {
		r.wrong(n, "names a substance", "write "+quantity.Quote(strings.TrimSpace(strings.Split(q.Text, " as ")[0])))
		return 0, false
	}
	if !within.holds(v) {
		r.wrong(n, "is out of range", "write a value "+within.String())
		return 0, false
	}
	return v, true
}

// plainNumber reads a TOML number that is written as a plain decimal.
func plainNumber(text string) (v float64, wrong string) {
	v, err := strconv.ParseFloat(text, 64)
	switch {
	case strings.ContainsAny(text, "xob_"):
		return 0, "is not a plain decimal number"
	case strings.ContainsAny(strings.ToLower(text), "nif"):
		return 0, "is not a finite number"
	case err != nil:
		return 0, "is too large"
	case v == 0 && strings.ContainsAny(strings.Split(strings.ToLower(text), "e")[0], "123456789"):
		return 0, "is too small"
	}
	return v + 0, "" // -0 becomes 0
}

// leadingNumber splits a number off the beginning of a text; rest is the whole
// text where there is none.
func leadingNumber(text string) (v float64, rest string) {
	first, after, _ := strings.Cut(strings.TrimSpace(text), " ")
	v, wrong := plainNumber(strings.Replace(first, ",", ".", 1))
	if wrong != "" {
		return 0, text
	}
	return v, after
}
