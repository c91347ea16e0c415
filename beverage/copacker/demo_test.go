package copacker_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/copacker"
	"posset/beverage/spec"
)

const demoLines = "../../testdata/lines.toml"

func demoFile(t testing.TB) *copacker.File {
	f, err := copacker.Read(demoLines, nil)
	require.NoError(t, err)
	return f
}

func demoDrinks(t testing.TB) []string {
	drinks, err := filepath.Glob("../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(drinks), 12)
	return drinks
}

func drink(t testing.TB, file string) *beverage.Drink {
	d, err := spec.Read(file, spec.Options{})
	require.NoError(t, err)
	return d
}

// neverSaid are words that would claim more than is known.
const neverSaid = `(?i)\b(safe|safely|pass|passes|passed|approved|compliant)\b`

// TestDemoDrinksOverDemoLines holds every demo drink against every demo line;
// UPDATE=1 renews what is to be read by eye.
func TestDemoDrinksOverDemoLines(t *testing.T) {
	file := demoFile(t)
	var b strings.Builder
	for _, name := range demoDrinks(t) {
		r, err := copacker.Match(context.Background(), drink(t, name), file, copacker.Options{})
		require.NoError(t, err)
		require.Len(t, r.Lines, len(file.Lines))
		fmt.Fprintf(&b, "%s\n", filepath.Base(name))
		for _, l := range r.Lines {
			require.Equal(t, l.NothingMissing, len(l.Missing) == 0)
			for _, m := range l.Missing {
				require.NotRegexp(t, neverSaid, strings.ReplaceAll(m.Text, "Safe Food for Canadians Regulations", ""))
			}
			fmt.Fprintf(&b, "  %s, by %s: %s\n", l.Line, l.By, words(l))
		}
	}
	const golden = "testdata/demo.txt"
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(golden, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	if d := cmp.Diff(string(want), b.String()); d != "" {
		t.Error(d)
	}
}

func words(l copacker.LineResult) string {
	if l.NothingMissing {
		return copacker.NothingMissing
	}
	var s []string
	for _, m := range l.Missing {
		s = append(s, strings.TrimRight(fmt.Sprintf("\n    %s %s %s", m.Side, m.Key, m.Finding), " "))
	}
	return fmt.Sprintf("%d missing%s", len(l.Missing), strings.Join(s, ""))
}
