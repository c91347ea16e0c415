package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"posset/beverage/quantity"
	"posset/cmd/posset/internal/console"
)

func newRoot(con *console.Console) *cobra.Command {
	root := &cobra.Command{
		Use:   "posset",
		Short: "Process safety and stability of ready-to-drink beverages",
		Long: `Checks a drink from its spec file and the records of its process: what class it
is in, what process it needs, what stops it, what a qualified person must look
at. It says what is known and what is missing; a process authority decides.`,
		Example: "  posset check quince.toml\n  posset lethality run-1.csv --target \"F0 6 min\"\n  posset explain ph-above-limit",
		Version: version,
		Args:    cobra.ArbitraryArgs,
		RunE:    rootOnly,
		PersistentPreRun: func(cmd *cobra.Command, _ []string) {
			if !cmd.Flags().Changed("format") {
				con.FormatByName()
			}
		},
		SilenceErrors:     true,
		SilenceUsage:      true,
		DisableAutoGenTag: true,
	}
	root.SetIn(con.In)
	root.SetOut(con.Out)
	root.SetErr(con.Err)
	root.SetVersionTemplate(versionLine() + "\n")
	root.SetUsageTemplate(usageTemplate)
	root.SetHelpTemplate(helpTemplate)
	root.SetFlagErrorFunc(flagError)
	cobra.MousetrapHelpText = "posset is run from a terminal: open one in this folder, then type: posset check YOUR-SPEC.toml\n"
	bindOutput(root, con)
	root.AddCommand(commands(con)...)
	root.AddCommand(topics()...)
	bindCompletion(root)
	return root
}

// commands lists every command in the order of the help.
func commands(con *console.Console) []*cobra.Command {
	return []*cobra.Command{
		checkCommand(con),
		acidCommand(con),
		lethalityCommand(con),
		carbonationCommand(con),
		heatingCommand(con),
		holdCommand(con),
		proteinCommand(con),
		routesCommand(con),
		matchCommand(con),
		briefCommand(con),
		sweepCommand(con),
		compareCommand(con),
		newCommand(con),
		ingredientsCommand(con),
		explainCommand(con),
		verifyCommand(con),
		serveCommand(con),
		completionCommand(con),
		manCommand(con),
	}
}

// bindOutput gives every command the flags of its output.
func bindOutput(root *cobra.Command, con *console.Console) {
	f := root.PersistentFlags()
	f.SortFlags = false
	f.Var(con.FormatFlag(), "format", "form of the result; unsaid, the ending of --out tells")
	f.StringVar(&con.Path, "out", "", "`FILE` to write to, whole or not at all")
	f.Var(con.UnitsFlag(), "units", "units of text, csv and html; json keeps its own")
	f.BoolVar(&con.Strict, "strict", false, "a finding at review also gives exit status 1")
	f.Var(con.ColourFlag(), "color", "colour of text")
	f.BoolVar(&con.Quiet, "quiet", false, "no progress on standard error")
}

// rootOnly is posset without a command it knows.
func rootOnly(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return cmd.Help()
	}
	var names []string
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() || c.IsAdditionalHelpTopicCommand() {
			names = append(names, c.Name())
		}
	}
	return usageError(cmd, fmt.Sprintf("%s is no command%s", quantity.Quote(args[0]), offer(quantity.Nearest(args[0], names))))
}

// offer ends an error with what was likely meant.
func offer(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return "; did you mean " + quantity.Either(near) + "?"
}

// usageError is a misuse of a command, with where to read on.
func usageError(cmd *cobra.Command, text string) error {
	return errors.New(cmd.CommandPath() + ": " + text + "; see " + cmd.CommandPath() + " --help")
}

// flagError puts what the flag parser says into one line, with the flag that
// was likely meant or what its value may be.
func flagError(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		name := "--" + unknown.GetSpecifiedName()
		return usageError(cmd, quantity.Quote(name)+" is no flag of this command"+offer(quantity.Nearest(name, flagNames(cmd))))
	case errors.As(err, &invalid):
		return usageError(cmd, "--"+invalid.GetFlag().Name+": "+invalid.Unwrap().Error())
	}
	return usageError(cmd, err.Error())
}

func flagNames(cmd *cobra.Command) []string {
	var names []string
	add := func(f *pflag.Flag) { names = append(names, "--"+f.Name) }
	cmd.LocalFlags().VisitAll(add)
	cmd.InheritedFlags().VisitAll(add)
	return names
}
