package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

// TestDemoDrinks holds the assessment of every demo drink against the one that
// was read by eye. UPDATE=1 writes what comes out; read it before it stays.
func TestDemoDrinks(t *testing.T) {
	golden, err := filepath.Abs("../../testdata/golden")
	require.NoError(t, err)
	t.Chdir("../../testdata/drinks")
	t.Setenv("LANG", "C.UTF-8")
	drinks, err := filepath.Glob("*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(drinks), 12)
	for _, drink := range drinks {
		t.Run(drink, func(t *testing.T) {
			var out, errs bytes.Buffer
			status := run([]string{"check", drink}, strings.NewReader(""), &out, &errs)
			require.Empty(t, errs.String())
			require.Contains(t, []int{0, 1}, status)
			file := filepath.Join(golden, strings.TrimSuffix(drink, ".toml")+".txt")
			if os.Getenv("UPDATE") != "" {
				require.NoError(t, os.MkdirAll(golden, 0o755))
				require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
			}
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			if d := cmp.Diff(string(want), out.String()); d != "" {
				t.Error(d)
			}
		})
	}
}
