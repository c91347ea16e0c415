package spec_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"posset/beverage/spec"
)

const small = "[drink]\nname = \"Barley water\"\n"

// folder makes files, and returns where.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// said is what Read says, without the folder's own name.
func said(t *testing.T, dir, name string, o spec.Options) string {
	t.Helper()
	d, err := spec.Read(filepath.Join(dir, name), o)
	if err == nil {
		return "read"
	}
	if d != nil {
		t.Error("a drink beside an error")
	}
	return strings.ReplaceAll(err.Error(), dir+string(filepath.Separator), "")
}

func inUTF16(text string, low bool) string {
	var b bytes.Buffer
	for _, c := range utf16.Encode([]rune(text)) {
		pair := []byte{byte(c >> 8), byte(c)}
		if low {
			pair[0], pair[1] = pair[1], pair[0]
		}
		b.Write(pair)
	}
	return b.String()
}

func TestFilesThatAreNoSpecs(t *testing.T) {
	deep := strings.Repeat
	files := map[string]string{
		"empty.toml":      "",
		"comments.toml":   "# nothing yet\n\n",
		"utf16le.toml":    inUTF16("\ufeff"+small, true),
		"utf16be.toml":    inUTF16("\ufeff"+small, false),
		"unmarked.toml":   inUTF16(small, true),
		"latin1.toml":     "[drink]\nname = \"Pur\xe9e\"\n",
		"zero.toml":       "[drink]\nname = \"a\x00b\"\n",
		"bell.toml":       "[drink]\nname = \"a\x07b\"\n",
		"large.toml":      "#",
		"limit.toml":      small + "# " + deep("x", 1<<20-len(small)-2),
		"mark.toml":       "\xef\xbb\xbf" + small,
		"crlf.toml":       strings.ReplaceAll(small, "\n", "\r\n"),
		"cr.toml":         strings.ReplaceAll(small, "\n", "\r"),
		"lists.toml":      small + "x = " + deep("[", 200000) + deep("]", 200000),
		"deep.toml":       small + "x = " + deep("[", 100) + deep("]", 100),
		"tables.toml":     small + "x = " + deep("{a=", 5000) + "1" + deep("}", 5000),
		"dotted.toml":     small + deep("a.", 100000) + "a = 1\n",
		"header.toml":     small + "[" + deep("a.", 100000) + "a]\n",
		"numbers.toml":    small + "x = [" + deep("1,", 300000) + "1]\n",
		"name.toml":       "[drink]\nname = \"" + deep("y", 201) + "\"\n",
		"longest.toml":    "[drink]\nname = \"" + deep("é", 200) + "\"\n",
		"recipe.toml":     small + deep("[[ingredient]]\nname = \"x\"\namount = \"1 g/L\"\n", 201),
		"zones.toml":      small + deep("[[process.zone]]\ntemperature = \"60 C\"\ntime = \"1 min\"\n", 101),
		"garbage.toml":    "PK\x03\x04\x14\x00\x08\x08",
		"keys.toml":       deep("kk = 1\n", 20000),
		"folder.toml/x":   "",
		"seven\x1b[31m.t": "[drink",
	}
	dir := folder(t, files)
	if err := os.Truncate(filepath.Join(dir, "large.toml"), 50<<20); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"absent.toml":     `absent.toml: is not there; check the name and the folder`,
		"folder.toml":     `folder.toml: is a folder; name a file`,
		"empty.toml":      `empty.toml: is empty: it has no [drink] table; write [drink], and under it name and serving`,
		"comments.toml":   `comments.toml: is empty: it has no [drink] table; write [drink], and under it name and serving`,
		"utf16le.toml":    `utf16le.toml: is UTF-16 or UTF-32, not UTF-8; save it as UTF-8`,
		"utf16be.toml":    `utf16be.toml: is UTF-16 or UTF-32, not UTF-8; save it as UTF-8`,
		"unmarked.toml":   `unmarked.toml: is UTF-16 or UTF-32, not UTF-8; save it as UTF-8`,
		"latin1.toml":     `latin1.toml:2:12: holds the byte 0xe9, which is not UTF-8; save it as UTF-8`,
		"zero.toml":       `zero.toml:2:10: holds a byte 0, so it is not a text file; name a spec file`,
		"bell.toml":       `bell.toml:2:10: "name = \"a\ab\"" is not TOML (basic strings cannot have control characters); write tables as [drink] and keys as name = "value"`,
		"large.toml":      `large.toml: is too large: 52.4 MB, and the most is 1 MB; name a smaller file`,
		"limit.toml":      `read`,
		"mark.toml":       `read`,
		"crlf.toml":       `read`,
		"cr.toml":         `cr.toml:1:8: "[drink]\rname = \"Barley water\"" is not TOML (expected newline); end lines with a line feed, as every editor can`,
		"lists.toml":      `lists.toml:3:10005: "x = [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["... is not TOML (arrays and inline tables are nested more than the maximum of 10000 levels deep); write tables as [drink] and keys as name = "value"`,
		"deep.toml":       `deep.toml:3:1: is nested more than 8 deep; write the tables of a spec; none of them is deeper than three`,
		"tables.toml":     `tables.toml:3:27: is nested more than 8 deep; write the tables of a spec; none of them is deeper than three`,
		"dotted.toml":     `dotted.toml:3:17: is nested more than 8 deep; write the tables of a spec; none of them is deeper than three`,
		"header.toml":     `header.toml:3:18: is nested more than 8 deep; write the tables of a spec; none of them is deeper than three`,
		"numbers.toml":    `numbers.toml:3:1: holds more than 10000 keys and values; write one drink to a file`,
		"name.toml":       `name.toml:2:8: drink.name: "` + deep("y", 70) + `"... is too long; write at most 200 letters`,
		"longest.toml":    `read`,
		"recipe.toml":     `recipe.toml:603:3: ingredient: is one more than 200; write 200 at most`,
		"zones.toml":      `zones.toml:303:11: process.zone: is one more than 100; write 100 at most`,
		"garbage.toml":    `garbage.toml:1:6: holds a byte 0, so it is not a text file; name a spec file`,
		"seven\x1b[31m.t": `seven\x1b[31m.t:1:6: "[drink" is not TOML (expected ']' to close table name); write [drink], or [[drink]] where there may be several`,
	} {
		if got := said(t, dir, name, spec.Options{}); got != want {
			t.Errorf("%q:\n got %s\nwant %s", name, got, want)
		}
	}
}

func TestTenProblemsAndACount(t *testing.T) {
	_, err := spec.Parse([]byte(small+strings.Repeat("[[ingredient]]\nname = \"x\"\n", 13)), "many.toml", ".", spec.Options{})
	lines := strings.Split(err.Error(), "\n")
	if len(lines) != 11 || lines[10] != "many.toml: and 3 more problems" {
		t.Error(err)
	}
	if p := err.(*spec.Problems); len(p.List) != 10 || p.More != 3 || p.List[0].Place.Line != 3 || p.List[0].Column != 3 {
		t.Errorf("%+v", p)
	}
	_, err = spec.Parse([]byte(small+strings.Repeat("[[ingredient]]\nname = \"x\"\n", 11)), "many.toml", ".", spec.Options{})
	if !strings.HasSuffix(err.Error(), "many.toml: and 1 more problem") {
		t.Error(err)
	}
}

func TestStandardInput(t *testing.T) {
	d, err := spec.Read("-", spec.Options{Stdin: strings.NewReader(small)})
	if err != nil || d.Name != "Barley water" || d.Dir != "." || d.File != "-" || len(d.Markets) != 1 || d.MarketGiven {
		t.Errorf("%+v %v", d, err)
	}
	for stdin, want := range map[string]string{
		"":                           "-: is empty: it has no [drink] table; write [drink], and under it name and serving",
		strings.Repeat("#", 2<<20):   "-: is too large: the most is 1 MB; name a smaller file",
		"[drink]\nserving = \"330\"": `-:2:11: drink.serving: "330" has no unit; write "330 mL" or "330 fl oz"`,
	} {
		if _, err := spec.Read("-", spec.Options{Stdin: strings.NewReader(stdin)}); err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
	if _, err := spec.Read("-", spec.Options{}); err == nil || err.Error() != "-: is standard input, and there is none; name a spec file" {
		t.Error(err)
	}
}

func TestHasDrinkTable(t *testing.T) {
	dir := folder(t, map[string]string{
		"a.toml": small, "b.TOML": " [ drink ]\n", "c.toml": "drink.name = 'x'\n", "d.toml": inUTF16("\ufeff"+small, true), "e.toml": "\xef\xbb\xbf" + small,
		"f.toml": "[Drink]\n", "g.toml": "[\"drink\"]\n", "h.toml": "drink = { name = 'x' }", "i.toml": "[drink.x]",
		"no-1.toml": "[[ingredient]]\nname = 'drink'\n", "no-2.md": small, "no-3.toml": "# [drink]\n", "no-4.toml": "[drinking]\n", "no-5.toml/x": "",
	})
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 14 {
		t.Fatal(len(entries), err)
	}
	for _, e := range entries {
		if got, want := spec.HasDrinkTable(filepath.Join(dir, e.Name())), !strings.HasPrefix(e.Name(), "no-"); got != want {
			t.Errorf("%s: %v, want %v", e.Name(), got, want)
		}
	}
	if spec.HasDrinkTable(filepath.Join(dir, "absent.toml")) {
		t.Error("an absent file has no table")
	}
}
