package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage/quantity"
	"posset/beverage/starter"
	"posset/cmd/posset/internal/console"
)

type newFlags struct {
	kind      string
	overwrite bool
	said      map[string]*string // by the names of the questions
}

func newCommand(con *console.Console) *cobra.Command {
	o := newFlags{said: map[string]*string{}}
	cmd := &cobra.Command{
		Use:     "new",
		Short:   "A starter spec, by questions or by --kind",
		Long:    "Writes a first spec of a drink: a usual recipe of its kind, what you know, and on\ntop what is still to be found out and by whom. On a terminal it asks; with --kind\nit asks nothing, and each question has a flag. What you do not know is \"unknown\"\nand stays out of the file. Nothing is written over without --overwrite.\n\nKinds:\n" + kindList(),
		Example: "  posset new\n  posset new --kind clear-acid-whey --out quince.toml\n  posset new --kind energy --caffeine \"80 mg\" --market \"US, EU\" --out juniper.toml",
		Args:    cobra.NoArgs,
		RunE:    func(cmd *cobra.Command, _ []string) error { return runNew(cmd, con, o) },
	}
	f := cmd.Flags()
	f.SortFlags = false
	f.StringVar(&o.kind, "kind", "", "`KIND` of drink; unsaid, it is asked for")
	for _, q := range starter.Questions() {
		o.said[q.Name] = f.String(q.Name, "", strings.ToLower(q.Ask[:1])+q.Ask[1:])
	}
	f.BoolVar(&o.overwrite, "overwrite", false, "write over a file that is there")
	return cmd
}

func kindList() string {
	var b strings.Builder
	for _, k := range starter.Kinds() {
		fmt.Fprintf(&b, "  %-16s %s\n", k.ID, k.Title)
	}
	return strings.TrimRight(b.String(), "\n")
}

func runNew(cmd *cobra.Command, con *console.Console, o newFlags) error {
	if con.Format != console.Text {
		return usageError(cmd, "writes a spec, which is TOML; leave --format out, and let the file end in .toml")
	}
	asks := o.kind == "" && con.InIsTerminal()
	if o.kind == "" && !asks {
		return usageError(cmd, "names no kind, and asks only on a terminal; write --kind clear-acid-whey")
	}
	if err := o.free(con.Path); err != nil {
		return err
	}
	if asks {
		return askNew(cmd, con, o)
	}
	k, err := starter.Find(o.kind)
	if err != nil {
		return usageError(cmd, "--kind: "+err.Error())
	}
	a := starter.Of(k)
	if err := o.answer(cmd, a); err != nil {
		return err
	}
	return o.write(cmd, con, a)
}

// free refuses a file that is there before anything is asked.
func (o newFlags) free(path string) error {
	if path == "" || path == "-" || o.overwrite {
		return nil
	}
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s: is there already; name another file, or say --overwrite", path)
	}
	return nil
}

// answer takes what was said by flags; all that is wrong is told at once.
func (o newFlags) answer(cmd *cobra.Command, a *starter.Answers) error {
	var errs []error
	for _, q := range starter.Questions() {
		if !cmd.Flags().Changed(q.Name) {
			continue
		}
		if err := a.Say(q, *o.said[q.Name]); err != nil {
			errs = append(errs, usageError(cmd, "--"+q.Name+": "+err.Error()))
		}
	}
	return console.Refuse(errs...)
}

// write writes the spec, and says what to do with it.
func (o newFlags) write(cmd *cobra.Command, con *console.Console, a *starter.Answers) error {
	text, err := starter.Write(a, version)
	if err != nil {
		return usageError(cmd, "--"+err.Error())
	}
	if err := con.WriteOwn(text, o.overwrite); err != nil {
		return err
	}
	if con.ToFile() && !con.Quiet {
		con.Say("wrote " + con.Path + "; read it, then: posset check " + con.Path)
	}
	return nil
}

// fileName is what a drink's file is called where nobody said: its name in small
// letters and hyphens.
func fileName(drink string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(drink) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String(), "-")
	if name == "" || len(name) > longestFileName {
		name = "drink"
	}
	return name + ".toml"
}

const longestFileName = 60

var errEnded = errors.New("posset new: the answers ended before the last question; nothing was written")

// choices numbers the kinds for a person to choose from.
func choices() string {
	var b strings.Builder
	for i, k := range starter.Kinds() {
		fmt.Fprintf(&b, "  %2d  %-16s %s\n", i+1, k.ID, k.Title)
	}
	return b.String()
}

// chosen is a kind by its number or its name.
func chosen(text string) (starter.Kind, error) {
	for i, k := range starter.Kinds() {
		if text == fmt.Sprint(i+1) {
			return k, nil
		}
	}
	if text == "" {
		return starter.Kind{}, errors.New("write the number of a kind, or its name, such as " + quantity.Quote(starter.Kinds()[0].ID))
	}
	return starter.Find(text)
}
