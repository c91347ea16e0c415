package report

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
)

// JSON writes v, a result or a list of results, indented, with a last newline.
func JSON(w io.Writer, v any) error {
	var flat bytes.Buffer
	if err := encode(&flat, reflect.ValueOf(v), 0); err != nil {
		return err
	}
	b, here := w.(*bytes.Buffer)
	if !here {
		b = &bytes.Buffer{}
	}
	b.Grow(2 * flat.Len()) // as indents make it: of many records it is large
	if err := json.Indent(b, flat.Bytes(), "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
	if here {
		return nil
	}
	_, err := w.Write(b.Bytes())
	return err
}

// NDJSON writes one result as one line.
func NDJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	if err := encode(&b, reflect.ValueOf(v), 0); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err := w.Write(b.Bytes())
	return err
}
