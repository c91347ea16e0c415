package console

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// writeWhole writes a file so that it is there complete or as it was before:
// beside it first, then renamed. What is no ordinary file (a device, a named
// pipe) is written to as it is.
func writeWhole(path string, data []byte, read []string) error {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	old, err := os.Stat(path)
	switch {
	case err == nil && old.IsDir():
		return fmt.Errorf("%s: is a folder; name a file for --out", path)
	case err == nil && isAmong(old, read):
		return fmt.Errorf("%s: is an input of this run; name another file for --out", path)
	case err == nil && !old.Mode().IsRegular():
		return outError(path, writeDevice(path, data))
	}
	return outError(path, replace(path, data, old))
}

// outError names the file once, whatever the system said of it.
func outError(path string, err error) error {
	if err == nil || isClosedPipe(err) {
		return nil
	}
	var pe *fs.PathError
	if errors.As(err, &pe) {
		err = pe.Err
	}
	return fmt.Errorf("%s: cannot be written: %w; nothing was written", path, err)
}

func isAmong(file fs.FileInfo, names []string) bool {
	for _, n := range names {
		if other, err := os.Stat(n); err == nil && os.SameFile(file, other) {
			return true
		}
	}
	return false
}

func writeDevice(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

const newFileMode = 0o666 // less the umask

func replace(path string, data []byte, old fs.FileInfo) error {
	temp := filepath.Join(filepath.Dir(path), ".posset-"+rand.Text()+".tmp")
	mode := fs.FileMode(newFileMode)
	if old != nil {
		mode = old.Mode().Perm()
	}
	err := writeNew(temp, data, mode)
	if err == nil {
		err = os.Rename(temp, path)
	}
	if err != nil {
		os.Remove(temp) // what is left of a failed write is of no use
	}
	return err
}

func writeNew(path string, data []byte, mode fs.FileMode) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}
