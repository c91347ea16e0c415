package logfile

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// decodeText gives the file as UTF-8 with line feeds, and the encoding it was
// in. It refuses what is not text.
func decodeText(br *bufio.Reader, name string) (*bufio.Reader, string, error) {
	head, err := br.Peek(sniffBytes)
	if err != nil && err != io.EOF {
		return nil, "", fmt.Errorf("%s: cannot be read: %w", name, err)
	}
	enc, label := encodingOf(head)
	text := br
	switch {
	case enc != nil:
		text = bufio.NewReaderSize(enc.NewDecoder().Reader(br), sniffBytes)
	case bytes.HasPrefix(head, []byte("\ufeff")):
		br.Discard(len("\ufeff")) // cannot fail: the bytes were peeked
	}
	head, _ = text.Peek(sniffBytes)
	if !isText(head) {
		return nil, "", fmt.Errorf("%s: is not text, and not a workbook either", name)
	}
	if bytes.IndexByte(head, '\n') < 0 && bytes.IndexByte(head, '\r') >= 0 {
		text = bufio.NewReaderSize(&lineFeeds{text}, sniffBytes)
	}
	return text, label, nil
}

// encodingOf tells the encoding from a byte order mark, from the zero bytes
// that UTF-16 puts beside plain characters, or from what is no UTF-8. nil is
// UTF-8.
func encodingOf(head []byte) (encoding.Encoding, string) {
	little := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)
	big := unicode.UTF16(unicode.BigEndian, unicode.UseBOM)
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		return little, "UTF-16LE"
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		return big, "UTF-16BE"
	}
	even, odd := zeroBytes(head)
	switch half := min(len(head), 1000) / 2; {
	case half >= 8 && odd*10 >= half*8 && even*10 < half:
		return unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), "UTF-16LE"
	case half >= 8 && even*10 >= half*8 && odd*10 < half:
		return unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), "UTF-16BE"
	}
	if !validUTF8(head) {
		return charmap.Windows1252, "Windows-1252"
	}
	return nil, "UTF-8"
}

func zeroBytes(head []byte) (even, odd int) {
	for i, c := range head[:min(len(head), 1000)] {
		if c != 0 {
			continue
		}
		if i%2 == 0 {
			even++
		} else {
			odd++
		}
	}
	return even, odd
}

// validUTF8 lets the last character be cut.
func validUTF8(head []byte) bool {
	for cut := 0; cut < utf8.UTFMax && cut < len(head); cut++ {
		if last := head[len(head)-1-cut]; utf8.RuneStart(last) {
			if !utf8.FullRune(head[len(head)-1-cut:]) {
				head = head[:len(head)-1-cut]
			}
			break
		}
	}
	return utf8.Valid(head)
}

// textBytes is how much of a file is looked at for control characters.
const textBytes = 8 << 10

// isText refuses control characters that no text table holds.
func isText(head []byte) bool {
	for _, c := range head[:min(len(head), textBytes)] {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' && c != 0x1a {
			return false
		}
	}
	return true
}

// lineFeeds turns carriage returns, where a file has nothing else, into line
// feeds.
type lineFeeds struct{ r io.Reader }

func (l *lineFeeds) Read(p []byte) (int, error) {
	n, err := l.r.Read(p)
	for i, c := range p[:n] {
		if c == '\r' {
			p[i] = '\n'
		}
	}
	return n, err
}
