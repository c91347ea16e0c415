package web

import (
	"context"
	"errors"
	"mime"
	"net/http"
	"strings"
	"time"
)

// answer is a whole response. It is made before any of it is sent, so that a
// fault never leaves half a page.
type answer struct {
	kind string // media type
	name string // of the file to save it as; "" shows it
	body []byte
}

// refusal is a request that nothing can be made of.
type refusal struct {
	status int
	text   string // one line
}

func (r *refusal) Error() string { return r.text }

// faultText is what a fault of the program says, whatever it was.
const faultText = "a fault of the program, not of your input; nothing was decided"

type handler func(r *http.Request) (answer, error)

// within bounds what a request may send and how long it may take.
func (s *Site) within(mostBytes int64, most time.Duration, h handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.working.Add(1)
		defer s.working.Done()
		defer faultTold(w)
		ctx, cancel := context.WithTimeout(r.Context(), most)
		defer cancel()
		r = r.WithContext(ctx)
		r.Body = http.MaxBytesReader(w, r.Body, mostBytes)
		a, err := h(r)
		if err != nil {
			refuse(w, err)
			return
		}
		send(w, a)
	})
}

// faultTold answers a panic. What is sent is sent last and cannot panic, so
// nothing went out before.
func faultTold(w http.ResponseWriter) {
	if recover() != nil {
		tell(w, http.StatusInternalServerError, faultText)
	}
}

func refuse(w http.ResponseWriter, err error) {
	var known *refusal
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		tell(w, http.StatusRequestEntityTooLarge, "that is larger than "+megabytes(large.Limit)+"; send less at once")
	case errors.As(err, &known):
		tell(w, known.status, known.text)
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		tell(w, http.StatusServiceUnavailable, "that took too long and was broken off; send less at once")
	default:
		tell(w, http.StatusInternalServerError, faultText)
	}
}

func tell(w http.ResponseWriter, status int, line string) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Del("Content-Disposition")
	w.WriteHeader(status)
	w.Write([]byte(line + "\n"))
}

func send(w http.ResponseWriter, a answer) {
	w.Header().Set("Content-Type", a.kind)
	if a.name != "" {
		w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": a.name}))
	}
	w.Write(a.body)
}

const longestFileName = 60 // letters

// fileName makes a name for a download out of a drink's: small Latin letters,
// digits and dashes, which every system can save.
func fileName(drink, ending string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(drink) {
		switch {
		case b.Len() >= longestFileName:
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	base := strings.TrimSuffix(b.String(), "-")
	if base == "" {
		base = "drink"
	}
	return base + ending
}

// asRefusal is a body that cannot be read, told as the sender's mistake.
func asRefusal(err error) error {
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		return err
	}
	return &refusal{http.StatusBadRequest, "what was sent cannot be read as a form"}
}
