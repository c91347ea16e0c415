package logfile

import (
	"archive/zip"
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Bounds of a workbook.
const (
	maxPacked   = 64 << 20
	maxUnpacked = 96 << 20
	maxInMemory = 8 << 20 // of a sheet; larger ones go through the system's temporary folder
	maxXMLRun   = 1 << 20 // bytes without a tag
	maxSheets   = 64
)

// readWorkbook reads a log from a sheet of an .xlsx workbook.
func readWorkbook(ctx context.Context, r io.Reader, name string, o Options) (*Log, error) {
	packed, err := io.ReadAll(io.LimitReader(r, maxPacked+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", name, err)
	}
	if err := checkPackage(packed, name); err != nil {
		return nil, err
	}
	book, err := excelize.OpenReader(bytes.NewReader(packed), excelize.Options{
		RawCellValue: true, UnzipSizeLimit: maxUnpacked, UnzipXMLSizeLimit: maxInMemory,
	})
	if err != nil {
		return nil, fmt.Errorf("%s: is no workbook that can be read: %s", name, firstLine(err))
	}
	defer book.Close()
	sheet, err := chooseSheet(book, name, o)
	if err != nil {
		return nil, err
	}
	log, err := readSheet(ctx, book, sheet, name, o)
	if err == nil {
		log.Understood.Format, log.Understood.Encoding, log.Understood.Sheet = "xlsx", "UTF-8", sheet
	}
	return log, err
}

// checkPackage refuses archives that unpack to more than a log can be.
func checkPackage(packed []byte, name string) error {
	if len(packed) > maxPacked {
		return fmt.Errorf("%s: a workbook of more than %d MB is not read; save it as CSV", name, maxPacked>>20)
	}
	archive, err := zip.NewReader(bytes.NewReader(packed), int64(len(packed)))
	if err != nil {
		return fmt.Errorf("%s: damaged workbook: %s", name, firstLine(err))
	}
	var size uint64
	isBook := false
	for _, f := range archive.File {
		isBook = isBook || strings.HasPrefix(f.Name, "xl/")
		if size += f.UncompressedSize64; size > maxUnpacked || f.UncompressedSize64 > maxUnpacked {
			return fmt.Errorf("%s: the workbook unpacks to more than %d MB; save it as CSV", name, maxUnpacked>>20)
		}
	}
	if !isBook {
		return fmt.Errorf("%s: is a zip archive but no workbook; unpack it first", name)
	}
	for _, f := range archive.File {
		if err := checkPart(f); err != nil {
			return fmt.Errorf("%s: damaged workbook: %s", name, firstLine(err))
		}
	}
	return nil
}

// checkPart reads an XML part through and refuses text too long for a cell.
func checkPart(f *zip.File) error {
	if !strings.HasSuffix(f.Name, ".xml") {
		return nil
	}
	part, err := f.Open()
	if err != nil {
		return err
	}
	defer part.Close()
	buf, run := make([]byte, 64<<10), 0
	for {
		n, err := part.Read(buf)
		if i := bytes.LastIndexByte(buf[:n], '<'); i >= 0 {
			run = n - i
		} else if run += n; run > maxXMLRun {
			return fmt.Errorf("a cell of more than %d bytes", maxXMLRun)
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

func firstLine(err error) string {
	line, _, _ := strings.Cut(err.Error(), "\n")
	return line
}

// chooseSheet gives the sheet asked for, or the only one that holds a log.
func chooseSheet(book *excelize.File, name string, o Options) (string, error) {
	sheets := book.GetSheetList()
	if o.Sheet != "" {
		for _, s := range sheets {
			if key(s) == key(o.Sheet) {
				return s, nil
			}
		}
		return "", fmt.Errorf("%s: has no sheet %q; its sheets are %s", name, o.Sheet, quoteList(sheets))
	}
	var logs []string
	var firstErr error
	for _, s := range sheets[:min(len(sheets), maxSheets)] {
		_, _, err := openSheet(book, s, name, o)
		if err == nil {
			logs = append(logs, s)
		} else if firstErr == nil || strings.Contains(firstErr.Error(), "no row of readings") {
			firstErr = err
		}
	}
	switch {
	case len(logs) == 1:
		return logs[0], nil
	case len(logs) > 1:
		return "", fmt.Errorf("%s: sheets %s all hold a log; say which one", name, quoteList(logs))
	case firstErr == nil:
		return "", fmt.Errorf("%s: the workbook has no sheet", name)
	}
	return "", firstErr
}

func quoteList(names []string) string {
	const most = 8
	quoted := make([]string, 0, most)
	for i, n := range names {
		if i == most {
			quoted = append(quoted, fmt.Sprintf("%d more", len(names)-most))
			break
		}
		quoted = append(quoted, fmt.Sprintf("%q", clip(n, 40)))
	}
	return strings.Join(quoted, ", ")
}

// openSheet gives a sheet as text divided by tabs, and its layout.
func openSheet(book *excelize.File, sheet, name string, o Options) (*bufio.Reader, *layout, error) {
	rows, err := book.Rows(sheet)
	if err != nil {
		return nil, nil, fmt.Errorf("%s: sheet %q: %s", name, sheet, firstLine(err))
	}
	text := bufio.NewReaderSize(&sheetText{rows: rows}, sniffBytes)
	l, err := understand(text, name, o, true)
	if err != nil {
		rows.Close()
		return nil, nil, err
	}
	if props, err := book.GetWorkbookProps(); err == nil && props.Date1904 != nil && *props.Date1904 {
		l.time.from1904 = true
	}
	return text, l, nil
}

func readSheet(ctx context.Context, book *excelize.File, sheet, name string, o Options) (*Log, error) {
	text, l, err := openSheet(book, sheet, name, o)
	if err != nil {
		return nil, err
	}
	return readRows(ctx, text, l, name, o)
}

// sheetText turns a sheet into lines of cells divided by tabs, row by row.
type sheetText struct {
	rows *excelize.Rows
	line []byte
	done bool
}

func (s *sheetText) Read(p []byte) (int, error) {
	for len(s.line) == 0 {
		if s.done || !s.rows.Next() {
			s.done = true
			if err := s.rows.Error(); err != nil {
				return 0, err
			}
			return 0, io.EOF
		}
		cells, err := s.rows.Columns()
		if err != nil {
			return 0, err
		}
		if len(cells) > maxColumns {
			return 0, fmt.Errorf("%d columns; at most %d are read", len(cells), maxColumns)
		}
		s.render(cells)
	}
	n := copy(p, s.line)
	s.line = s.line[n:]
	return n, nil
}

// inCell keeps a cell's text from being taken for the ends of cells and lines.
var inCell = strings.NewReplacer("\t", " ", "\n", " ", "\r", " ", `"`, "'")

func (s *sheetText) render(cells []string) {
	s.line = s.line[:0]
	for i, c := range cells {
		if i > 0 {
			s.line = append(s.line, '\t')
		}
		s.line = append(s.line, inCell.Replace(c)...)
	}
	s.line = append(s.line, '\n')
}
