package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/copacker"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

type matchFlags struct {
	outside   bool
	lines     string
	runML     beverage.Given[float64]
	allergens string
}

func matchCommand(con *console.Console) *cobra.Command {
	var o matchFlags
	cmd := &cobra.Command{
		Use:   "match SPEC --lines FILE",
		Short: "On which co-packers' lines nothing is missing on paper",
		Long: `Holds a drink against every line of a file of co-packers' lines: on which of them
nothing is missing on paper, and what is missing on the others, item by item, each
with the key that decides. What a line or the spec does not say counts as
missing. posset help lines lists the keys of the file. The status is 1 where the
acid class is undecided, the drink has a stop, or something is missing on every
line.`,
		Example: "  posset match quince.toml --lines lines.toml\n  posset match quince.toml --lines lines.toml --run \"5000 L\" --format csv --out lines.csv",
		Args:    one,
		RunE:    func(cmd *cobra.Command, specs []string) error { return runMatch(cmd, con, specs[0], o) },
	}
	f := cmd.Flags()
	f.StringVar(&o.lines, "lines", "", "`FILE` of co-packers' lines")
	f.Var(&quantityFlag{at: &o.runML, read: quantity.ParseVolume, kind: "VOLUME"}, "run", "run that is planned, such as \"5000 L\"; unsaid, no line is asked for its least")
	f.StringVar(&o.allergens, "allergens", "", "`LIST` of the allergens of ingredients that the library does not know, with commas, or none")
	bindOutside(cmd, &o.outside)
	return cmd
}

func runMatch(cmd *cobra.Command, con *console.Console, name string, o matchFlags) error {
	switch {
	case o.lines == "":
		return usageError(cmd, "names no file of lines; write --lines lines.toml")
	case o.lines == "-" && name == "-":
		return errors.New("-: standard input can be read only once")
	}
	allergens, err := allergenList(o.allergens)
	if err != nil {
		return usageError(cmd, err.Error())
	}
	if err := notATerminal(cmd, con, []string{o.lines}); err != nil {
		return err
	}
	d, err := readSpec(cmd, con, name, o.outside)
	if err != nil {
		return err
	}
	file, err := copacker.Read(o.lines, con.Input(cmd.Context()))
	if err != nil {
		return err
	}
	con.Reads(o.lines)
	want := copacker.Options{Options: options(), Allergens: allergens}
	if o.runML.Known {
		want.RunML = &o.runML.V
	}
	r, err := copacker.Match(cmd.Context(), d, file, want)
	if err != nil {
		return naming(name, err)
	}
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Match(r, u) }, matchIsOpen(con, r))
}

// matchIsOpen tells that nothing was found, or that the drink itself is open.
func matchIsOpen(con *console.Console, r *copacker.Result) bool {
	whole := slices.ContainsFunc(r.Lines, func(l copacker.LineResult) bool { return l.NothingMissing })
	return !whole || r.Class.Class == beverage.Undecided || len(r.Stops) > 0 || con.Strict && len(r.Reviews) > 0
}

// allergenList reads "celery, mustard"; nothing is an empty list.
func allergenList(text string) ([]string, error) {
	var list []string
	for _, word := range strings.Split(text, ",") {
		known, err := oneOf("--allergens", strings.TrimSpace(word), copacker.Allergens()...)
		if err != nil {
			return nil, err
		}
		if known != "" {
			list = append(list, known)
		}
	}
	return list, nil
}
