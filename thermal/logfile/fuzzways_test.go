package logfile_test

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"posset/thermal"
	"posset/thermal/logfile"
)

// fuzzOptions ask for all that can be asked for.
func fuzzOptions() logfile.Options {
	bound := thermal.Bound{Below: thermal.Reference{TrefC: 91, ZC: 6}, Above: thermal.Reference{TrefC: 91, ZC: 10}, MinC: 85, MaxC: 97}
	return logfile.Options{ToleranceC: 0.5, StaysAtC: []float64{100},
		Bases: []logfile.Basis{{Ref: thermal.F0}, {Ref: thermal.PU, MinC: 50}, {Ref: bound.Below, MinC: bound.MinC, Bound: &bound}}}
}

// addForms seeds with a short record in every form.
func addForms(f *testing.F) {
	short := record{step: 0.1, digit: 1}
	for i := range 30 {
		short.t = append(short.t, float64(5*i))
	}
	for k := range 3 {
		var col []float64
		for i := range short.t {
			col = append(col, 20+float64(min(i, 29-i))*7+float64(k)/10)
		}
		short.cols = append(short.cols, col)
	}
	for _, form := range forms {
		f.Add([]byte(form.write(short)))
	}
}

func readAny(data []byte, o logfile.Options) (*logfile.Log, error) {
	return logfile.Read(context.Background(), bytes.NewReader(data), "run.csv", o)
}

// FuzzWays reads the same in short ways and long ones: rows at once or cell by
// cell, stretches at once or reading by reading.
func FuzzWays(f *testing.F) {
	addForms(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		short, err := readAny(data, fuzzOptions())
		restoreRows, restoreWay := logfile.LongRowsOnly(), logfile.LongWayOnly()
		long, longErr := readAny(data, fuzzOptions())
		restoreRows()
		restoreWay()
		require.Equal(t, fmt.Sprint(longErr), fmt.Sprint(err))
		if err != nil {
			return
		}
		require.Equal(t, long.Understood, short.Understood)
		require.Equal(t, len(long.Probes), len(short.Probes))
		for i := range long.Probes {
			sameProbe(t, long.Probes[i], short.Probes[i])
		}
	})
}

// FuzzPacked reads a packed file as it reads what is in it.
func FuzzPacked(f *testing.F) {
	addForms(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		if bytes.HasPrefix(data, []byte("\x1f\x8b")) || bytes.HasPrefix(data, []byte("PK")) {
			t.Skip("is unpacked once only")
		}
		var packed bytes.Buffer
		z := gzip.NewWriter(&packed)
		z.Write(data)
		z.Close()
		plain, err := readAny(data, fuzzOptions())
		unpacked, packedErr := readAny(packed.Bytes(), fuzzOptions())
		require.Equal(t, fmt.Sprint(err), fmt.Sprint(packedErr))
		if err != nil {
			return
		}
		require.Equal(t, "text in gzip", unpacked.Understood.Format)
		unpacked.Understood.Format, unpacked.SHA256 = plain.Understood.Format, plain.SHA256
		require.Equal(t, plain, unpacked)
	})
}

// FuzzDamagedGzip cuts and changes a packed file.
func FuzzDamagedGzip(f *testing.F) {
	f.Add([]byte("time_s,T1 (°C)\n0,20\n5,21\n10,22\n"), uint16(20), byte(1))
	f.Fuzz(func(t *testing.T, data []byte, at uint16, by byte) {
		var packed bytes.Buffer
		z := gzip.NewWriter(&packed)
		z.Write(data)
		z.Close()
		b := packed.Bytes()
		b[int(at)%len(b)] ^= by
		whole(t, b[:max(1, len(b)-int(by)%7)])
	})
}

// whole reads anything: it ends in one line or in numbers that are some.
func whole(t *testing.T, data []byte) {
	t.Helper()
	l, err := readAny(data, fuzzOptions())
	if err != nil {
		require.False(t, strings.ContainsAny(err.Error(), "\n\r\x1b"), "%q", err.Error())
		return
	}
	for _, p := range l.Probes {
		for _, r := range p.Results {
			sane(t, r.LethalityMin, r.MostMin, r.CreditedMin, r.CreditedBeforeCoolingMin, r.CreditedHeatingMin, r.CreditedHoldMin)
		}
	}
}

// FuzzWorkbook puts text into the cells of a workbook.
func FuzzWorkbook(f *testing.F) {
	f.Add([]byte("time_s,T1 (°C)\n0,20\n5,21\n10,22\n"))
	f.Add([]byte("Zeit,Kern [°C],Autoklav [°C]\n46083.5,20.5,90\n46083.50006,21,91\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		book := excelize.NewFile()
		defer book.Close()
		for i, line := range strings.SplitN(string(data), "\n", 40) {
			for k, cell := range strings.SplitN(line, ",", 12) {
				at, _ := excelize.CoordinatesToCellName(k+1, i+1)
				var v any = cell
				var number float64
				if n, _ := fmt.Sscan(cell, &number); n == 1 {
					v = number
				}
				book.SetCellValue("Sheet1", at, v)
			}
		}
		var b bytes.Buffer
		if book.Write(&b) == nil {
			whole(t, b.Bytes())
		}
	})
}

// FuzzSheet puts anything where a workbook has its sheet.
func FuzzSheet(f *testing.F) {
	f.Add([]byte(`<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>time_s</t></is></c>` +
		`<c r="B1" t="inlineStr"><is><t>T1 (C)</t></is></c></row><row r="2"><c r="A2"><v>0</v></c><c r="B2"><v>20</v></c></row><row r="3"><c r="A3"><v>5</v></c><c r="B3"><v>21</v></c></row></sheetData></worksheet>`))
	const open = `<?xml version="1.0" encoding="UTF-8"?>`
	parts := [][2]string{
		{"[Content_Types].xml", open + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`},
		{"_rels/.rels", open + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`},
		{"xl/workbook.xml", open + `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", open + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`},
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		for _, p := range append(parts, [2]string{"xl/worksheets/sheet1.xml", string(data)}) {
			w, err := z.Create(p[0])
			require.NoError(t, err)
			w.Write([]byte(p[1]))
		}
		require.NoError(t, z.Close())
		whole(t, b.Bytes())
	})
}
