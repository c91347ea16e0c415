package main

import (
	"context"
	"runtime"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/quantity"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
	"posset/cmd/posset/internal/inputs"
)

type heatingFlags struct {
	medium, target, unit, dates, sheet               string
	retortC, initialC, coolingC, comeUpS, toleranceC beverage.Given[float64]
	roles                                            []string
}

func heatingCommand(con *console.Console) *cobra.Command {
	var o heatingFlags
	cmd := &cobra.Command{
		Use:   "heating LOG...",
		Short: "Heating and cooling factors, and process time, from heat-penetration logs",
		Long: `Reads the records of heat-penetration tests, the medium in one column and a
container in each of the others, and finds fh, jh, fc and jc with the straight
part they were read from. From them the process time for a target, by Ball's
formula and by the general method moved to the retort and initial temperature
asked for; both are shown with their difference, and the longer one counts.`,
		Example: "  posset heating test-1.csv --medium \"Retort\" --retort-temperature 121.1C --initial-temperature 60C --target \"F0 6 min\"\n" +
			"  posset heating tests/ --retort-temperature 118C --initial-temperature 55C --cooling-temperature 18C --come-up \"8 min\" --target \"F0 6 min\" --format csv",
		RunE: func(cmd *cobra.Command, logs []string) error { return runHeating(cmd, con, logs, &o) },
	}
	f := cmd.Flags()
	f.StringVar(&o.medium, "medium", "", "`COLUMN` that shows the heating medium, by its heading")
	f.Var(&quantityFlag{at: &o.retortC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "retort-temperature", "lowest that will be held")
	f.Var(&quantityFlag{at: &o.initialC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "initial-temperature", "lowest that the product will have at steam on")
	f.StringVar(&o.target, "target", "", "`TARGET`: \"F0 6 min\", \"F 12 min at 93.3 C, z 8.9 C\", \"15 PU\", \"5 log NAME\"")
	f.Var(&quantityFlag{at: &o.coolingC, read: quantity.ParseTemperature, kind: "TEMPERATURE"}, "cooling-temperature", "coldest of the cooling medium (0 C unless said)")
	f.Var(&quantityFlag{at: &o.comeUpS, read: quantity.ParseDuration, kind: "TIME"}, "come-up", "shortest come-up of the plant (no credit unless said)")
	f.Var(&quantityFlag{at: &o.toleranceC, read: quantity.ParseTemperatureDifference, kind: "DIFFERENCE"}, "tolerance", "of the thermometers, taken off both temperatures (0.5 C unless said)")
	f.StringVar(&o.unit, "unit", "", "`C|F|K` of the readings, where the log does not tell")
	f.StringVar(&o.dates, "dates", "", "`dmy|mdy|ymd`: order of the dates, where the log does not tell")
	f.StringVar(&o.sheet, "sheet", "", "`SHEET` of a workbook")
	f.StringArrayVar(&o.roles, "role", nil, "`HEADING=ROLE` of a column: product, retort, reference, other or ignore; repeatable")
	return cmd
}

func runHeating(cmd *cobra.Command, con *console.Console, names []string, o *heatingFlags) error {
	want, err := o.options(cmd)
	if err != nil {
		return err
	}
	if len(names) == 0 {
		return usageError(cmd, "names no log; write "+cmd.CommandPath()+" test-1.csv")
	}
	found := inputs.Find(names, inputs.IsLog, "no file named like a log (.csv, .tsv, .txt, .log, .xlsx)")
	records, err := readHeating(cmd.Context(), con, want, found.Files)
	if err != nil {
		return err
	}
	r, errs := assess.Heating(want, records)
	errs = append(found.Errs, errs...)
	if r == nil {
		return console.Refuse(errs...)
	}
	doc := func(u report.Units) report.Doc { return report.Heating(r, u) }
	return emitSound(con, false, []console.Result{{Value: r, Doc: doc}}, errs, false)
}

func readHeating(ctx context.Context, con *console.Console, want assess.HeatingOptions, files []string) ([]assess.HeatingRecord, error) {
	con.Reads(files...)
	records := make([]assess.HeatingRecord, len(files))
	progress := con.Progress(len(files), "logs")
	defer progress.End()
	g, ctx := errgroup.WithContext(ctx)
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		g.Go(func() error {
			defer progress.Done()
			records[i] = want.ReadHeating(ctx, file)
			return ctx.Err()
		})
	}
	return records, g.Wait()
}

// options is what was asked, held against what can be.
func (o *heatingFlags) options(cmd *cobra.Command) (assess.HeatingOptions, error) {
	want := assess.HeatingOptions{Options: options(), RetortC: o.retortC.V, InitialC: o.initialC.V, CoolingC: o.coolingC, ComeUpS: o.comeUpS,
		ToleranceC: o.toleranceC.Or(usualToleranceC), Medium: o.medium, Sheet: o.sheet}
	switch {
	case !o.retortC.Known:
		return want, usageError(cmd, "needs --retort-temperature, such as --retort-temperature 121.1C")
	case !o.initialC.Known:
		return want, usageError(cmd, "needs --initial-temperature, such as --initial-temperature 60C")
	case o.target == "":
		return want, usageError(cmd, `needs --target, such as --target "F0 6 min"`)
	case want.ToleranceC < 0:
		return want, usageError(cmd, "--tolerance: a tolerance is not negative; write 0.5C")
	}
	var err error
	none := beverage.Given[float64]{}
	if want.Target, err = targetAt(o.target, none, none); err != nil {
		return want, usageError(cmd, err.Error())
	}
	if want.Unit, err = oneOf("--unit", strings.ToUpper(o.unit), "C", "F", "K"); err != nil {
		return want, usageError(cmd, err.Error())
	}
	if want.Dates, err = oneOf("--dates", strings.ToLower(o.dates), "dmy", "mdy", "ymd"); err != nil {
		return want, usageError(cmd, err.Error())
	}
	if want.Roles, err = rolesOf(o.roles); err != nil {
		return want, usageError(cmd, err.Error())
	}
	return want, nil
}
