package main

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/require"

	"posset/cmd/posset/internal/console"
)

// asked runs the dialogue on what was typed.
func asked(t *testing.T, typed string) (out, said string, err error) {
	t.Helper()
	var o, e bytes.Buffer
	con := console.New(strings.NewReader(typed), &o, &e)
	con.Format, con.Path = console.Text, "-"
	cmd := newCommand(con)
	cmd.SetContext(context.Background())
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		return askNew(cmd, con, newFlags{said: map[string]*string{}})
	}
	cmd.SetArgs(nil)
	cmd.SetErr(io.Discard)
	cmd.SilenceErrors, cmd.SilenceUsage = true, true
	err = cmd.Execute()
	return o.String(), e.String(), err
}

func TestAnswersThatEndEarly(t *testing.T) {
	for _, typed := range []string{"", "1\n", "1\nBarley brook\n250 mL\n"} {
		out, _, err := asked(t, typed)
		require.EqualError(t, err, "posset new: the answers ended before the last question; nothing was written")
		require.Empty(t, out)
	}
}

// From the first question back leads to the kind, and another kind begins anew.
func TestBackToTheKind(t *testing.T) {
	out, said, err := asked(t, "1\nOld name\n<\n<\njuice\n"+strings.Repeat("\n", 9))
	require.NoError(t, err)
	require.Contains(t, out, `name = "Apple and quince juice"`)
	require.NotContains(t, out, "Old name")
	require.Equal(t, 2, strings.Count(said, "What kind of drink is it?"))
}

// Going back shows what was said, and Enter keeps it while it can be.
func TestBackShowsWhatWasSaid(t *testing.T) {
	out, said, err := asked(t, "shot\nBrook\n100 mL\n30 g\n<\n<\n50 mL\n\n20 g\n"+strings.Repeat("\n", 7))
	require.NoError(t, err, said)
	require.Contains(t, said, "How much is drunk at once? [100 mL]")
	require.Contains(t, said, "[30 g] 30 g in 50 mL is more than a liquid drink holds; write 20 g at most")
	require.Contains(t, out, `name = "Brook"`)
	require.Contains(t, out, `serving = "50 mL"`)
}

func TestFileNames(t *testing.T) {
	for name, want := range map[string]string{
		"Quince clear protein water": "quince-clear-protein-water.toml", "Größe ☕": "gr-e.toml", "☕": "drink.toml", "../../etc/passwd": "etc-passwd.toml", strings.Repeat("a", 99): "drink.toml", "  -x- ": "x.toml",
	} {
		require.Equal(t, want, fileName(name))
	}
}
