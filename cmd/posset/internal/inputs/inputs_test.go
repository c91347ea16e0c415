package inputs

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

func write(t *testing.T, dir string, names ...string) {
	t.Helper()
	for _, n := range names {
		path := filepath.Join(dir, n)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func TestFoldersAreWalkedInOrder(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, ".", "logs/b.csv", "logs/a.CSV", "logs/sub/c.xlsx", "logs/notes.md", "logs/.git/d.csv", "logs/e.csv.gz", "one.dat")
	if err := os.Symlink("..", filepath.Join("logs", "sub", "loop")); err != nil {
		t.Skip("no symbolic links here")
	}
	got := Find([]string{"logs", "one.dat", "missing.csv"}, IsLog, "no log")
	want := Found{Files: []string{"logs/a.CSV", "logs/b.csv", "logs/e.csv.gz", "logs/sub/c.xlsx", "one.dat", "missing.csv"}, Many: true}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

func TestOneFileIsNotMany(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, ".", "a/a.csv")
	if f := Find([]string{"a/a.csv"}, IsLog, "no log"); f.Many {
		t.Error("one file became many")
	}
	if f := Find([]string{"a"}, IsLog, "no log"); !f.Many || len(f.Files) != 1 {
		t.Errorf("a folder became %v", f)
	}
}

func TestWhatCannotBeFollowed(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, ".", "empty/notes.md")
	deep := filepath.Join(append([]string{"deep"}, strings.Split(strings.Repeat("d/", mostDepth+2), "/")...)...)
	if err := os.MkdirAll(deep, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		names []string
		want  string
	}{
		{[]string{"empty"}, "empty: holds no log; name a file, or another folder"},
		{[]string{"-", "-"}, "-: standard input can be read only once"},
		{[]string{"deep"}, filepath.Join(append([]string{"deep"}, strings.Split(strings.Repeat("d/", mostDepth+1), "/")...)...) + ": is nested deeper than 64 folders"},
	} {
		f := Find(c.names, IsLog, "no log")
		if len(f.Errs) != 1 || f.Errs[0].Error() != c.want {
			t.Errorf("%v: got %v, want %s", c.names, f.Errs, c.want)
		}
	}
}

func TestListOfNames(t *testing.T) {
	got, err := List("-", strings.NewReader("\ufeffa.csv\r\n\n# a comment\n with space.csv \n"))
	if want := []string{"a.csv", "with space.csv"}; err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("got %q, %v", got, err)
	}
	for name, want := range map[string]string{
		"no.txt": "no.txt: cannot be read: no such file or directory",
		"-":      "-: cannot be read as a list of names, one a line: bufio.Scanner: token too long",
	} {
		_, err := List(name, strings.NewReader(strings.Repeat("x", 10*longestName)))
		if err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}
