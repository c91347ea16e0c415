package main

import (
	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

func proteinCommand(con *console.Console) *cobra.Command {
	var outside bool
	cmd := &cobra.Command{
		Use:   "protein SPEC",
		Short: "Charge, heat damage and stability of one drink's protein",
		Long: `The protein of a drink: its charge over pH, what heat has done to it, what may
become of it, and what a serving holds.`,
		Example: "  posset protein quince.toml\n  posset protein quince.toml --format csv",
		Args:    one,
		RunE: func(cmd *cobra.Command, specs []string) error {
			d, err := readSpec(cmd, con, specs[0], outside)
			if err != nil {
				return err
			}
			r, err := assess.Protein(cmd.Context(), d, pictured(con))
			if err != nil {
				return naming(specs[0], err)
			}
			return emitOne(con, r, func(u report.Units) report.Doc { return report.Protein(r, u) }, isOpen(con, flagged(r.Flags)))
		},
	}
	bindOutside(cmd, &outside)
	return cmd
}

// flagged are flags as findings, for their levels.
func flagged(flags []beverage.ProteinFlag) []beverage.Finding {
	fs := make([]beverage.Finding, len(flags))
	for i, f := range flags {
		fs[i] = beverage.Finding{ID: f.ID, Level: f.Level}
	}
	return fs
}
