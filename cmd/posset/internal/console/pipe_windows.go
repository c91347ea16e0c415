package console

import (
	"errors"
	"syscall"
)

// ERROR_BROKEN_PIPE and ERROR_NO_DATA of the system error codes.
const (
	brokenPipe = syscall.Errno(109)
	noData     = syscall.Errno(232)
)

// isClosedPipe tells that the reader of a stream has gone.
func isClosedPipe(err error) bool { return errors.Is(err, brokenPipe) || errors.Is(err, noData) }
