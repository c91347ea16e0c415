package console

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWriteOwn(t *testing.T) {
	var out, errs bytes.Buffer
	c := New(strings.NewReader(""), &out, &errs)
	require.NoError(t, c.WriteOwn([]byte("a\n"), false))
	require.Equal(t, "a\n", out.String())
	c.Path = filepath.Join(t.TempDir(), "quince.toml")
	require.NoError(t, c.WriteOwn([]byte("first\n"), false))
	require.EqualError(t, c.WriteOwn([]byte("second\n"), false), c.Path+": is there already; name another file, or say --overwrite")
	held(t, c.Path, "first\n")
	require.NoError(t, c.WriteOwn([]byte("third\n"), true))
	held(t, c.Path, "third\n")
	c.Path = filepath.Join(t.TempDir(), "none", "quince.toml")
	require.EqualError(t, c.WriteOwn([]byte("a"), false), c.Path+": cannot be written: no such file or directory; nothing was written")
}

func held(t *testing.T, path, want string) {
	t.Helper()
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, want, string(got))
}
