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

	"posset/cmd/posset/internal/console"
)

func main() {
	signal.Ignore(syscall.SIGPIPE) // a closed pipe then is a failed write, which is no error
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the whole program; the exit status is decided here and nowhere else.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) (status int) {
	con := console.New(stdin, stdout, stderr)
	defer func() {
		if p := recover(); p != nil {
			con.Say(fmt.Sprintf("posset: a fault of the program, not of your input: %v; nothing was decided", p))
			status = console.StatusUnusable
		}
	}()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	root := newRoot(con)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err != nil && ctx.Err() != nil {
		err = ctx.Err() // whatever the interrupt broke off
	}
	con.Tell(err)
	return console.Status(err)
}
