package spec

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/quantity"
)

var driveLetter = regexp.MustCompile(`^[A-Za-z]:`)

// fileOf reads the name of a file that must be there, inside the spec's folder
// unless the caller allows others. The name is cleaned and relative to it.
func (r *reader) fileOf(n *node) (string, bool) {
	written, ok := r.textOf(n, longestText)
	if !ok {
		return "", false
	}
	if strings.Contains(written, `\`) {
		r.wrong(n, "has a backslash", "write folders with /")
		return "", false
	}
	path := filepath.FromSlash(written)
	if !r.outside && (!filepath.IsLocal(path) || driveLetter.MatchString(written) || slices.Contains(strings.Split(written, "/"), "..")) {
		r.leaves(n)
		return "", false
	}
	if !filepath.IsAbs(path) {
		path = filepath.Join(r.dir, path)
	}
	return r.relative(n, path)
}

func (r *reader) leaves(n *node) {
	r.wrong(n, "leaves the spec's folder", "name a file inside it, or allow others with --allow-outside")
}

// relative holds the file against the folder after all links are followed. The
// name it returns has / on every system, so that what is printed is the same.
func (r *reader) relative(n *node, file string) (string, bool) {
	about, err := os.Stat(file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		r.wrong(n, "is not there", "name a file that is, or leave the key out")
		return "", false
	case err != nil:
		r.wrong(n, "cannot be read ("+reason(err)+")", "name a file that can")
		return "", false
	case about.IsDir():
		r.wrong(n, "is a folder", "name a file")
		return "", false
	case !about.Mode().IsRegular():
		r.wrong(n, "is not a plain file", "name a file")
		return "", false
	}
	if r.home == "" {
		r.home = resolved(r.dir)
	}
	whole := resolved(file)
	if r.home == "" || whole == "" || (!r.outside && !inside(r.home, whole)) {
		r.leaves(n)
		return "", false
	}
	if !r.outside {
		return path.Clean(strings.TrimSpace(n.text)), true
	}
	name, err := filepath.Rel(r.home, whole)
	if err != nil { // another drive
		r.leaves(n)
	}
	return filepath.ToSlash(name), err == nil
}

// resolved is the whole path after all links; empty where there is none.
func resolved(path string) string {
	whole, err := filepath.Abs(path)
	if err != nil {
		return ""
	}
	if whole, err = filepath.EvalSymlinks(whole); err != nil {
		return ""
	}
	return whole
}

func inside(dir, file string) bool {
	name, err := filepath.Rel(dir, file)
	return err == nil && filepath.IsLocal(name)
}

// ownFiles declares the key that names files with ingredients of the user's own.
func ownFiles(key, means, example string) field[beverage.Drink] {
	return field[beverage.Drink]{
		KeyDoc: KeyDoc{Key: key, Form: FormTexts, Type: "a file inside this file's folder, or a list of them", Means: means, Example: example},
		read: func(r *reader, n *node, d *beverage.Drink) {
			for _, item := range r.list(n, mostOwnFiles) {
				if name, ok := r.fileOf(item); ok {
					d.Own = append(d.Own, r.ownFile(filepath.Join(r.dir, name))...)
				}
			}
			r.describedOnce(d.Own)
		},
	}
}

func (r *reader) ownFile(path string) []beverage.Ingredient {
	data, problem := readFile(path, path)
	if problem != nil {
		r.add(*problem)
		return nil
	}
	return ownIngredients(path, data, r.gathering)
}

// describedOnce refuses two descriptions of one name: which counts is unclear.
func (r *reader) describedOnce(own []beverage.Ingredient) {
	seen := make(map[string]beverage.Place)
	for _, i := range own {
		key := strings.ToLower(strings.Join(strings.Fields(i.Name), " "))
		if first, twice := seen[key]; twice {
			r.add(Problem{Place: i.Place, Read: quantity.Quote(i.Name) + " is described twice, first at " + printable(first.File) + ":" + itoa(first.Line), Help: "keep one of them"})
			continue
		}
		seen[key] = i.Place
	}
}
