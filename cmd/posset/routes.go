package main

import (
	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

func routesCommand(con *console.Console) *cobra.Command {
	var outside bool
	cmd := &cobra.Command{
		Use:   "routes SPEC",
		Short: "Every process route, whether it is ruled out, and why",
		Long: `Holds a drink against every process route: what the route would need, whether it
is ruled out, and why. The status is 1 where the acid class is undecided or the
route of the spec is ruled out or cannot be told.`,
		Example: "  posset routes quince.toml\n  posset routes quince.toml --format json",
		Args:    one,
		RunE: func(cmd *cobra.Command, specs []string) error {
			d, err := readSpec(cmd, con, specs[0], outside)
			if err != nil {
				return err
			}
			r, err := assess.Routes(cmd.Context(), d, options())
			if err != nil {
				return naming(specs[0], err)
			}
			open := r.Class.Class == beverage.Undecided || routeIsOpen(r.Routes, d.Process.Route)
			return emitOne(con, r, func(u report.Units) report.Doc { return report.Routes(r, u) }, open)
		},
	}
	bindOutside(cmd, &outside)
	return cmd
}

// routeIsOpen tells that the route stated is not among those left.
func routeIsOpen(rs []beverage.RouteResult, stated beverage.Given[beverage.Route]) bool {
	for _, r := range rs {
		if stated.Known && r.Route == stated.V {
			return r.Outcome != beverage.Fits
		}
	}
	return false
}
