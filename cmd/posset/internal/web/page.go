package web

import (
	"bytes"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"posset/beverage/report/chart"
)

// Sizes and times of requests.
const (
	mostFormBytes = 4 << 20 // a spec of 1 MB, as a form writes it
	mostLogBytes  = 64 << 20
	formTime      = 20 * headerTime / 10
	logTime       = transferTime
)

func itoa(n int) string { return strconv.Itoa(n) }

func megabytes(n int64) string { return fmt.Sprintf("%d MB", n>>20) }

// Handler answers every address of the site.
func (s *Site) Handler() http.Handler {
	mux := http.NewServeMux()
	form := func(pattern string, h handler) { mux.Handle(pattern, s.within(mostFormBytes, formTime, h)) }
	form("GET /{$}", s.home)
	form("GET /drink", s.describe)
	form("POST /drink", s.describeAnswer)
	form("POST /drink/brief", s.briefFile)
	form("POST /drink/spec", s.specFile)
	form("GET /spec", s.work)
	form("POST /spec", s.workAnswer)
	form("POST /spec/edit", s.edit)
	form("POST /spec/save", s.saveText)
	form("POST /spec/report", s.saveReport)
	form("GET /records", s.records)
	mux.Handle("POST /records", s.within(mostLogBytes, logTime, s.recordsShown))
	mux.Handle("POST /records/save", s.within(mostLogBytes, logTime, s.recordsFile))
	form("GET /page.css", styleSheet)
	for name, kind := range map[string]string{"page.js": "text/javascript", "mark.svg": "image/svg+xml"} {
		form("GET /"+name, asset(name, kind))
	}
	form("/", func(*http.Request) (answer, error) {
		return answer{}, &refusal{http.StatusNotFound, "there is no such page; start at /"}
	})
	return guarded(mux)
}

func asset(name, kind string) handler {
	return func(*http.Request) (answer, error) {
		body, err := assets.ReadFile("assets/" + name)
		return answer{kind: kind + "; charset=utf-8", body: body}, err
	}
}

// styleSheet is the page's own with that of the charts in it.
func styleSheet(r *http.Request) (answer, error) {
	a, err := asset("page.css", "text/css")(r)
	a.body = append([]byte(chart.Style), a.body...)
	return a, err
}

// page is what every template is given.
type page struct {
	Title   string
	Here    string // which of the three pages this is
	Version string
	Content any
}

func (s *Site) home(*http.Request) (answer, error) {
	return s.show("home", page{Title: "posset"})
}

// show renders a page.
func (s *Site) show(name string, p page) (answer, error) {
	p.Version = s.options.Version
	p.Here = name
	body, err := s.render(name, p)
	return answer{kind: "text/html; charset=utf-8", body: body}, err
}

func (s *Site) render(name string, data any) ([]byte, error) {
	var b bytes.Buffer
	if err := s.pages.ExecuteTemplate(&b, name, data); err != nil {
		return nil, err
	}
	return []byte(strings.Map(visible, b.String())), nil
}

// visible keeps what does not print, whatever file it came from, out of a page:
// control characters, and those that turn the direction of a line.
func visible(r rune) rune {
	switch {
	case r == '\n' || r == '\t' || r == ' ' || unicode.IsPrint(r):
		return r
	case r == '\r':
		return -1
	case unicode.IsSpace(r):
		return ' '
	}
	return utf8.RuneError
}
