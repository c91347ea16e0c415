package spec

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"posset/beverage"
	"posset/beverage/quantity"
)

// reader walks a document into a drink and gathers what is wrong with it.
type reader struct {
	*gathering
	doc     *document
	dir     string   // folder that named files are in
	home    string   // dir with all links followed, once it is needed
	outside bool     // files outside of it may be named
	keys    []KeyDoc // every key there is, to say where a strayed one belongs
	strange []string // unknown tables at the top of the file
}

func (r *reader) place(n *node) beverage.Place {
	return beverage.Place{File: r.doc.file, Line: r.doc.line(n.at), Key: n.path}
}

// wrong tells a problem of a value; read goes after the value as written.
func (r *reader) wrong(n *node, read, help string) {
	r.tell(n.valueAt, n.path, r.shown(n)+read, help)
}

// wrongKey tells a problem of a key.
func (r *reader) wrongKey(n *node, read, help string) { r.tell(n.at, n.path, read, help) }

func (r *reader) tell(offset int, key, read, help string) {
	if !r.full() {
		r.add(r.doc.problem(offset, key, read, help))
	}
}

// shown is a scalar as written, with a space after it.
func (r *reader) shown(n *node) string {
	switch n.shape {
	case isTable, isList:
		return ""
	case isText:
		return quantity.Quote(n.text) + " "
	}
	return n.raw + " "
}

func (r *reader) missing(n *node, doc KeyDoc) {
	if r.doc.broken {
		return
	}
	r.tell(n.at, n.path, "has no "+doc.Key, "write "+doc.Key+" = "+doc.Example)
}

// Lengths of texts, in letters.
const (
	longestName = 200
	longestText = 1000
)

// text reads a text of at most so many letters without control characters.
func (r *reader) textOf(n *node, most int) (string, bool) {
	text := strings.TrimSpace(n.text)
	switch {
	case n.shape != isText:
		r.wrong(n, "is "+n.shape.String(), "write a text in quotes")
	case text == "":
		r.wrong(n, "is empty", "write a text, or leave the key out")
	case utf8.RuneCountInString(text) > most:
		r.wrong(n, "is too long", "write at most "+itoa(most)+" letters")
	case strings.ContainsFunc(text, unprintable):
		r.wrong(n, "holds a control character", "write plain letters")
	default:
		return text, true
	}
	return "", false
}

// unprintable finds what could move a terminal's cursor or turn the direction
// of a line: control characters, line separators, bidirectional overrides.
func unprintable(c rune) bool {
	return unicode.IsControl(c) || unicode.In(c, unicode.Zl, unicode.Zp, unicode.Bidi_Control) || c == utf8.RuneError
}

// numberOf reads a bare number.
func (r *reader) numberOf(n *node, low, high float64) (float64, bool) {
	span := bareSpan(low, high)
	switch n.shape {
	case isText:
		r.wrong(n, "is a text", "write "+bareNumber(n.text, span))
		return 0, false
	case isNumber:
	default:
		r.wrong(n, "is "+n.shape.String(), "write "+span)
		return 0, false
	}
	v, err := plainNumber(n.text)
	switch {
	case err != "":
		r.wrong(n, err, "write "+span)
	case v < low || v > high:
		r.wrong(n, "is outside "+quantity.Number(low, 0)+" to "+quantity.Number(high, 0), "write "+span)
	default:
		return v, true
	}
	return 0, false
}

func bareSpan(low, high float64) string {
	return "a bare number from " + quantity.Number(low, 0) + " to " + quantity.Number(high, 0)
}

// bareNumber offers the number in a text: "3.2" and "3.2 pH" are 3.2.
func bareNumber(text, span string) string {
	if v, rest := leadingNumber(text); rest != text {
		return "the bare number " + quantity.Number(v, 0)
	}
	return span
}

func (r *reader) boolOf(n *node) (bool, bool) {
	if n.shape != isBool {
		r.wrong(n, "is "+n.shape.String(), "write true or false, without quotes")
		return false, false
	}
	return n.text == "true", true
}

// wordOf reads one of the known words, spelt exactly.
func (r *reader) wordOf(n *node, words []string) (string, bool) {
	if n.shape != isText {
		r.wrong(n, "is "+n.shape.String(), "write "+oneOf(words))
		return "", false
	}
	if slices.Contains(words, n.text) {
		return n.text, true
	}
	if near := quantity.Nearest(n.text, words); len(near) > 0 {
		r.wrong(n, "is unknown", "write "+quantity.Either(near))
	} else {
		r.wrong(n, "is unknown", "write "+oneOf(words))
	}
	return "", false
}

// quantityOf reads a quantity of one of the dimensions; example is offered where
// it cannot be.
func (r *reader) quantityOf(n *node, example string, dims ...quantity.Dimension) (quantity.Quantity, bool) {
	text := n.text
	switch n.shape {
	case isText:
	case isNumber:
		text = n.raw // a bare number: the parser says that the unit is missing
	default:
		r.wrong(n, "is "+n.shape.String(), "write "+dims[0].String()+" such as "+quantity.Quote(example))
		return quantity.Quantity{}, false
	}
	q, err := quantity.ParseLike(text, example, dims...)
	if err != nil {
		r.wrongQuantity(n, err)
		return quantity.Quantity{}, false
	}
	return q, true
}

func (r *reader) wrongQuantity(n *node, err error) {
	if e, ok := err.(*quantity.Error); ok {
		r.tell(n.valueAt, n.path, quantity.Quote(e.Text)+" "+e.Is, e.Write)
		return
	}
	r.wrong(n, "cannot be read", err.Error())
}

// list returns the elements of a list, or the one value that stands alone.
func (r *reader) list(n *node, most int) []*node {
	if n.shape != isList {
		return []*node{n}
	}
	switch {
	case len(n.items) == 0:
		r.wrong(n, "is an empty list", "write at least one, or leave the key out")
	case len(n.items) > most:
		r.wrong(n, "has more than "+itoa(most)+" elements", "write fewer")
		return n.items[:most]
	}
	return n.items
}
