//go:build !windows

package console

import (
	"errors"
	"syscall"
)

// isClosedPipe tells that the reader of a stream has gone.
func isClosedPipe(err error) bool { return errors.Is(err, syscall.EPIPE) }
