package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"
)

func workbook(t *testing.T, docs ...Doc) *excelize.File {
	t.Helper()
	var b bytes.Buffer
	if err := XLSX(&b, docs...); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func rowsIn(t *testing.T, f *excelize.File, sheet string) [][]string {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func TestWorkbookHoldsWhatCSVHolds(t *testing.T) {
	d := Lethality(someLogs(), Metric)
	f := workbook(t, d, d)
	if diff := cmp.Diff([]string{"rows", "faults", "cautions"}, f.GetSheetList()); diff != "" {
		t.Error(diff)
	}
	rows := rowsIn(t, f, "rows")
	if len(rows) != 1+2*len(d.Sheet.Rows) || !cmp.Equal(rows[0], titles(d.Sheet)) {
		t.Errorf("%d rows under %v", len(rows), rows[0])
	}
	for i, want := range d.Sheet.Rows[0] {
		if got, _ := f.GetCellValue("rows", cellName(t, i+1, 2)); got != want {
			t.Errorf("column %d: got %q, want %q", i, got, want)
		}
	}
	words := ""
	for _, r := range rowsIn(t, f, "cautions") {
		words += strings.Join(r, " ") + "\n"
	}
	for _, want := range append([]string{d.Headline, "sha256 "}, d.Cautions...) {
		if !strings.Contains(words, want) {
			t.Errorf("the sheet of cautions lacks %q", want)
		}
	}
}

func cellName(t *testing.T, column, row int) string {
	t.Helper()
	name, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		t.Fatal(err)
	}
	return name
}

func TestWorkbookHasNoFormulaAndNumbersAsNumbers(t *testing.T) {
	hostile := []string{"=HYPERLINK(\"x\")", "+1+1", "@SUM(A1)", "-2+3", "\t=1", "-1.5", "12", "1e-07", "\x1b[2J", strings.Repeat("a", 40000)}
	d := Doc{Title: "=1+1", Headline: "@x", Cautions: testCautions, Sheet: Table{Columns: columns("=A1", "b"), Rows: [][]string{}}}
	for _, h := range hostile {
		d.Sheet.Rows = append(d.Sheet.Rows, []string{h, h})
	}
	f := workbook(t, d)
	for row := range len(hostile) + 1 {
		name := cellName(t, 1, row+1)
		if formula, _ := f.GetCellFormula("rows", name); formula != "" {
			t.Errorf("%s is the formula %q", name, formula)
		}
	}
	for i, want := range map[int]excelize.CellType{1: excelize.CellTypeInlineString, 5: excelize.CellTypeInlineString, 6: excelize.CellTypeUnset, 7: excelize.CellTypeUnset, 8: excelize.CellTypeUnset, 9: excelize.CellTypeInlineString} {
		if got, _ := f.GetCellType("rows", cellName(t, 1, i+1)); got != want {
			t.Errorf("row %d: type %v, want %v", i, got, want)
		}
	}
	if v, _ := f.GetCellValue("rows", "A10"); v != "\ufffd[2J" {
		t.Errorf("got %q", v)
	}
}
