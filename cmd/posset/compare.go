package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/console"
)

func compareCommand(con *console.Console) *cobra.Command {
	var outside bool
	cmd := &cobra.Command{
		Use:   "compare SPEC SPEC",
		Short: "What changed between two drinks, and what that changed",
		Long: `Holds two specs against each other: which keys were added, removed or changed, and
what that changed in the assessment: class, figures, routes, findings gained and
lost. The status is that of the second drink under posset check.`,
		Example: "  posset compare quince-1.toml quince-2.toml\n  posset compare quince-1.toml quince-2.toml --format json",
		Args:    two,
		RunE:    func(cmd *cobra.Command, specs []string) error { return runCompare(cmd, con, specs, outside) },
	}
	bindOutside(cmd, &outside)
	return cmd
}

// two wants exactly two specs.
func two(cmd *cobra.Command, args []string) error {
	if len(args) != 2 {
		return usageError(cmd, fmt.Sprintf("takes two specs, and %d were given; write %s before.toml after.toml", len(args), cmd.CommandPath()))
	}
	if args[0] == "-" && args[1] == "-" {
		return errors.New("-: standard input can be read only once")
	}
	return nil
}

func runCompare(cmd *cobra.Command, con *console.Console, names []string, outside bool) error {
	if err := notATerminal(cmd, con, names); err != nil {
		return err
	}
	var sides [2]assess.Side
	var errs []error
	for i, name := range names {
		d, written, err := spec.ReadWritten(name, spec.Options{Stdin: con.Input(cmd.Context()), AllowOutside: outside})
		if err != nil {
			errs = append(errs, err)
			continue
		}
		con.Reads(filesOf(d)...)
		sides[i] = assess.Side{Drink: d, Written: written}
	}
	if err := console.Refuse(errs...); err != nil {
		return err
	}
	c, err := assess.Compare(cmd.Context(), sides[0], sides[1], options())
	if err != nil {
		return err
	}
	open := c.After.Status != console.StatusDone || con.Strict && c.After.Reviews > 0
	return emitOne(con, c, func(u report.Units) report.Doc { return report.Compare(c, u) }, open)
}
