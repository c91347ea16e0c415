package console

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// WriteOwn writes a text of a form of its own, to --out or to standard output. A
// file that is there is written over only where overwrite says so.
func (c *Console) WriteOwn(text []byte, overwrite bool) error {
	switch {
	case !c.ToFile():
		if _, err := c.Out.Write(text); err != nil && !isClosedPipe(err) {
			return errors.New("posset: standard output: " + err.Error())
		}
		return nil
	case overwrite:
		return writeWhole(c.Path, text, c.read)
	}
	err := writeNew(c.Path, text, newFileMode)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s: is there already; name another file, or say --overwrite", c.Path)
	case err != nil:
		os.Remove(c.Path) // it was not there before, and half of it is of no use
	}
	return outError(c.Path, err)
}
