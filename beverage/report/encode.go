package report

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf16"
)

// significantDigits is how many digits of a figure are printed: no model here
// knows more, and beyond them processors differ.
const significantDigits = 6

// maxDepth bounds how deep a result may nest; ours nest less than ten deep.
const maxDepth = 64

// encode writes v as JSON by the rules of encoding/json, and beyond them: a
// figure has six significant digits; NaN and infinity are null; a list or a map
// never is; an empty word of a named string type is unknown, thus null.
func encode(b *bytes.Buffer, v reflect.Value, depth int) error {
	if depth > maxDepth {
		return fmt.Errorf("result nests deeper than %d", maxDepth)
	}
	if !v.IsValid() || isNil(v) {
		b.WriteString("null")
		return nil
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		text, err := m.MarshalText()
		if err != nil {
			return err
		}
		return encodeString(b, string(text))
	}
	return encodeKind(b, v, depth)
}

func isNil(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		return v.IsNil()
	case reflect.String:
		return v.Len() == 0 && v.Type().PkgPath() != ""
	case reflect.Float32, reflect.Float64:
		return !isFinite(v.Float())
	}
	return false
}

func isFinite(f float64) bool { return !math.IsNaN(f) && !math.IsInf(f, 0) }

func encodeKind(b *bytes.Buffer, v reflect.Value, depth int) error {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		return encode(b, v.Elem(), depth+1)
	case reflect.Struct:
		return encodeStruct(b, v, depth)
	case reflect.Slice, reflect.Array:
		return encodeList(b, v, depth)
	case reflect.Map:
		return encodeMap(b, v, depth)
	case reflect.String:
		return encodeString(b, v.String())
	case reflect.Float32, reflect.Float64:
		b.WriteString(significant(v.Float()))
	case reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		b.WriteString(strconv.FormatInt(v.Int(), 10))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		b.WriteString(strconv.FormatUint(v.Uint(), 10))
	default:
		return fmt.Errorf("a result cannot hold a %s", v.Kind())
	}
	return nil
}

func encodeStruct(b *bytes.Buffer, v reflect.Value, depth int) error {
	b.WriteByte('{')
	first := true
	for _, f := range membersOf(v.Type()) {
		value := v.FieldByIndex(f.index)
		if f.omitEmpty && value.IsZero() {
			continue
		}
		if err := encodeMember(b, f.name, value, &first, depth); err != nil {
			return err
		}
	}
	b.WriteByte('}')
	return nil
}

func encodeMember(b *bytes.Buffer, name string, v reflect.Value, first *bool, depth int) error {
	if !*first {
		b.WriteByte(',')
	}
	*first = false
	if err := encodeString(b, name); err != nil {
		return err
	}
	b.WriteByte(':')
	return encode(b, v, depth+1)
}

// member is a field of a struct as JSON names it.
type member struct {
	name      string
	omitEmpty bool
	index     []int
}

// members keeps what was read of a struct type: a run prints few types often.
var members sync.Map

// membersOf reads the json tags of a struct. Fields without one are not part
// of a result, save the fields of an embedded struct, which come up by
// themselves.
func membersOf(t reflect.Type) []member {
	if known, ok := members.Load(t); ok {
		return known.([]member)
	}
	var list []member
	for _, f := range reflect.VisibleFields(t) {
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.IsExported() && !f.Anonymous && name != "" && name != "-" {
			list = append(list, member{name, rest == "omitempty", f.Index})
		}
	}
	members.Store(t, list)
	return list
}

func encodeList(b *bytes.Buffer, v reflect.Value, depth int) error {
	b.WriteByte('[')
	start := b.Len()
	for i := range v.Len() {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := encode(b, v.Index(i), depth+1); err != nil {
			return err
		}
		if i == 0 {
			b.Grow(RoomForMore(b.Len()-start, v.Len()-1))
		}
	}
	b.WriteByte(']')
	return nil
}

// mostRoom is how many bytes are set aside at once: the next may be shorter.
const mostRoom = 32 << 20

// RoomForMore is how many bytes so many more like the first may take. Set aside
// at once, they spare a buffer doubling that holds much of a long list twice.
func RoomForMore(first, more int) int {
	const spare = 16 // one part in it, for those that are longer
	return min(mostRoom, (first+first/spare)*more)
}

func encodeMap(b *bytes.Buffer, v reflect.Value, depth int) error {
	if v.Type().Key().Kind() != reflect.String {
		return fmt.Errorf("a result cannot hold a map by %s", v.Type().Key())
	}
	keys := v.MapKeys()
	slices.SortFunc(keys, func(a, c reflect.Value) int { return strings.Compare(a.String(), c.String()) })
	b.WriteByte('{')
	first := true
	for _, k := range keys {
		if err := encodeMember(b, k.String(), v.MapIndex(k), &first, depth); err != nil {
			return err
		}
	}
	b.WriteByte('}')
	return nil
}

// encodeString leaves < and > readable; beyond what encoding/json escapes,
// controls that a terminal may obey are escaped too.
func encodeString(b *bytes.Buffer, s string) error {
	if isPlain(s) && !strings.ContainsAny(s, `"\`) {
		b.WriteString(`"` + s + `"`)
		return nil
	}
	var quoted bytes.Buffer
	e := json.NewEncoder(&quoted)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		return err
	}
	for _, r := range strings.TrimSuffix(quoted.String(), "\n") {
		if !unicode.In(r, unicode.Cc, unicode.Cf) {
			b.WriteRune(r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(b, `\u%04x`, unit)
		}
	}
	return nil
}

// significant prints a finite figure with at most six digits and no -0.
func significant(f float64) string {
	s := strconv.FormatFloat(f, 'g', significantDigits, 64)
	short, err := strconv.ParseFloat(s, 64)
	if err != nil || short == 0 {
		return "0"
	}
	if a := math.Abs(short); a >= 1e-5 && a < 1e15 {
		return strconv.FormatFloat(short, 'f', -1, 64)
	}
	return strconv.FormatFloat(short, 'g', -1, 64)
}
