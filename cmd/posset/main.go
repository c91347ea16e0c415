// Command posset checks the process safety and stability of a drink from its
// spec file and the records of its process.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	"posset/cmd/posset/internal/console"
)

func main() {
	signal.Ignore(syscall.SIGPIPE) // a closed pipe then is a failed write, which is no error
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the whole program; the exit status is decided here and nowhere else.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	con := console.New(stdin, stdout, stderr)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	done := make(chan error, 1)
	go func() { done <- execute(ctx, con, args) }()
	err := outcome(ctx, done)
	con.Tell(err)
	return console.Status(err)
}

// execute runs one command. A fault of the program becomes an error of one line.
func execute(ctx context.Context, con *console.Console, args []string) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("posset: a fault of the program, not of your input: %v; nothing was decided", p)
		}
	}()
	root := newRoot(con)
	root.SetArgs(args)
	return root.ExecuteContext(ctx)
}

// grace is how long a command may take to end cleanly once it is interrupted;
// one that waits for a file that nobody writes to never would.
const grace = time.Second

// outcome waits for the command. Whatever an interrupt broke off, the
// interrupt is what is told.
func outcome(ctx context.Context, done <-chan error) error {
	select {
	case err := <-done:
		if err != nil && ctx.Err() != nil {
			return ctx.Err()
		}
		return err
	case <-ctx.Done():
	}
	select {
	case err := <-done:
		if err == nil {
			return nil
		}
	case <-time.After(grace):
	}
	return ctx.Err()
}
