package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"posset/thermal"
)

// The templates put an example first; what a command is for stands above it.
const (
	helpTemplate = `{{with (or .Long .Short)}}{{. | trimTrailingWhitespaces}}
{{end}}{{if or .Runnable .HasSubCommands}}
{{.UsageString}}{{end}}`

	usageTemplate = `{{if .HasExample}}Examples:
{{.Example}}

{{end}}Usage:{{if .HasAvailableSubCommands}}
  {{.CommandPath}} COMMAND{{else}}
  {{.UseLine}}{{end}}{{if .HasAvailableSubCommands}}

Commands:{{range .Commands}}{{if .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}

Flags:
{{.LocalFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasAvailableInheritedFlags}}

Flags of every command:
{{.InheritedFlags.FlagUsages | trimTrailingWhitespaces}}{{end}}{{if .HasHelpSubCommands}}

Topics:{{range .Commands}}{{if .IsAdditionalHelpTopicCommand}}
  {{.CommandPath | printf "%-22s"}} {{.Short}}{{end}}{{end}}{{end}}{{if .HasAvailableSubCommands}}

posset help COMMAND tells more of one.{{end}}
`
)

// topics are help pages that are not commands.
func topics() []*cobra.Command {
	return []*cobra.Command{
		{Use: "exit-codes", Short: "What the exit status tells", Long: exitCodes},
		{Use: "units", Short: "How quantities are written", Long: unitsHelp},
		organismsTopic(),
		linesTopic(),
	}
}

// organismsTopic reads the organisms only when it is asked for.
func organismsTopic() *cobra.Command {
	cmd := &cobra.Command{Use: "organisms", Short: "Organisms whose heat resistance is held"}
	cmd.SetHelpFunc(func(cmd *cobra.Command, _ []string) { cmd.Println(organismsHelp()) })
	return cmd
}

const exitCodes = `The exit status of every command:

  0  the class is decided, nothing is at level stop, every stated or required
     target is met
  1  a finding at level stop, a target not met or not decidable, an undecided
     class, or a required target that is missing; with --strict also a finding
     at level review
  2  unusable input or usage: a line on standard error for each problem

With one input that is unusable nothing is written. With many the others are
reported, and the status is 2. posset lethality without a target gives 0, and
posset verify gives 1 where a published value is out of tolerance.`

const unitsHelp = `A quantity is a number and a unit: "330 mL", "93 C", "199 F", "2.4 barg",
"35 psig", "15 s", "9 months", "2.8 g/L", "0.9 %", "12 g/serving".

  temperature    C, F, K               a difference (z, a tolerance): C, F, K
  pressure       barg, bara, kPag, psig, psia, MPa; "2.4 bar" is neither
                 gauge nor absolute and is an error
  time           s, min, h, days, weeks, months
  volume         mL, L, fl oz, gal     mass: mg, g, kg, oz, lb
  concentration  g/L, mg/L, mmol/L, %, ppm, g/serving, mL/L
  flow, length   L/h, gal/min; mm, m, in, ft

The decimal mark is a point; a comma is an error. Only pH, water activity, Brix
and volumes of CO2 are bare numbers. A percentage is by mass of the finished
drink, of alcohol by volume, of an ingredient's property by mass of that
ingredient.

--units us shows text, csv and html in F, psig and fl oz. JSON always uses the
unit that ends a field's name: ph, temperature_c, gauge_kpa, credited_minutes.`

// mediumAndSource leaves out a medium that no source names.
func mediumAndSource(o thermal.Organism) string {
	if o.Medium == "" {
		return "medium not told; " + o.Source
	}
	return o.Medium + "; " + o.Source
}

// organismsHelp lists the organisms by the names that --organism and a target
// take.
func organismsHelp() string {
	var b strings.Builder
	b.WriteString("Organisms that --organism and a target such as \"5 log NAME\" take, with the\nspread of their published heat resistance:\n")
	for _, o := range thermal.Organisms() {
		fmt.Fprintf(&b, "\n  %s (%s)\n    D %g to %g min at %g C, z %g to %g C; measured from %g to %g C\n    %s\n", o.Name, o.Class,
			o.DLow, o.DHigh, o.TrefC, o.ZLow, o.ZHigh, o.MinC, o.MaxC, mediumAndSource(o))
	}
	b.WriteString("\nThe unfavourable end counts. Whose numbers they are stands with each result.")
	return b.String()
}
