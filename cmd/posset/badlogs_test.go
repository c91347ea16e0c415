package main

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	mostLogBytes  = 200_000_000 // of one line
	mostColumns   = 1_000_000
	unpackedBytes = 200_000_000 // of a sheet that packs into next to nothing
	refusalBytes  = 64 << 20    // that may be asked of memory, in all, to refuse a file
)

// badLogs are files that hold no record, and the line that says so.
var badLogs = []struct {
	name, want string
	write      func(w io.Writer) error
}{
	{"empty.csv", "the file is empty", text("")},
	{"header.csv", "no row of readings (a time and a temperature, divided by comma, semicolon or tab)", text("Time (s),Can (C)\n")},
	{"one.csv", "1 row of readings; at least two are needed", text("Time (s),Can (C)\n0,20.1\n")},
	{"binary.csv", "is not text, and not a workbook either", noise},
	{"text.csv", "no row of readings (a time and a temperature, divided by comma, semicolon or tab)", text(strings.Repeat("The record of yesterday is on paper only.\n", 500))},
	{"nan.csv", "no row of readings (a time and a temperature, divided by comma, semicolon or tab)", text("Time (s),Can (C)\n" + strings.Repeat("0,NaN\n", 1000))},
	{"wide.csv", "a line of more than 65536 bytes is no row of a recorder", text("Time (s)" + strings.Repeat(",Can (C)", mostColumns) + "\n0" + strings.Repeat(",20.1", mostColumns) + "\n")},
	{"line.csv", "a line of more than 65536 bytes is no row of a recorder", longLine},
	{"bomb.xlsx", "the workbook unpacks to more than 96 MB; save it as CSV", bomb},
	{"cut.xlsx", "damaged workbook: zip: not a valid zip file", text("PK\x03\x04 and no more")},
}

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error { _, err := io.WriteString(w, s); return err }
}

func noise(w io.Writer) error {
	r := rand.New(rand.NewPCG(1, 2))
	b := make([]byte, 200_000)
	for i := range b {
		b[i] = byte(r.UintN(256))
	}
	_, err := w.Write(b)
	return err
}

func longLine(w io.Writer) error {
	part := bytes.Repeat([]byte("7"), 1_000_000)
	for range mostLogBytes / len(part) {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// bomb is a workbook whose one sheet is a thousand times as large as its file.
func bomb(w io.Writer) error {
	z := zip.NewWriter(w)
	for name, s := range map[string]string{
		"[Content_Types].xml":        `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
		"_rels/.rels":                `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml":            `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
	} {
		part, err := z.Create(name)
		if err != nil {
			return err
		}
		if _, err := io.WriteString(part, s); err != nil {
			return err
		}
	}
	part, err := z.Create("xl/worksheets/sheet1.xml")
	if err != nil {
		return err
	}
	row := []byte(`<row><c t="inlineStr"><is><t>` + strings.Repeat("0", 100_000) + `</t></is></c></row>`)
	for n := 0; n < unpackedBytes; n += len(row) {
		if _, err := part.Write(row); err != nil {
			return err
		}
	}
	return z.Close()
}

func writeBad(t *testing.T, dir, name string, write func(io.Writer) error) string {
	t.Helper()
	file := filepath.Join(dir, name)
	f, err := os.Create(file)
	require.NoError(t, err)
	require.NoError(t, write(f))
	require.NoError(t, f.Close())
	return file
}

// Each bad file ends in status 2 with one line that names it, writes nothing to
// standard output, and takes no memory that grows with the file.
func TestBadLogsEndInOneLine(t *testing.T) {
	dir := t.TempDir()
	for _, b := range badLogs {
		file := writeBad(t, dir, b.name, b.write)
		for _, command := range [][]string{{"lethality", file}, {"heating", file, "--retort-temperature", "121C", "--initial-temperature", "60C", "--target", "F0 6 min"}} {
			var out, told bytes.Buffer
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			status := run(command, strings.NewReader(""), &out, &told)
			runtime.ReadMemStats(&after)
			assert.Equal(t, 2, status, command)
			assert.Empty(t, out.String(), command)
			assert.Equal(t, 1, strings.Count(told.String(), "\n"), "%s: %s", command, told.String())
			assert.True(t, strings.HasPrefix(told.String(), file+":"), told.String())
			assert.True(t, strings.HasSuffix(told.String(), b.want+"\n"), told.String())
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(refusalBytes), b.name)
		}
		require.NoError(t, os.Remove(file))
	}
}

// A link that leads to itself, and a folder that leads back into itself, hold
// nothing up.
func TestLoopsOfLinks(t *testing.T) {
	dir := t.TempDir()
	loop := filepath.Join(dir, "loop.csv")
	if err := os.Symlink("loop.csv", loop); err != nil {
		t.Skip("this system makes no links:", err)
	}
	require.NoError(t, os.Symlink(".", filepath.Join(dir, "again")))
	var out, told bytes.Buffer
	assert.Equal(t, 2, run([]string{"lethality", loop}, strings.NewReader(""), &out, &told))
	assert.Empty(t, out.String())
	assert.Equal(t, 1, strings.Count(told.String(), "\n"), told.String())
	told.Reset()
	assert.Equal(t, 2, run([]string{"lethality", dir}, strings.NewReader(""), &out, &told))
	assert.Equal(t, dir+": holds no file named like a log (.csv, .tsv, .txt, .log, .xlsx); name a file, or another folder\n", told.String())
}

// Bad files among good ones are named, the good ones reported, and nothing in
// the folder is written.
func TestBadLogsAmongGoodOnes(t *testing.T) {
	dir := t.TempDir()
	for _, b := range badLogs {
		if b.name != "line.csv" { // as large as all the others together
			writeBad(t, dir, b.name, b.write)
		}
	}
	const good = "Time (s),Can product (C)\n0,60\n60,100\n120,121.1\n180,121.1\n240,90\n"
	writeBad(t, dir, "a-good.csv", text(good))
	writeBad(t, dir, "z-good.csv", text(good))
	was := listing(t, dir)
	var out, told bytes.Buffer
	assert.Equal(t, 2, run([]string{"lethality", dir, "--format", "csv"}, strings.NewReader(""), &out, &told))
	assert.Equal(t, len(badLogs)-1, strings.Count(told.String(), "\n"), told.String())
	assert.Equal(t, 2, strings.Count(out.String(), ",Can product,"))
	assert.Equal(t, was, listing(t, dir))
}

// listing is every file with its mode, size and the time it was last written.
func listing(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		require.NoError(t, err)
		info, err := d.Info()
		require.NoError(t, err)
		fmt.Fprintln(&b, path, info.Mode(), info.Size(), info.ModTime())
		return nil
	}))
	return b.String()
}
