package console

import (
	"context"
	"errors"
	"strings"
)

// The exit statuses.
const (
	StatusDone     = 0 // decided, nothing at stop, every target met
	StatusOpen     = 1 // a stop, a target not met, an undecided class
	StatusUnusable = 2 // unusable input or usage
)

// ErrOpen ends a run whose result tells by itself what is open.
var ErrOpen = errors.New("something is open")

// Unusable is input or usage that nothing can be made of, one line a problem.
type Unusable struct{ Lines []string }

// Error is the lines, one below the other.
func (u *Unusable) Error() string { return strings.Join(u.Lines, "\n") }

// Refuse makes errors into one, a line each; nil where there are none.
func Refuse(errs ...error) error {
	var u Unusable
	for _, err := range errs {
		if err != nil {
			u.Lines = append(u.Lines, strings.Split(err.Error(), "\n")...)
		}
	}
	if len(u.Lines) == 0 {
		return nil
	}
	return &u
}

// Status is the exit status that an error stands for. A closed pipe is none.
func Status(err error) int {
	switch {
	case err == nil, isClosedPipe(err):
		return StatusDone
	case errors.Is(err, ErrOpen):
		return StatusOpen
	}
	return StatusUnusable
}

const (
	mostErrorLines   = 100 // of many inputs; one input tells at most eleven
	longestErrorLine = 900 // bytes
)

// Tell writes what ended a run to the error stream, a line a problem.
func (c *Console) Tell(err error) {
	if Status(err) != StatusUnusable {
		return
	}
	if errors.Is(err, context.Canceled) {
		c.Say("posset: interrupted; nothing was written")
		return
	}
	lines := strings.Split(err.Error(), "\n")
	for _, l := range lines[:min(len(lines), mostErrorLines)] {
		c.Say(l)
	}
	if more := len(lines) - mostErrorLines; more > 0 {
		c.Sayf("posset: and %d more problems", more)
	}
}
