package spec

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"unicode/utf8"

	"posset/beverage"
)

// mostBytes is the size of a file from which on it is not a spec.
const mostBytes = 1 << 20

// readFile reads a file of at most mostBytes; name is how messages call it.
func readFile(path, name string) ([]byte, *Problem) {
	whole := func(read, help string) *Problem {
		return &Problem{Place: beverage.Place{File: name}, Read: read, Help: help}
	}
	about, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, whole("is not there", "check the name and the folder")
	case err != nil:
		return nil, whole("cannot be read ("+reason(err)+")", "name a file that can")
	case about.IsDir():
		return nil, whole("is a folder", "name a file")
	case about.Size() > mostBytes:
		return nil, whole(tooLarge(about.Size()))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, whole("cannot be read ("+reason(err)+")", "name a file that can")
	}
	defer f.Close()
	return readAll(f, name)
}

func tooLarge(size int64) (read, help string) {
	return fmt.Sprintf("is too large: %.1f MB, and the most is 1 MB", float64(size)/1e6), "name a smaller file"
}

// readAll reads a stream of at most mostBytes.
func readAll(r io.Reader, name string) ([]byte, *Problem) {
	data, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	place := beverage.Place{File: name}
	switch {
	case err != nil:
		return nil, &Problem{Place: place, Read: "cannot be read (" + reason(err) + ")", Help: "name a file that can"}
	case len(data) > mostBytes:
		return nil, &Problem{Place: place, Read: "is too large: the most is 1 MB", Help: "name a smaller file"}
	}
	return data, nil
}

// reason is the system's word for a failure, without the path.
func reason(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return printable(err.Error())
}

var byteOrderMark = []byte("\xef\xbb\xbf")

// plainText returns the file's text without byte order mark, or says why it is
// not UTF-8 text.
func plainText(name string, data []byte) ([]byte, *Problem) {
	place := beverage.Place{File: name}
	if isUTF16(data) {
		return nil, &Problem{Place: place, Read: "is UTF-16 or UTF-32, not UTF-8", Help: "save it as UTF-8"}
	}
	data = bytes.TrimPrefix(data, byteOrderMark)
	if at := notUTF8(data); at >= 0 {
		place.Line = bytes.Count(data[:at], []byte{'\n'}) + 1
		column := utf8.RuneCount(data[bytes.LastIndexByte(data[:at], '\n')+1:at]) + 1
		read, help := fmt.Sprintf("holds the byte %#02x, which is not UTF-8", data[at]), "save it as UTF-8"
		if data[at] == 0 {
			read, help = "holds a byte 0, so it is not a text file", "name a spec file"
		}
		return nil, &Problem{Place: place, Column: column, Read: read, Help: help}
	}
	return data, nil
}

// isUTF16 tells by its mark, or by every second byte of its beginning being 0.
func isUTF16(data []byte) bool {
	if bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff}) || bytes.HasPrefix(data, []byte{0, 0, 0xfe, 0xff}) {
		return true
	}
	start := data[:min(len(data), 4096)]
	return len(start) > 3 && bytes.Count(start, []byte{0})*5 >= len(start)*2
}

// notUTF8 is the offset of the first byte that is no text; -1 where all is.
func notUTF8(data []byte) int {
	for i := 0; i < len(data); {
		if data[i] == 0 {
			return i
		}
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

// headOf returns the first mostBytes of a plain file, without the zero bytes
// and mark of UTF-16, for a look at what it is.
func headOf(path string) ([]byte, bool) {
	if about, err := os.Stat(path); err != nil || !about.Mode().IsRegular() {
		return nil, false
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, false
	}
	defer f.Close()
	head, err := io.ReadAll(io.LimitReader(f, mostBytes))
	for _, mark := range []string{"\xef\xbb\xbf", "\xff\xfe", "\xfe\xff"} {
		head = bytes.TrimPrefix(head, []byte(mark))
	}
	return bytes.ReplaceAll(head, []byte{0}, nil), err == nil
}
