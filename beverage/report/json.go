package report

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
)

// JSON writes v, a result or a list of results, indented, with a last newline.
func JSON(w io.Writer, v any) error {
	var flat, b bytes.Buffer
	if err := encode(&flat, reflect.ValueOf(v), 0); err != nil {
		return err
	}
	if err := json.Indent(&b, flat.Bytes(), "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
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
