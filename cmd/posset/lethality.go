package main

import (
	"context"
	"fmt"
	"runtime"
	"sync/atomic"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
	"posset/cmd/posset/internal/inputs"
)

func lethalityCommand(con *console.Console) *cobra.Command {
	var o lethalityFlags
	cmd := &cobra.Command{
		Use:   "lethality LOG...",
		Short: "Lethality of time-temperature logs",
		Long: `Reads recorders' files (csv and its kin, xlsx), finds the faults of the record,
and credits lethality from it: what is left after the sensor's tolerance and
every fault are counted against the process. Folders are walked; - is standard
input. Without a target nothing is judged and the status is 0.`,
		Example: "  posset lethality run-1.csv --tref 121.1C --z 10C --target \"6 min\"\n  posset lethality logs/ --target \"15 PU\" --format csv\n" +
			"  posset lethality run-1.csv --role \"Can 1=product\" --role \"Retort=retort\" --organism \"Alicyclobacillus acidoterrestris\"\n" +
			"  posset lethality run-1.csv --target \"F0 6 min\" --limit \"retort temperature >= 121.1 C\"",
		RunE: func(cmd *cobra.Command, names []string) error { return runLethality(cmd, con, names, &o) },
	}
	o.bind(cmd.Flags())
	return cmd
}

func runLethality(cmd *cobra.Command, con *console.Console, names []string, o *lethalityFlags) error {
	found, err := o.logs(cmd, con, names)
	if err != nil {
		return err
	}
	want, err := o.options()
	if err != nil {
		return usageError(cmd, err.Error())
	}
	want.Options = pictured(con)
	reader, err := assess.NewLogReader(want)
	if err != nil {
		return usageError(cmd, err.Error())
	}
	if err := o.evidenceFits(cmd, found.Files); err != nil {
		return err
	}
	defer spareMemory(found.Files)()
	logs, err := readLogs(cmd.Context(), con, reader, found.Files)
	if err != nil {
		return err
	}
	if o.evidence != "" && logs[0].err == nil {
		if err := writeEvidence(cmd.Context(), con, reader, found.Files[0], o.evidence, &logs[0].result); err != nil {
			return err
		}
	}
	return emitLogs(con, reader, found, logs)
}

// logs finds the logs that were named, on the command line and in a list.
func (o *lethalityFlags) logs(cmd *cobra.Command, con *console.Console, names []string) (inputs.Found, error) {
	if o.filesFrom != "" {
		if err := notATerminal(cmd, con, []string{o.filesFrom}); err != nil {
			return inputs.Found{}, err
		}
		listed, err := inputs.List(o.filesFrom, con.Input(cmd.Context()))
		if err != nil {
			return inputs.Found{}, err
		}
		con.Reads(o.filesFrom)
		names = append(names, listed...)
	}
	if len(names) == 0 {
		return inputs.Found{}, usageError(cmd, "names no log; write "+cmd.CommandPath()+" run-1.csv")
	}
	found := inputs.Find(names, inputs.IsLog, "no file named like a log (.csv, .tsv, .txt, .log, .xlsx)")
	found.Many = found.Many || o.filesFrom != ""
	return found, notATerminal(cmd, con, found.Files)
}

// readLog is what became of one log.
type readLog struct {
	result beverage.LogResult
	err    error
}

// readLogs reads several logs at a time; the answers keep their order.
func readLogs(ctx context.Context, con *console.Console, reader *assess.LogReader, files []string) ([]readLog, error) {
	con.Reads(files...)
	logs := make([]readLog, len(files))
	progress := con.Progress(len(files), "logs")
	defer progress.End()
	g, ctx := errgroup.WithContext(ctx)
	var taken atomic.Int64
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		g.Go(func() error {
			for i := taken.Add(1) - 1; i < int64(len(files)) && ctx.Err() == nil; i = taken.Add(1) - 1 {
				logs[i] = readOneLog(ctx, con, reader, files[i])
				progress.Done()
			}
			return ctx.Err()
		})
	}
	return logs, g.Wait()
}

// readOneLog keeps a fault of the program to the log that brought it out.
func readOneLog(ctx context.Context, con *console.Console, reader *assess.LogReader, file string) (l readLog) {
	defer func() {
		if p := recover(); p != nil {
			l = readLog{err: fmt.Errorf("%s: a fault of the program, not of your input: %v; nothing was decided", file, p)}
		}
		if l.err != nil {
			l.result = assess.Failed(file, l.err)
		}
	}()
	if file == "-" {
		l.result, l.err = readPiped(ctx, con.Input(ctx), reader)
		return l
	}
	l.result, l.err = reader.Read(ctx, file)
	return l
}

// emitLogs writes the logs under one head, or with ndjson one a line. One log
// that is unusable gives nothing; among many it carries its error.
func emitLogs(con *console.Console, reader *assess.LogReader, found inputs.Found, logs []readLog) error {
	errs := found.Errs
	results := make([]beverage.LogResult, 0, len(logs))
	sound, open := 0, false
	for _, l := range logs {
		results = append(results, l.result)
		if l.err != nil {
			errs = append(errs, l.err)
			continue
		}
		sound++
		open = open || len(l.result.Departures) > 0 || l.result.Outcome != nil && *l.result.Outcome != beverage.Meets
	}
	if sound == 0 {
		return console.Refuse(errs...)
	}
	return emitSound(con, false, logResults(con, reader, results), errs, open)
}

func logResults(con *console.Console, reader *assess.LogReader, logs []beverage.LogResult) []console.Result {
	groups := [][]beverage.LogResult{logs}
	if con.Format == console.NDJSON {
		groups = nil
		for i := range logs {
			groups = append(groups, logs[i:i+1])
		}
	}
	var out []console.Result
	for _, g := range groups {
		r := reader.Result(g)
		out = append(out, console.Result{Value: r, Doc: func(u report.Units) report.Doc { return report.Lethality(r, u) }})
	}
	return out
}
