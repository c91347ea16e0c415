package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"runtime"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/beverage/spec"
	"posset/cmd/posset/internal/console"
	"posset/cmd/posset/internal/inputs"
)

func checkCommand(con *console.Console) *cobra.Command {
	var outside bool
	cmd := &cobra.Command{
		Use:   "check SPEC...",
		Short: "The whole assessment of one or many drinks",
		Long: `Assesses drinks from their spec files: the acid class, what process the drink
needs, what stops it, what a qualified person must look at, with the figures
behind it. Folders are walked for files with a [drink] table; - is standard
input.`,
		Example: "  posset check quince.toml\n  posset check drinks/ --format csv --out drinks.csv\n  posset check quince.toml --format html --out quince.html",
		Args:    some("spec", "quince.toml"),
		RunE: func(cmd *cobra.Command, specs []string) error {
			return runCheck(cmd, con, specs, outside)
		},
	}
	bindOutside(cmd, &outside)
	return cmd
}

// bindOutside is the flag of every command that reads a spec.
func bindOutside(cmd *cobra.Command, outside *bool) {
	cmd.Flags().BoolVar(outside, "allow-outside", false, "records and ingredient files may lie outside the spec's folder")
}

func runCheck(cmd *cobra.Command, con *console.Console, names []string, outside bool) error {
	found := inputs.Find(names, spec.HasDrinkTable, "no file with a [drink] table")
	if err := notATerminal(cmd, con, found.Files); err != nil {
		return err
	}
	done, err := assessAll(cmd.Context(), con, found.Files, spec.Options{Stdin: con.Input(cmd.Context()), AllowOutside: outside})
	if err != nil {
		return err
	}
	errs := found.Errs
	var results []console.Result
	open := false
	for _, d := range done {
		con.Reads(d.read...)
		if d.err != nil {
			errs = append(errs, d.err)
			continue
		}
		open = open || assess.ExitStatus(d.assessment, con.Strict) != console.StatusDone
		results = append(results, assessmentResult(d.assessment))
	}
	return emitSound(con, found.Many, results, errs, open)
}

// emitSound writes what could be made, and says what could not.
func emitSound(con *console.Console, many bool, results []console.Result, errs []error, open bool) error {
	if err := con.Emit(many, results...); err != nil {
		return err
	}
	if err := console.Refuse(errs...); err != nil {
		return err
	}
	if open {
		return console.ErrOpen
	}
	return nil
}

func assessmentResult(a *beverage.Assessment) console.Result {
	return console.Result{Value: a, Doc: func(u report.Units) report.Doc { return report.Assessment(a, u) }}
}

// assessed is what became of one spec.
type assessed struct {
	assessment *beverage.Assessment
	read       []string // the spec and the records it names
	err        error
}

// assessAll assesses several specs at a time; the answers keep their order. It
// fails only where it was interrupted.
func assessAll(ctx context.Context, con *console.Console, files []string, o spec.Options) ([]assessed, error) {
	done := make([]assessed, len(files))
	progress := con.Progress(len(files), "specs")
	defer progress.End()
	g, ctx := errgroup.WithContext(ctx)
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		g.Go(func() error {
			defer progress.Done()
			done[i] = assessOne(ctx, file, o, pictured(con))
			return ctx.Err()
		})
	}
	return done, g.Wait()
}

// assessOne keeps a fault of the program to the spec that brought it out.
func assessOne(ctx context.Context, file string, o spec.Options, want assess.Options) (a assessed) {
	defer func() {
		if p := recover(); p != nil {
			a = assessed{err: fmt.Errorf("%s: a fault of the program, not of your input: %v; nothing was decided", file, p)}
		}
	}()
	d, err := spec.Read(file, o)
	if err != nil {
		return assessed{read: []string{file}, err: err}
	}
	result, err := assess.Drink(ctx, d, want)
	return assessed{result, filesOf(d), err}
}

// filesOf are the files that an assessment of the drink reads.
func filesOf(d *beverage.Drink) []string {
	files := []string{d.File}
	for _, r := range d.Process.Records {
		if !filepath.IsAbs(r.File) {
			r.File = filepath.Join(d.Dir, r.File)
		}
		files = append(files, r.File)
	}
	return files
}

// pictured asks for what only pictures show where the page that has them is written.
func pictured(con *console.Console) assess.Options {
	o := options()
	o.Pictures = con.Format == console.HTML
	return o
}

func options() assess.Options { return assess.Options{Version: version} }

// notATerminal keeps a command from waiting for a user who piped nothing.
func notATerminal(cmd *cobra.Command, con *console.Console, files []string) error {
	for _, f := range files {
		if f == "-" && con.InIsTerminal() {
			cmd.SetOut(con.Err)
			return errors.Join(cmd.Usage(), errors.New(cmd.CommandPath()+": - reads standard input, and nothing is piped into it"))
		}
	}
	return nil
}
