package web

import (
	"errors"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
)

// What one upload may hold beside its size as a whole.
const (
	mostFiles      = 20
	mostFields     = 2000
	mostFieldBytes = 4 << 10
)

// uploaded is a record while it is read: a file of ours, under a name of ours,
// with the name that the user knows it by.
type uploaded struct {
	name string
	path string
}

// upload is what a form for records brought.
type upload struct {
	fields url.Values
	files  []uploaded
}

// receive writes the files of a form to a folder, one after the other as they
// come in, so that a large one never stands in memory.
func receive(r *http.Request, folder string) (*upload, error) {
	parts, err := r.MultipartReader()
	if err != nil {
		return nil, &refusal{http.StatusUnsupportedMediaType, "this address takes files from a form"}
	}
	u := &upload{fields: url.Values{}}
	for count := 0; ; count++ {
		part, err := parts.NextPart()
		switch {
		case errors.Is(err, io.EOF):
			return u, nil
		case err != nil:
			return nil, asRefusal(err)
		case count == mostFields || len(u.files) == mostFiles && part.FileName() != "":
			return nil, &refusal{http.StatusRequestEntityTooLarge, "that is more than " + itoa(mostFiles) + " files; send fewer at once"}
		}
		if err := u.take(part, folder); err != nil {
			return nil, err
		}
	}
}

func (u *upload) take(part *multipart.Part, folder string) error {
	if part.FileName() == "" {
		data, err := io.ReadAll(io.LimitReader(part, mostFieldBytes))
		if err != nil {
			return asRefusal(err)
		}
		if part.FormName() != "log" { // a file field that was left empty
			u.fields.Add(part.FormName(), string(data))
		}
		return nil
	}
	f, err := os.CreateTemp(folder, "record-*")
	if err != nil {
		return err
	}
	_, err = io.Copy(f, part)
	if err = errors.Join(err, f.Close()); err != nil {
		return asRefusal(err)
	}
	u.files = append(u.files, uploaded{name: shownName(part.FileName()), path: f.Name()})
	return nil
}

const longestShownName = 120 // letters

// shownName is a file's name as it may stand in a page; it opens nothing.
func shownName(name string) string {
	name = strings.Map(visible, filepath.Base(strings.ReplaceAll(name, `\`, "/")))
	if letters := []rune(name); len(letters) > longestShownName {
		name = string(letters[:longestShownName]) + "..."
	}
	return name
}
