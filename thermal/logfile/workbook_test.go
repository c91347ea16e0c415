package logfile_test

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"posset/thermal/logfile"
)

// days is a moment as workbooks keep it: days since 1899-12-30.
func days(t float64) float64 {
	return began.Add(time.Duration(t*1e9)).Sub(time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)).Hours() / 24
}

// workbook puts a record on a sheet, from some row on.
func workbook(t *testing.T, r record, rows [][]any, clock func(t float64) []any, more func(f *excelize.File)) []byte {
	f := excelize.NewFile()
	defer f.Close()
	for i, row := range rows {
		require.NoError(t, f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", i+1), &row))
	}
	style, err := f.NewStyle(&excelize.Style{NumFmt: 22})
	require.NoError(t, err)
	for i, at := range r.t {
		row := clock(at)
		for _, c := range r.cols {
			row = append(row, c[i])
		}
		n := len(rows) + 1 + i
		require.NoError(t, f.SetSheetRow("Sheet1", fmt.Sprintf("A%d", n), &row))
		require.NoError(t, f.SetCellStyle("Sheet1", fmt.Sprintf("A%d", n), fmt.Sprintf("A%d", n), style))
	}
	if more != nil {
		more(f)
	}
	var out bytes.Buffer
	require.NoError(t, f.Write(&out))
	return out.Bytes()
}

func TestWorkbooks(t *testing.T) {
	r := formRecord()
	units := []any{"Time", "T1 (°C)", "T2 (°C)", "T3 (°C)"}
	serial := func(t float64) []any { return []any{days(t)} }
	for name, c := range map[string]struct {
		rows  [][]any
		clock func(t float64) []any
		more  func(f *excelize.File)
		sheet string
	}{
		"serial dates":          {[][]any{units}, serial, nil, ""},
		"preamble and unit row": {[][]any{{"Retort", 3}, {}, {"Time", "T1", "T2", "T3"}, {"", "°C", "°C", "°C"}}, serial, nil, ""},
		"merged headings": {[][]any{{"Clock", "Probe", "", ""}, {"Time", "1 (°C)", "2 (°C)", "3 (°C)"}}, serial, func(f *excelize.File) {
			f.MergeCell("Sheet1", "B1", "D1")
		}, ""},
		"date and time apart": {[][]any{{"Date", "Time", "T1 (°C)", "T2 (°C)", "T3 (°C)"}}, func(t float64) []any {
			d := days(t)
			return []any{float64(int(d)), d - float64(int(d))}
		}, nil, ""},
		"time of day over midnight": {[][]any{units}, func(t float64) []any {
			d := days(t)
			return []any{d - float64(int(d))}
		}, nil, ""},
		"elapsed as part of a day": {[][]any{units}, func(t float64) []any { return []any{t / 86400} }, nil, ""},
		"seconds":                  {[][]any{{"Time (s)", "T1 (°C)", "T2 (°C)", "T3 (°C)"}}, func(t float64) []any { return []any{t} }, nil, ""},
		"dates as text": {[][]any{units}, func(t float64) []any {
			return []any{began.Add(time.Duration(t * 1e9)).Format("2006-01-02 15:04:05")}
		}, nil, ""},
		"a chart's sheet beside": {[][]any{units}, serial, func(f *excelize.File) {
			f.NewSheet("Notes")
			f.SetSheetRow("Notes", "A1", &[]any{"Operator", "K"})
		}, ""},
		"one sheet of two, by name": {[][]any{units}, serial, func(f *excelize.File) {
			f.NewSheet("Other run")
			f.SetSheetRow("Other run", "A1", &units)
			f.SetSheetRow("Other run", "A2", &[]any{days(0), 20.0, 20.0, 20.0})
			f.SetSheetRow("Other run", "A3", &[]any{days(5), 20.0, 20.0, 20.0})
		}, "sheet1"},
	} {
		t.Run(name, func(t *testing.T) {
			o := options()
			o.Sheet = c.sheet
			l, err := logfile.Read(context.Background(), bytes.NewReader(workbook(t, r, c.rows, c.clock, c.more)), "run.xlsx", o)
			require.NoError(t, err)
			assert.Equal(t, "xlsx", l.Understood.Format)
			assert.Equal(t, "Sheet1", l.Understood.Sheet)
			checkForm(t, r, l, 1e-6)
			assert.Equal(t, len(c.rows)+1, l.Understood.FirstRow)
		})
	}
}

func TestWorkbookDates(t *testing.T) {
	r := formRecord()
	l, err := logfile.Read(context.Background(), bytes.NewReader(workbook(t, r, [][]any{{"Time", "T1 (°C)", "T2 (°C)", "T3 (°C)"}}, func(t float64) []any { return []any{days(t)} }, nil)), "run.xlsx", options())
	require.NoError(t, err)
	assert.Equal(t, "2026-03-14T23:51:07", l.Probes[0].Start)
}

// zipOf packs one part after another.
func zipOf(t *testing.T, parts map[string]string) []byte {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for name, text := range parts {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = w.Write([]byte(text))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return out.Bytes()
}

func TestBadWorkbooks(t *testing.T) {
	two := func(f *excelize.File) {
		f.NewSheet("Run 2")
		for i, row := range [][]any{{"Time (s)", "T1 (°C)"}, {0, 20.5}, {5, 21.5}} {
			f.SetSheetRow("Run 2", fmt.Sprintf("A%d", i+1), &row)
		}
	}
	small := record{t: []float64{0, 5, 10}, cols: [][]float64{{20, 21, 22}}}
	seconds := func(t float64) []any { return []any{t} }
	for name, c := range map[string]struct {
		data  []byte
		sheet string
		want  string
	}{
		"a bomb": {zipOf(t, map[string]string{"xl/worksheets/sheet1.xml": strings.Repeat(" ", 97<<20)}), "",
			"run.xlsx: the workbook unpacks to more than 96 MB; save it as CSV"},
		"a cell without end": {zipOf(t, map[string]string{"xl/worksheets/sheet1.xml": "<c>" + strings.Repeat("9", 3<<20)}), "",
			"run.xlsx: damaged workbook: a cell of more than 1048576 bytes"},
		"not a workbook": {zipOf(t, map[string]string{"readme.txt": "hello"}), "",
			"run.xlsx: is a zip archive but no workbook; unpack it first"},
		"cut off": {zipOf(t, map[string]string{"xl/worksheets/sheet1.xml": "<c/>"})[:40], "",
			"run.xlsx: damaged workbook: zip: not a valid zip file"},
		"two logs": {workbook(t, small, [][]any{{"Time (s)", "T1 (°C)"}}, seconds, two), "",
			`run.xlsx: sheets "Sheet1", "Run 2" all hold a log; say which one`},
		"no such sheet": {workbook(t, small, [][]any{{"Time (s)", "T1 (°C)"}}, seconds, two), "Run 3",
			`run.xlsx: has no sheet "Run 3"; its sheets are "Sheet1", "Run 2"`},
		"no log": {workbook(t, record{}, [][]any{{"Hello", "there"}}, seconds, nil), "",
			"run.xlsx: no row of readings (a time and a temperature, divided by comma, semicolon or tab)"},
	} {
		t.Run(name, func(t *testing.T) {
			o := options()
			o.Sheet = c.sheet
			_, err := logfile.Read(context.Background(), bytes.NewReader(c.data), "run.xlsx", o)
			require.EqualError(t, err, c.want)
		})
	}
}
