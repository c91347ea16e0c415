package web

import (
	"io"
	"mime"
	"net/http"
	"strings"

	"posset/beverage"
	"posset/beverage/copacker"
)

// linesName is what messages call lines from a browser.
const linesName = "lines.toml"

// parseDrinkForm reads the form with the file in it, in memory: it is small.
func parseDrinkForm(r *http.Request) error {
	kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if kind != "multipart/form-data" {
		return r.ParseForm()
	}
	if err := r.ParseMultipartForm(mostFormBytes); err != nil {
		return err
	}
	return takeLinesFile(r)
}

// takeLinesFile puts a file of lines where pasted lines stand, so that the page
// shows it and sends it again.
func takeLinesFile(r *http.Request) error {
	files := r.MultipartForm.File["lines_file"]
	if len(files) == 0 || files[0].Size == 0 {
		return nil
	}
	f, err := files[0].Open()
	if err != nil {
		return err
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	r.PostForm.Set("lines", string(data))
	return err
}

// heldAgainstLines is nil where no lines were given.
func (s *Site) heldAgainstLines(r *http.Request, d *beverage.Drink) (*copacker.Result, error) {
	text := r.PostForm.Get("lines")
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	file, err := copacker.Parse([]byte(text), linesName)
	if err != nil {
		return nil, err
	}
	return copacker.Match(r.Context(), d, file, copacker.Options{Options: s.options})
}
