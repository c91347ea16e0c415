package main

import (
	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

func briefCommand(con *console.Console) *cobra.Command {
	var outside bool
	var disclose string
	cmd := &cobra.Command{
		Use:   "brief SPEC",
		Short: "The brief for a co-packer and a process authority",
		Long: `Writes what a co-packer and a process authority need to know of a drink: figures
with their basis, critical factors, what is missing and the test that settles it,
questions to each, and the fields of the filings. --disclose says how much of the
formula it tells.`,
		Example: "  posset brief quince.toml\n  posset brief quince.toml --disclose classes --format html --out brief.html",
		Args:    one,
		RunE: func(cmd *cobra.Command, specs []string) error {
			how, err := oneOf("--disclose", disclose, "full", "classes", "none")
			if err != nil {
				return usageError(cmd, err.Error())
			}
			d, err := readSpec(cmd, con, specs[0], outside)
			if err != nil {
				return err
			}
			b, err := assess.MakeBrief(cmd.Context(), d, how, options())
			if err != nil {
				return naming(specs[0], err)
			}
			open := b.Class.Class == beverage.Undecided || isOpen(con, b.Findings)
			return emitOne(con, b, func(u report.Units) report.Doc { return report.Brief(b, u) }, open)
		},
	}
	cmd.Flags().StringVar(&disclose, "disclose", "full", "how much of the formula is told: `full|classes|none`")
	bindOutside(cmd, &outside)
	return cmd
}
