package web

import (
	"errors"
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/web/tomltext"
)

const (
	// specName is what messages and results call a spec from a browser.
	specName = "drink.toml"
	// nowhere is a folder that no system can have: were a name of a file ever
	// to get through, the system would refuse it before it looks.
	nowhere = "\x00"
)

// fileKeys are the keys of a spec that name files.
var fileKeys = []string{"drink.ingredient_files", "process.log", "process.record"}

// readSpec reads a spec that a browser sent. It may name no files: a page could
// otherwise make this machine open them.
func readSpec(text string) (*beverage.Drink, error) {
	read, _ := tomltext.Read(text) // what is no TOML is told by the reader of specs, in its own words
	for _, v := range read.Values() {
		for _, key := range fileKeys {
			if v.Path == key || strings.HasPrefix(v.Path, key+".") {
				return nil, fmt.Errorf("%s:%d: %s: names a file, and this page opens none; take the key out, and use posset check or the page for records", specName, v.Line, key)
			}
		}
	}
	return spec.Parse([]byte(text), specName, nowhere, spec.Options{})
}

// problemLines are an error's lines, as a list.
func problemLines(err error) []string {
	if err == nil {
		return nil
	}
	return strings.Split(err.Error(), "\n")
}

// plainProblems puts the questions of a form in place of lines and keys that
// its user never saw.
func plainProblems(err error, called func(key string, line int) string) []string {
	var known *spec.Problems
	if !errors.As(err, &known) {
		return problemLines(err)
	}
	var lines []string
	for _, p := range known.List {
		s := called(p.Place.Key, p.Place.Line) + ": " + p.Read
		if p.Help != "" {
			s += "; " + p.Help
		}
		lines = append(lines, s)
	}
	if known.More > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", known.More))
	}
	return lines
}
