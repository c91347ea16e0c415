package console

import (
	"bytes"
	"errors"
	"io"

	"posset/beverage/report"
)

// Emit writes results in the form asked for, whole or not at all. With many,
// JSON is a list even of one. A closed pipe is no error.
func (c *Console) Emit(many bool, results ...Result) error {
	if len(results) == 0 {
		return nil
	}
	if _, is := terminal(c.Out); is && c.Format == XLSX && !c.ToFile() {
		return errors.New("posset: a workbook is nothing that a terminal shows; write --out FILE.xlsx")
	}
	var b bytes.Buffer
	if err := c.render(&b, many, results); err != nil {
		return err
	}
	if c.ToFile() {
		return writeWhole(c.Path, b.Bytes(), c.read)
	}
	if _, err := c.Out.Write(b.Bytes()); err != nil && !isClosedPipe(err) {
		return errors.New("posset: standard output: " + err.Error())
	}
	return nil
}

func (c *Console) render(w *bytes.Buffer, many bool, results []Result) error {
	switch c.Format {
	case JSON:
		return emitJSON(w, many, results)
	case NDJSON:
		return emitLines(w, results)
	case CSV:
		return report.CSV(w, c.docs(results)...)
	case XLSX:
		return report.XLSX(w, c.docs(results)...)
	case HTML:
		return report.HTML(w, c.docs(results)...)
	}
	return report.Text(w, c.style(), c.docs(results)...)
}

func emitLines(w *bytes.Buffer, results []Result) error {
	for i, r := range results {
		if err := report.NDJSON(w, r.Value); err != nil {
			return err
		}
		if i == 0 {
			w.Grow(report.RoomForMore(w.Len(), len(results)-1))
		}
	}
	return nil
}

func emitJSON(w io.Writer, many bool, results []Result) error {
	if !many && len(results) == 1 {
		return report.JSON(w, results[0].Value)
	}
	values := make([]any, len(results))
	for i, r := range results {
		values[i] = r.Value
	}
	return report.JSON(w, values)
}

func (c *Console) docs(results []Result) []report.Doc {
	docs := make([]report.Doc, len(results))
	for i, r := range results {
		docs[i] = report.Told(r.Doc(c.Units), c.Units)
	}
	return docs
}
