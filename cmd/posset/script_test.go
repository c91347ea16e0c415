package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"posset": main})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: os.Getenv("UPDATE") != "",
		Cmds:          map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
		Setup: func(e *testscript.Env) error {
			e.Setenv("LANG", "C.UTF-8")
			return nil
		},
	})
}

// exits runs a program and holds its exit status against the one wanted:
// "exits 1 posset check a.toml". Status 1 and 2 say different things, and
// "! exec" cannot tell them apart.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits STATUS PROGRAM ARG...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	var exit *exec.ExitError
	got := 0
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, wanted %d", got, want)
	}
}

func TestAFaultOfTheProgramIsToldInOneLine(t *testing.T) {
	var stderr lines
	if got := run([]string{"explain"}, nil, panics{}, &stderr); got != 2 {
		t.Errorf("status %d", got)
	}
	want := "posset: a fault of the program, not of your input: no paper; nothing was decided\n"
	if string(stderr) != want {
		t.Errorf("got %q, want %q", stderr, want)
	}
}

type panics struct{}

func (panics) Write([]byte) (int, error) { panic(fmt.Errorf("no paper")) }

type lines []byte

func (l *lines) Write(b []byte) (int, error) {
	*l = append(*l, b...)
	return len(b), nil
}
