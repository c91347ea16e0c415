package main

import (
	"slices"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/report"
	"posset/beverage/sweep"
	"posset/cmd/posset/internal/console"
)

// usualSteps is how many values of each input are tried unless told.
const usualSteps = 13

type sweepFlags struct {
	outside bool
	vary    []string
	steps   int
}

func sweepCommand(con *console.Console) *cobra.Command {
	var o sweepFlags
	cmd := &cobra.Command{
		Use:   "sweep SPEC --vary KEY=FROM..TO",
		Short: "How class, findings and routes move over one or two inputs",
		Long: `Assesses a drink at many values of one or two of its inputs: a key of the spec
such as measured.ph, or an ingredient of the recipe by its name. It tells first
where anything changes, then the points. Readings of the drink are left out where
its recipe is varied. csv and json hold everything at every point. The status is 1
where any point has a stop or an undecided class.`,
		Example: "  posset sweep quince.toml --vary measured.ph=2.8..4.6\n  posset sweep quince.toml --vary measured.ph=2.8..4.6 --vary \"whey protein isolate, acidified=20..120 g/L\" --format csv",
		Args:    one,
		RunE:    func(cmd *cobra.Command, specs []string) error { return runSweep(cmd, con, specs[0], o) },
	}
	f := cmd.Flags()
	f.StringArrayVar(&o.vary, "vary", nil, "`KEY=FROM..TO` to vary, once or twice")
	f.IntVar(&o.steps, "steps", usualSteps, "values of each input, ends included")
	bindOutside(cmd, &o.outside)
	return cmd
}

func runSweep(cmd *cobra.Command, con *console.Console, name string, o sweepFlags) error {
	switch {
	case len(o.vary) == 0:
		return usageError(cmd, "varies nothing; write --vary measured.ph=2.8..4.6")
	case len(o.vary) > sweep.MostInputs:
		return usageError(cmd, "varies two inputs at most")
	}
	points, err := sweep.Points(len(o.vary), o.steps)
	if err != nil {
		return usageError(cmd, "--steps: "+err.Error())
	}
	d, err := readSpec(cmd, con, name, o.outside)
	if err != nil {
		return err
	}
	varied, err := variedOf(cmd, d, o.vary)
	if err != nil {
		return err
	}
	progress := con.Progress(points, "points")
	defer progress.End()
	r, err := sweep.Run(cmd.Context(), d, varied, sweep.Options{Options: options(), Steps: o.steps, Done: progress.Done})
	switch {
	case err != nil && cmd.Context().Err() != nil:
		return err
	case err != nil:
		return naming(name, err)
	}
	progress.End()
	return emitOne(con, r, func(u report.Units) report.Doc { return report.Sweep(r, u) }, sweepIsOpen(con, r))
}

// variedOf reads every --vary; all that is wrong with them is told at once.
func variedOf(cmd *cobra.Command, d *beverage.Drink, texts []string) ([]sweep.Varied, error) {
	var varied []sweep.Varied
	var errs []error
	for _, text := range texts {
		v, err := sweep.Parse(d, text)
		switch {
		case err != nil:
			errs = append(errs, usageError(cmd, "--vary: "+err.Error()))
		case slices.ContainsFunc(varied, func(w sweep.Varied) bool { return w.Key == v.Key }):
			errs = append(errs, usageError(cmd, "--vary: "+v.Key+" is varied twice"))
		}
		varied = append(varied, v)
	}
	return varied, console.Refuse(errs...)
}

func sweepIsOpen(con *console.Console, r *sweep.Result) bool {
	return slices.ContainsFunc(r.Points, func(p sweep.Point) bool {
		return p.Class == beverage.Undecided || len(p.Stops) > 0 || con.Strict && len(p.Reviews) > 0
	})
}
