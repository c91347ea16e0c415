package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/console"
)

// one wants exactly one spec.
func one(cmd *cobra.Command, args []string) error {
	if len(args) == 1 {
		return nil
	}
	if len(args) == 0 {
		return usageError(cmd, "names no spec; write "+cmd.CommandPath()+" quince.toml")
	}
	return usageError(cmd, "takes one spec; posset check takes many")
}

// readSpec reads the one spec of a command.
func readSpec(cmd *cobra.Command, con *console.Console, name string, outside bool) (*beverage.Drink, error) {
	if err := notATerminal(cmd, con, []string{name}); err != nil {
		return nil, err
	}
	d, err := spec.Read(name, spec.Options{Stdin: con.Input(cmd.Context()), AllowOutside: outside})
	if err != nil {
		return nil, err
	}
	con.Reads(filesOf(d)...)
	return d, nil
}

// naming makes sure that every line of an error names the file.
func naming(file string, err error) error {
	lines := strings.Split(err.Error(), "\n")
	for i, l := range lines {
		if !strings.HasPrefix(l, file) {
			lines[i] = file + ": " + l
		}
	}
	return errors.New(strings.Join(lines, "\n"))
}

// emitOne writes one result; open tells that something in it is.
func emitOne(con *console.Console, value any, doc func(report.Units) report.Doc, open bool) error {
	if err := con.Emit(false, console.Result{Value: value, Doc: doc}); err != nil {
		return err
	}
	if open {
		return console.ErrOpen
	}
	return nil
}

// isOpen tells whether findings keep the status from 0.
func isOpen(con *console.Console, fs []beverage.Finding) bool {
	o := report.Count(fs)
	return o.Stops > 0 || con.Strict && o.Reviews > 0
}
