package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzCheck takes any bytes through the whole program, from the spec to the
// printed page: no panic, one of the three exit statuses, and with unusable
// input a word on standard error and nothing on standard output.
func FuzzCheck(f *testing.F) {
	specs, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(f, err)
	require.NotEmpty(f, specs)
	formats := []string{"text", "json", "ndjson", "csv", "html"}
	for i, path := range specs {
		data, err := os.ReadFile(path)
		require.NoError(f, err)
		f.Add(data, byte(i))
	}
	f.Fuzz(func(t *testing.T, data []byte, which byte) {
		var stdout, stderr bytes.Buffer
		status := run([]string{"check", "-", "--format", formats[int(which)%len(formats)]}, bytes.NewReader(data), &stdout, &stderr)
		switch {
		case strings.Contains(stderr.String(), "a fault of the program"):
			t.Fatal(stderr.String())
		case status == 2 && (stdout.Len() > 0 || stderr.Len() == 0):
			t.Fatalf("unusable: %d bytes on standard output, on standard error %q", stdout.Len(), stderr.String())
		case status != 2 && (status < 0 || status > 2 || stdout.Len() == 0):
			t.Fatalf("status %d with %d bytes", status, stdout.Len())
		}
	})
}
