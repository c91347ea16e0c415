package console

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// Stream writes a file beside the result as it comes, whole or not at all: it
// takes its name once fill is through. A file that is an input of the run, or
// is there and no ordinary file, is refused.
func (c *Console) Stream(path string, fill func(io.Writer) error) error {
	old, err := os.Stat(path)
	switch {
	case err == nil && isAmong(old, c.read):
		return fmt.Errorf("%s: is an input of this run; name another file", path)
	case err == nil && !old.Mode().IsRegular():
		return fmt.Errorf("%s: is no ordinary file; name one", path)
	}
	temp := filepath.Join(filepath.Dir(path), ".posset-"+rand.Text()+".tmp")
	f, err := os.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode)
	if err != nil {
		return outError(path, err)
	}
	defer os.Remove(temp) // gone already where all went well
	if err := errors.Join(fill(f), f.Close()); err != nil {
		return err
	}
	return outError(path, os.Rename(temp, path))
}
