package spec

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"strconv"

	"posset/beverage"
	"posset/beverage/quantity"
)

// Files of another kind that a user writes beside the spec, such as a list of
// co-packers' lines, are declared and read as the spec is: every key told, every
// problem with file, line and column, all of a file at once.

// Field is a key of a table that fills a T; Table is all keys of one.
type (
	Field[T any] = field[T]
	Table[T any] = table[T]
)

// TableOf is a table of these keys.
func TableOf[T any](fields ...Field[T]) Table[T] { return table[T]{fields: fields} }

// Required marks a key that its table cannot be without.
func Required[T any](f Field[T]) Field[T] { return f.must() }

// Text is a key that holds a text.
func Text[T any](key, means, example string, at func(*T) *beverage.Given[string]) Field[T] {
	return text(key, means, example, at)
}

// Flag is a key that is true or false.
func Flag[T any](key, means, example string, at func(*T) *beverage.Given[bool]) Field[T] {
	return flag(key, means, example, at)
}

// Number is a key that holds a bare number from low to high.
func Number[T any](key string, low, high float64, means, example string, at func(*T) *beverage.Given[float64]) Field[T] {
	return number(key, low, high, means, example, at)
}

// Word is a key that holds one of a few words.
func Word[T any, W ~string](key string, words []W, means string, at func(*T) *beverage.Given[W]) Field[T] {
	return word(key, words, means, at)
}

// Words is a key that holds some of a few words, in a list or one alone.
func Words[T any, W ~string](key string, words []W, means, example string, at func(*T) *beverage.Given[[]W]) Field[T] {
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormWords, Type: "a word, or a list of words", Values: plainWords(words), Means: means, Example: example},
		read: func(r *reader, n *node, it *T) {
			var list []W
			for _, w := range r.words(n, plainWords(words)) {
				list = append(list, W(w))
			}
			if len(list) > 0 {
				*at(it) = given(r, n, list)
			}
		},
	}
}

// Span is the range that a quantity may have, both ends included, in Unit.
type Span struct {
	Low, High float64
	Unit      string
}

// Measure is a key that holds a quantity, kept in the unit of its span.
func Measure[T any](key string, dim quantity.Dimension, within Span, means, example string, at func(*T) *beverage.Given[float64]) Field[T] {
	return measure(key, dim, span{low: within.Low, high: within.High, unit: within.Unit}, means, example, at)
}

// GaugePressure is a key that holds a gauge pressure, kept in kPa.
func GaugePressure[T any](key string, within Span, means, example string, at func(*T) *beverage.Given[float64]) Field[T] {
	s := subject{dim: quantity.Pressure, within: span{low: within.Low, high: within.High, unit: within.Unit}}
	return field[T]{
		KeyDoc: KeyDoc{Key: key, Form: FormQuantity, Type: "a gauge pressure " + s.within.String(), Means: means, Example: strconv.Quote(example)},
		read: func(r *reader, n *node, it *T) {
			if v, ok := r.measureOf(n, s.dim, s.within, example); ok && r.gaugeOnly(n, s) {
				*at(it) = given(r, n, v)
			}
		},
	}
}

// Sub is a table inside a table.
func Sub[T, P any](key, means string, t Table[P], part func(*T) *P) Field[T] {
	return one(key, means, t, part)
}

// Several is a list of tables inside a table, at most so many. add takes each in
// with the place where it begins, and says what is wrong with it as a whole.
func Several[T, P any](key string, most int, means string, t Table[P], add func(it *T, one P, at beverage.Place) []Problem) Field[T] {
	return several(key, most, means, t, func(r *reader, n *node, it *T, one P) {
		for _, p := range add(it, one, r.place(n)) {
			if !r.doc.broken {
				r.add(p)
			}
		}
	})
}

// TableDocs is every key of a table, as a reference tells them.
func TableDocs[T any](t Table[T]) []KeyDoc { return t.docs("") }

// ReadTable reads the file at path into it; "-" reads stdin. The hash is that of
// the file's bytes; the error is a *Problems.
func ReadTable[T any](path string, stdin io.Reader, t Table[T], it *T) (sha string, err error) {
	data, problem := input(path, stdin)
	if problem != nil {
		return "", &Problems{File: path, List: []Problem{*problem}}
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:]), ParseTable(data, path, t, it)
}

// ParseTable reads a file's bytes into it; file is how messages call it. The
// error is a *Problems.
func ParseTable[T any](data []byte, file string, t Table[T], it *T) error {
	wrong := &gathering{}
	if doc := parsed(file, data, wrong); doc != nil {
		t.into(&reader{doc: doc, keys: t.docs(""), gathering: wrong}, doc.root, it)
	}
	return wrong.error(file)
}
