package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestReadmeShowsARealRun runs what the README shows first and holds the lines it
// prints against the program's, up to the line that says more follows.
func TestReadmeShowsARealRun(t *testing.T) {
	t.Chdir("../..")
	t.Setenv("LANG", "C.UTF-8")
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(text), "```\ngo run ./cmd/posset ")
	require.True(t, ok, "README.md shows no first run")
	command, rest, _ := strings.Cut(rest, "\n")
	_, rest, ok = strings.Cut(rest, "```text\n")
	require.True(t, ok, "README.md shows no output")
	shown, _, ok := strings.Cut(rest, "[...]\n")
	require.True(t, ok)
	var out, errs bytes.Buffer
	run(strings.Fields(command), strings.NewReader(""), &out, &errs)
	require.Empty(t, errs.String())
	require.Greater(t, strings.Count(shown, "\n"), 8)
	require.True(t, strings.HasPrefix(out.String(), shown), "README.md shows\n%s\nthe program prints\n%s", shown, out.String()[:len(shown)])
}
