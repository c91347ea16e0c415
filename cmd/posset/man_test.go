package main

import (
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/cmd/posset/internal/console"
)

// TestEveryCommandHasAPage holds each page against a reader of such pages, where
// there is one.
func TestEveryCommandHasAPage(t *testing.T) {
	root := newRoot(console.New(strings.NewReader(""), &bytes.Buffer{}, &bytes.Buffer{}))
	pages := manned(root)
	require.Greater(t, len(pages), len(commands(console.New(nil, nil, nil)))-1)
	groff, err := exec.LookPath("groff")
	for _, c := range pages {
		page := manPage(c)
		for _, want := range []string{`.SH "NAME"`, `.SH "SYNOPSIS"`, `.SH "DESCRIPTION"`, `.SH "EXIT STATUS"`, `\-\-format`} {
			require.Contains(t, page, want, c.Name())
		}
		if err != nil {
			continue
		}
		read := exec.Command(groff, "-man", "-ww", "-Tutf8")
		read.Stdin = strings.NewReader(page)
		var said bytes.Buffer
		read.Stderr = &said
		require.NoError(t, read.Run(), c.Name())
		require.Empty(t, said.String(), c.Name())
	}
}

func TestNoLineOfAPageIsTakenForARequest(t *testing.T) {
	p := &roff{}
	p.section("x", ".sh rm\n'quote\n\\fBbold\nB_I")
	p.verbatim(".nf\n  a - b")
	require.Equal(t, ".SH \"x\"\n\\&.sh rm\n\\&'quote\n\\efBbold\nB_I\n.nf\n\\&.nf\n\\&  a \\- b\n.fi\n", p.b.String())
}
