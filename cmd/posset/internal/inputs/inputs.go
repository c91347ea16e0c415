// Package inputs turns what a user named (files, folders, standard input, a
// list of names) into the files to read, in an order that is always the same.
package inputs

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Found is what was named: the files, whether a list was asked for (several
// names, or a folder), and what could not be followed.
type Found struct {
	Files []string
	Many  bool
	Errs  []error
}

const (
	mostFiles   = 100_000
	mostDepth   = 64   // folders within folders
	longestName = 4096 // bytes of a line of --files-from
)

// Find follows names: "-" and files stand as they are, folders are walked for
// files that wanted accepts. What says what is looked for, for errors.
func Find(names []string, wanted func(path string) bool, what string) Found {
	f := Found{Many: len(names) > 1}
	for _, name := range names {
		info, err := os.Stat(name)
		if name == "-" || err != nil || !info.IsDir() {
			f.Files = append(f.Files, name) // what is wrong with a file is told by whoever reads it
			continue
		}
		f.Many = true
		w := walk{wanted: wanted}
		w.folder(name, 0)
		if len(w.files) == 0 && len(w.errs) == 0 {
			w.errs = []error{fmt.Errorf("%s: holds %s; name a file, or another folder", name, what)}
		}
		f.Files, f.Errs = append(f.Files, w.files...), append(f.Errs, w.errs...)
	}
	if slices.Index(f.Files, "-") != lastIndex(f.Files, "-") {
		f.Errs = append(f.Errs, errors.New("-: standard input can be read only once"))
	}
	return f
}

func lastIndex(list []string, s string) int {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i] == s {
			return i
		}
	}
	return -1
}

// walk gathers files below a folder. Links to folders are not followed, so
// that no loop of them can hold it up; hidden folders are passed over.
type walk struct {
	wanted func(string) bool
	files  []string
	errs   []error
}

func (w *walk) folder(path string, depth int) {
	entries, err := os.ReadDir(path) // sorted by name
	if err != nil {
		w.errs = append(w.errs, fmt.Errorf("%s: cannot be read: %w", path, reason(err)))
		return
	}
	if depth > mostDepth {
		w.errs = append(w.errs, fmt.Errorf("%s: is nested deeper than %d folders", path, mostDepth))
		return
	}
	for _, e := range entries {
		at := filepath.Join(path, e.Name())
		switch {
		case len(w.files) >= mostFiles:
			w.errs = append(w.errs, fmt.Errorf("%s: holds more than %d files; name fewer", path, mostFiles))
			return
		case e.IsDir() && !strings.HasPrefix(e.Name(), "."):
			w.folder(at, depth+1)
		case isFile(at, e) && w.wanted(at):
			w.files = append(w.files, at)
		}
	}
}

func isFile(path string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return e.Type().IsRegular()
	}
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular()
}

// reason is what the system said, without the path that the caller tells.
func reason(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err
	}
	return err
}

// List reads names, one a line, from a file or from standard input ("-").
// Blank lines and lines that begin with '#' are passed over.
func List(path string, stdin io.Reader) ([]string, error) {
	in := stdin
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			return nil, fmt.Errorf("%s: cannot be read: %w", path, reason(err))
		}
		defer f.Close()
		in = f
	}
	var names []string
	s := bufio.NewScanner(in)
	s.Buffer(nil, longestName)
	for s.Scan() {
		line := strings.TrimSpace(strings.TrimPrefix(s.Text(), "\ufeff"))
		if line == "" || line[0] == '#' {
			continue
		}
		if len(names) == mostFiles {
			return nil, fmt.Errorf("%s: names more than %d files", path, mostFiles)
		}
		names = append(names, line)
	}
	if err := s.Err(); err != nil {
		return nil, fmt.Errorf("%s: cannot be read as a list of names, one a line: %w", path, reason(err))
	}
	return names, nil
}

// logEndings are the names that recorders' files end in.
var logEndings = []string{".csv", ".tsv", ".txt", ".xlsx", ".log"}

// IsLog tells whether a file found in a folder is named like a recorder's.
func IsLog(path string) bool {
	path = strings.TrimSuffix(strings.ToLower(path), ".gz")
	return slices.Contains(logEndings, filepath.Ext(path))
}
