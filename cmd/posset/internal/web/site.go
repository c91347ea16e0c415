// Package web is the local page of posset, for who describes a drink in plain
// words, who works on a spec, and who reads records. It answers this machine
// only, fetches nothing from anywhere, and keeps nothing between two requests:
// whatever a page shows went out with the request that asked for it.
package web

import (
	"context"
	"embed"
	"errors"
	"html/template"
	"io"
	"log"
	"net"
	"net/http"
	"os"
	"strconv"
	"sync"
	"time"

	"posset/beverage"
	"posset/beverage/assess"
)

//go:embed templates/*.tmpl
var templates embed.FS

//go:embed assets/page.css assets/page.js assets/mark.svg
var assets embed.FS

// Times after which a request is given up. A large record over the loopback
// takes seconds; whoever sends slower than this holds a place for nothing.
const (
	headerTime   = 10 * time.Second
	transferTime = 2 * time.Minute
	idleTime     = time.Minute
	stopTime     = 400 * time.Millisecond
)

const mostHeaderBytes = 16 << 10

// How many requests may do each kind of work at once; further ones wait.
const (
	mostAssessing = 4
	mostReading   = 2
)

// Site answers the requests of one run.
type Site struct {
	options   assess.Options
	pages     *template.Template
	scratch   string // folder of uploads, for as long as each is read
	assessing gate
	reading   gate
	working   sync.WaitGroup
}

// New makes a site. Close removes what it keeps on disk.
func New(o assess.Options) (*Site, error) {
	pages, err := template.New("").Funcs(template.FuncMap{"plainly": func(r beverage.Route) string { return plainRoutes[r] }}).ParseFS(templates, "templates/*.tmpl")
	if err != nil {
		return nil, err
	}
	scratch, err := os.MkdirTemp("", "posset-serve-*")
	if err != nil {
		return nil, err
	}
	return &Site{options: o, pages: pages, scratch: scratch, assessing: make(gate, mostAssessing), reading: make(gate, mostReading)}, nil
}

// Close removes whatever an upload that was broken off left behind.
func (s *Site) Close() error { return os.RemoveAll(s.scratch) }

// loopback are the only addresses that are listened on.
var loopback = []string{"127.0.0.1", "::1"}

// Listen opens the port on the loopback addresses; port 0 takes a free one. It
// is no error that a machine has only one of the two.
func Listen(port int) ([]net.Listener, error) {
	var open []net.Listener
	var first error
	for _, host := range loopback {
		l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
		if err != nil {
			first = errors.Join(first, err)
			continue
		}
		port = l.Addr().(*net.TCPAddr).Port
		open = append(open, l)
	}
	if len(open) == 0 {
		return nil, first
	}
	return open, nil
}

// Serve answers until ctx ends, then breaks off what is under way.
func (s *Site) Serve(ctx context.Context, listeners []net.Listener) error {
	server := &http.Server{
		Handler: s.Handler(), ReadHeaderTimeout: headerTime, ReadTimeout: transferTime, WriteTimeout: 2 * transferTime,
		IdleTimeout: idleTime, MaxHeaderBytes: mostHeaderBytes,
		BaseContext: func(net.Listener) context.Context { return ctx },
		ErrorLog:    log.New(io.Discard, "", 0), // what a client does wrong is told to the client
	}
	ended := make(chan error, len(listeners))
	for _, l := range listeners {
		go func() { ended <- server.Serve(l) }()
	}
	select {
	case err := <-ended:
		server.Close()
		return err
	case <-ctx.Done():
	}
	return s.stop(server)
}

// stop lets answers that are nearly out go out.
func (s *Site) stop(server *http.Server) error {
	ctx, cancel := context.WithTimeout(context.Background(), stopTime)
	defer cancel()
	err := server.Shutdown(ctx)
	if errors.Is(err, context.DeadlineExceeded) {
		err = server.Close()
	}
	done := make(chan struct{})
	go func() { s.working.Wait(); close(done) }()
	select {
	case <-done:
	case <-ctx.Done():
	}
	return err
}

// gate lets only so many in at once.
type gate chan struct{}

func (g gate) enter(ctx context.Context) error {
	select {
	case g <- struct{}{}:
		return nil
	case <-ctx.Done():
		return &refusal{http.StatusServiceUnavailable, "too much is under way; try again in a moment"}
	}
}

func (g gate) leave() { <-g }
