package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// written are the pages of the documentation that are written by hand. What is
// made in them is renewed: tables of the data files, and what commands print.
var written = []string{"models.md", "nomenclature.md", "json.md", "guide-developer.md", "guide-engineer.md", "guide-brand-owner.md",
	"changes.md", "dependencies.md", "performance.md"}

func TestDocsPages(t *testing.T) {
	t.Setenv("LANG", "C.UTF-8")
	for _, name := range written {
		t.Run(name, func(t *testing.T) {
			file, err := filepath.Abs(docs + name)
			require.NoError(t, err)
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			made := withTables(t, string(text))
			t.Chdir("../../testdata/drinks")
			holdPage(t, file, withOutputs(t, made), "Docs")
		})
	}
}

// Every page of the documentation is held by a test of its own or stands above.
func TestDocsAreAllHeld(t *testing.T) {
	held := append([]string{"spec.md", "commands.md", "findings.md"}, written...)
	pages, err := filepath.Glob(docs + "*.md")
	require.NoError(t, err)
	for _, p := range pages {
		require.Contains(t, held, filepath.Base(p))
	}
}

func TestChangesBeginWithThisVersion(t *testing.T) {
	text, err := os.ReadFile(docs + "changes.md")
	require.NoError(t, err)
	_, first, _ := strings.Cut(string(text), "\n## ")
	require.True(t, strings.HasPrefix(first, version+" "), "the newest heading is %.20q, the version %s", first, version)
}

// A table is made from a data file by a line such as
//
//	<!-- table thermal/data/indices.csv: name=index, tref_c=at °C; where basis=seen -->
//
// and stands up to the next <!-- end -->.
var tableMark = regexp.MustCompile(`(?s)(<!-- table (\S+): (.*?)(?:; where (\w+)=(.*?))? -->\n).*?(<!-- end -->)`)

// The constants of a string type, with the words beside them in the code, stand
// after a line such as <!-- constants thermal/logfile Role -->.
var constantsMark = regexp.MustCompile(`(?s)(<!-- constants (\S+) (\w+) -->\n).*?(<!-- end -->)`)

func withTables(t *testing.T, page string) string {
	page = constantsMark.ReplaceAllStringFunc(page, func(found string) string {
		m := constantsMark.FindStringSubmatch(found)
		return m[1] + constantTable(t, "../../"+m[2], m[3]) + m[4]
	})
	return tableMark.ReplaceAllStringFunc(page, func(found string) string {
		m := tableMark.FindStringSubmatch(found)
		return m[1] + dataTable(t, m[2], strings.Split(m[3], ", "), m[4], m[5]) + m[6]
	})
}

func dataTable(t *testing.T, file string, columns []string, where, is string) string {
	rows := dataRows(t, file)
	at := func(name string) int {
		i := slices.Index(rows[0], name)
		require.GreaterOrEqual(t, i, 0, "%s has no column %q", file, name)
		return i
	}
	var heads, rule []string
	var places []int
	for _, c := range columns {
		name, head, ok := strings.Cut(c, "=")
		if !ok {
			head = name
		}
		heads, rule, places = append(heads, head), append(rule, "---"), append(places, at(name))
	}
	text := tableRow(heads...) + tableRow(rule...)
	for _, r := range rows[1:] {
		if where != "" && r[at(where)] != is {
			continue
		}
		cells := make([]string, len(places))
		for i, p := range places {
			cells[i] = r[p]
		}
		text += tableRow(cells...)
	}
	return text
}

func constantTable(t *testing.T, dir, typ string) string {
	text := tableRow("word", "meaning") + tableRow("---", "---")
	for _, c := range constants(t, dir, typ) {
		text += tableRow("`"+c.word+"`", c.means)
	}
	return text
}

func dataRows(t *testing.T, file string) [][]string {
	text, err := os.ReadFile("../../" + file)
	require.NoError(t, err)
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	if strings.HasSuffix(file, ".tsv") {
		r.Comma, r.LazyQuotes = '\t', true
	}
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1)
	return rows
}

var consoleBlock = regexp.MustCompile("(?ms)^```console\n(.*?)^```$")

// withOutputs runs each command of a page's console blocks, in the folder of the
// demo drinks, and puts what it prints below it.
func withOutputs(t *testing.T, page string) string {
	s := &shell{t: t, script: pythonIn(page)}
	page = consoleBlock.ReplaceAllStringFunc(page, func(block string) string {
		var b strings.Builder
		b.WriteString("```console\n")
		for _, line := range strings.Split(block, "\n") {
			if command, ok := strings.CutPrefix(line, "$ "); ok {
				b.WriteString(line + "\n" + s.run(command))
			}
		}
		return b.String() + "```"
	})
	return page
}

// shell runs the few things that the pages show: posset, the page's own Python
// script, echo $?, and behind a | head and sed.
type shell struct {
	t      *testing.T
	script string
	status int
}

func (s *shell) run(command string) string {
	parts := strings.Split(command, " | ")
	out := s.start(words(s.t, parts[0]))
	for _, p := range parts[1:] {
		out = filtered(s.t, words(s.t, p), out)
	}
	return out
}

func (s *shell) start(args []string) string {
	switch args[0] {
	case "posset":
		var out, errs bytes.Buffer
		s.status = run(args[1:], strings.NewReader(""), &out, &errs)
		require.Empty(s.t, errs.String(), "%q", args)
		return out.String()
	case "echo":
		require.Equal(s.t, []string{"echo", "$?"}, args)
		return fmt.Sprintln(s.status)
	case "python3":
		return s.python(args[1:])
	}
	s.t.Fatalf("the pages may not run %q", args[0])
	return ""
}

var pythonBlock = regexp.MustCompile("(?ms)^```python\n(.*?)^```$")

func pythonIn(page string) string {
	if m := pythonBlock.FindStringSubmatch(page); m != nil {
		return m[1]
	}
	return ""
}

func (s *shell) python(args []string) string {
	program, err := exec.LookPath("python3")
	if err != nil {
		s.t.Skip("the script of this page needs python3")
	}
	file := filepath.Join(s.t.TempDir(), args[0])
	require.NoError(s.t, os.WriteFile(file, []byte(s.script), 0o644))
	cmd := exec.Command(program, append([]string{file}, args[1:]...)...)
	out, err := cmd.CombinedOutput()
	s.status = cmd.ProcessState.ExitCode()
	require.NotEmpty(s.t, out, "%v", err)
	return string(out)
}

// filtered is head -n N, or sed -n '/FROM/,/TO/p'.
func filtered(t *testing.T, args []string, text string) string {
	lines := strings.SplitAfter(text, "\n")
	if len(args) == 3 && args[0] == "head" && args[1] == "-n" {
		n, err := strconv.Atoi(args[2])
		require.NoError(t, err)
		return strings.Join(lines[:min(n, len(lines))], "")
	}
	require.True(t, len(args) == 3 && args[0] == "sed" && args[1] == "-n", "the pages may not run %q", args)
	ends := strings.Split(strings.TrimSuffix(strings.TrimPrefix(args[2], "/"), "/p"), "/,/")
	require.Len(t, ends, 2)
	from, to := regexp.MustCompile(ends[0]), regexp.MustCompile(ends[1])
	out, in := "", false
	for _, l := range lines {
		was := in
		line := strings.TrimSuffix(l, "\n")
		in = in || from.MatchString(line)
		if in {
			out += l
		}
		in = in && !(was && to.MatchString(line))
	}
	require.NotEmpty(t, out, "%q finds nothing", args[2])
	return out
}

// words splits a command as a shell does, with quotes of either kind.
func words(t *testing.T, command string) (list []string) {
	word, quote, open := "", rune(0), false
	for _, r := range command + " " {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote != 0:
			word += string(r)
		case r == '"' || r == '\'':
			quote, open = r, true
		case r != ' ':
			word, open = word+string(r), true
		case open:
			list, word, open = append(list, word), "", false
		}
	}
	require.True(t, quote == 0 && len(list) > 0, "%q is no command", command)
	return list
}
