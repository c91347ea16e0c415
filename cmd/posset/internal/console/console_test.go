package console

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"posset/beverage/report"
)

func testConsole() (*Console, *bytes.Buffer, *bytes.Buffer) {
	var out, err bytes.Buffer
	c := New(strings.NewReader(""), &out, &err)
	c.env = func(string) string { return "" }
	return c, &out, &err
}

func result(name string) Result {
	return Result{Value: map[string]string{"name": name}, Doc: func(report.Units) report.Doc {
		return report.Doc{Title: name, Headline: "first line", Cautions: []string{"a caution"}, Sheet: report.Table{Columns: []report.Column{{Title: "name"}}, Rows: [][]string{{name}}}}
	}}
}

func TestStatus(t *testing.T) {
	for _, c := range []struct {
		err  error
		want int
	}{
		{nil, 0}, {ErrOpen, 1}, {errors.Join(ErrOpen, nil), 1}, {Refuse(errors.New("x")), 2}, {errors.New("x"), 2},
		{context.Canceled, 2}, {&os.PathError{Op: "write", Err: syscall.EPIPE}, 0}, {Refuse(nil, nil), 0},
	} {
		if got := Status(c.err); got != c.want {
			t.Errorf("%v: got %d, want %d", c.err, got, c.want)
		}
	}
}

func TestTellWritesALineAProblem(t *testing.T) {
	c, _, stderr := testConsole()
	c.Tell(Refuse(errors.New("a.toml:1: one\na.toml:2: two \x1b[31m\u009b"), nil, errors.New(strings.Repeat("x", 2000))))
	lines := strings.Split(strings.TrimSuffix(stderr.String(), "\n"), "\n")
	if want := `a.toml:2: two \x1b[31m\u009b`; len(lines) != 3 || lines[1] != want {
		t.Errorf("got %q", lines)
	}
	if n := len(lines[2]); n > 1000 {
		t.Errorf("a line of %d bytes", n)
	}
}

func TestTellIsSilentWhereTheResultTells(t *testing.T) {
	c, _, stderr := testConsole()
	c.Tell(ErrOpen)
	if stderr.Len() != 0 {
		t.Errorf("said %q", stderr)
	}
	c.Tell(context.Canceled)
	if got, want := stderr.String(), "posset: interrupted; nothing was written\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTellCountsWhatNobodyWouldRead(t *testing.T) {
	c, _, stderr := testConsole()
	var errs []error
	for range 250 {
		errs = append(errs, errors.New("a.toml: x"))
	}
	c.Tell(Refuse(errs...))
	if !strings.HasSuffix(stderr.String(), "\nposset: and 150 more problems\n") {
		t.Errorf("ends in %q", stderr.String()[stderr.Len()-60:])
	}
}

func TestEmitForms(t *testing.T) {
	for _, c := range []struct {
		format Format
		many   bool
		want   string
	}{
		{JSON, false, "{\n  \"name\": \"a\"\n}\n"},
		{JSON, true, "[\n  {\n    \"name\": \"a\"\n  }\n]\n"},
		{NDJSON, true, "{\"name\":\"a\"}\n"},
		{CSV, false, "name\na\n# a caution\n"},
		{Text, false, "first line\n\na\n\nCautions\n  - a caution\n\n\n"},
	} {
		con, out, _ := testConsole()
		con.Format = c.format
		if err := con.Emit(c.many, result("a")); err != nil {
			t.Fatal(err)
		}
		if out.String() != c.want {
			t.Errorf("%s: got %q, want %q", c.format, out, c.want)
		}
	}
}

type closedPipe struct{}

func (closedPipe) Write([]byte) (int, error) {
	return 0, &os.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}
}

func TestAClosedPipeIsNoError(t *testing.T) {
	c, _, _ := testConsole()
	c.Out = closedPipe{}
	if err := c.Emit(false, result("a")); err != nil {
		t.Error(err)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestAnUnwritableStreamIsAnError(t *testing.T) {
	c, _, _ := testConsole()
	c.Out = full{}
	err := c.Emit(false, result("a"))
	if err == nil || err.Error() != "posset: standard output: short write" {
		t.Errorf("got %v", err)
	}
}

func TestOutIsWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	spec := filepath.Join(dir, "quince.toml")
	if err := os.WriteFile(spec, []byte("spec"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(spec, filepath.Join(dir, "link.toml")); err != nil {
		t.Skip("no symbolic links here")
	}
	for _, c := range []struct{ out, want string }{
		{filepath.Join(dir, "X.json"), ""},
		{filepath.Join(dir, "no", "X.json"), filepath.Join(dir, "no", "X.json") + ": cannot be written: no such file or directory; nothing was written"},
		{dir, dir + ": is a folder; name a file for --out"},
		{spec, spec + ": is an input of this run; name another file for --out"},
		{filepath.Join(dir, "link.toml"), spec + ": is an input of this run; name another file for --out"},
		{os.DevNull, ""},
	} {
		con, out, _ := testConsole()
		con.Format, con.Path = JSON, c.out
		con.Reads(spec)
		err := con.Emit(false, result("a"))
		if got := message(err); got != c.want {
			t.Errorf("%s: got %q, want %q", c.out, got, c.want)
		}
		if out.Len() != 0 {
			t.Errorf("%s: wrote to standard output", c.out)
		}
	}
	if got := names(t, dir); got != "X.json link.toml quince.toml" {
		t.Errorf("left behind: %s", got)
	}
	if b, _ := os.ReadFile(spec); string(b) != "spec" {
		t.Error("the spec was overwritten")
	}
}

func TestOutReplacesThroughALinkAndKeepsTheMode(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "real.json"), filepath.Join(dir, "link.json")
	if err := os.WriteFile(real, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Skip("no symbolic links here")
	}
	con, _, _ := testConsole()
	con.Format, con.Path = NDJSON, link
	if err := con.Emit(false, result("a")); err != nil {
		t.Fatal(err)
	}
	b, _ := os.ReadFile(real)
	st, _ := os.Stat(real)
	if string(b) != "{\"name\":\"a\"}\n" || st.Mode().Perm() != 0o600 || names(t, dir) != "link.json real.json" {
		t.Errorf("got %q, mode %v, files %s", b, st.Mode(), names(t, dir))
	}
}

func message(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

func names(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, e := range entries {
		all = append(all, e.Name())
	}
	return strings.Join(all, " ")
}

func TestStyleFollowsTheEnvironment(t *testing.T) {
	for _, c := range []struct {
		env   map[string]string
		ascii bool
	}{
		{nil, true},
		{map[string]string{"LANG": "C"}, true},
		{map[string]string{"LANG": "de_DE.UTF-8"}, false},
		{map[string]string{"LANG": "de_DE.UTF-8", "LC_ALL": "POSIX"}, true},
		{map[string]string{"LC_CTYPE": "C.utf8"}, false},
	} {
		con, _, _ := testConsole()
		con.env = func(k string) string { return c.env[k] }
		if st := con.style(); st.ASCII != c.ascii || st.Colour || st.Width != 100 {
			t.Errorf("%v: got %+v", c.env, st)
		}
	}
}

func TestColourIsWanted(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{map[string]string{"TERM": "xterm"}, true},
		{map[string]string{"TERM": "dumb"}, false},
		{map[string]string{"TERM": "xterm", "NO_COLOR": "0"}, false},
		{map[string]string{"TERM": "xterm", "NO_COLOR": ""}, true},
		{nil, false},
	} {
		con, _, _ := testConsole()
		con.env = func(k string) string { return c.env[k] }
		if got := con.wantsColour(); got != c.want {
			t.Errorf("%v: got %v", c.env, got)
		}
	}
}

func TestChoicesOffer(t *testing.T) {
	con, _, _ := testConsole()
	f := con.FormatFlag()
	err := f.Set("xml")
	if want := `"xml" is none of its words; write "text", "json", "ndjson", "csv", "xlsx" or "html"`; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	if err := f.Set("csv"); err != nil || con.Format != CSV || f.String() != "csv" {
		t.Errorf("got %v, %v, %s", err, con.Format, f)
	}
}

func TestProgressIsDrawnOnlyAfterASecond(t *testing.T) {
	var drawn bytes.Buffer
	p := &Progress{to: &drawn, what: "logs", all: 3, started: time.Now()}
	p.Done()
	if drawn.Len() != 0 {
		t.Errorf("drew %q at once", &drawn)
	}
	p.started = time.Now().Add(-2 * progressAfter)
	p.Done()
	if !strings.Contains(drawn.String(), "2/3") {
		t.Errorf("drew %q", &drawn)
	}
	p.End()
}

func TestProgressIsNotDrawnIntoAPipe(t *testing.T) {
	c, _, stderr := testConsole()
	p := c.Progress(1, "logs")
	p.started = p.started.Add(-2 * progressAfter)
	p.Done()
	p.End()
	if stderr.Len() != 0 {
		t.Errorf("drew %q", stderr)
	}
}

func TestTheNameOfOutGivesTheForm(t *testing.T) {
	for path, want := range map[string]Format{"a.json": JSON, "b.HTML": HTML, "c.ndjson": NDJSON, "d.csv": CSV, "e.txt": Text, "": Text, "json": Text} {
		con, _, _ := testConsole()
		con.FormatFlag()
		con.Path = path
		if con.FormatByName(); con.Format != want {
			t.Errorf("%q: got %s, want %s", path, con.Format, want)
		}
	}
}

func TestAnInterruptEndsAReadThatWaits(t *testing.T) {
	silent, writer := io.Pipe()
	defer writer.Close()
	c, _, _ := testConsole()
	c.In = silent
	ctx, cancel := context.WithCancel(context.Background())
	in := c.Input(ctx)
	go writer.Write([]byte("spec"))
	data := make([]byte, 10)
	if n, err := in.Read(data); string(data[:n]) != "spec" || err != nil {
		t.Errorf("got %q, %v", data[:n], err)
	}
	time.AfterFunc(time.Millisecond, cancel)
	if n, err := in.Read(data); n != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("got %q, %v", data[:n], err)
	}
}
