package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

func proteinCommand(con *console.Console) *cobra.Command {
	var outside bool
	var over string
	var hold beverage.Given[float64]
	cmd := &cobra.Command{
		Use:   "protein SPEC",
		Short: "Charge, heat damage and stability of one drink's protein",
		Long: `The protein of a drink: its charge over pH, what heat has done to it, what may
become of it, and what a serving holds. --map adds what the findings say at every
pH and temperature of the hold, or at every pH and content of protein.`,
		Example: "  posset protein quince.toml\n  posset protein quince.toml --map ph,temperature --format html --out quince.html",
		Args:    one,
		RunE: func(cmd *cobra.Command, specs []string) error {
			if _, ok := mapsOver[over]; over != "" && !ok {
				return usageError(cmd, fmt.Sprintf("--map: %q is no map; write ph,temperature or ph,concentration", over))
			}
			if hold.Known && mapsOver[over] != assess.MapTemperature {
				return usageError(cmd, "--hold-time goes with --map ph,temperature")
			}
			d, err := readSpec(cmd, con, specs[0], outside)
			if err != nil {
				return err
			}
			r, err := assess.Protein(cmd.Context(), d, pictured(con))
			if err == nil && over != "" {
				r.Map, err = assess.ProteinMap(cmd.Context(), d, mapsOver[over], hold)
			}
			if err != nil {
				return naming(specs[0], err)
			}
			return emitOne(con, r, func(u report.Units) report.Doc { return report.Protein(r, u) }, isOpen(con, flagged(r.Flags)))
		},
	}
	cmd.Flags().StringVar(&over, "map", "", "the findings at every place over `ph,temperature`, or over ph,concentration")
	cmd.Flags().Var(&quantityFlag{at: &hold, read: quantity.ParseDuration, kind: "TIME"}, "hold-time", "hold of that map, such as \"15 s\", in place of the stated one")
	bindOutside(cmd, &outside)
	return cmd
}

// mapsOver are the maps that can be asked for.
var mapsOver = map[string]assess.MapOver{"ph,temperature": assess.MapTemperature, "ph,concentration": assess.MapConcentration}

// flagged are flags as findings, for their levels.
func flagged(flags []beverage.ProteinFlag) []beverage.Finding {
	fs := make([]beverage.Finding, len(flags))
	for i, f := range flags {
		fs[i] = beverage.Finding{ID: f.ID, Level: f.Level}
	}
	return fs
}
