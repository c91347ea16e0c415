package main

import (
	"errors"

	"github.com/spf13/cobra"

	"posset/beverage/checkvalue"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

func verifyCommand(con *console.Console) *cobra.Command {
	return &cobra.Command{
		Use:   "verify [WORD]",
		Short: "Recomputes published values on this machine",
		Long: `Recomputes every published value that the models are held against, and prints
what was published, what comes out here, how far it may lie off, and why so far.
A word takes those whose id, model or source holds it. The status is 1 where
one is out of tolerance.`,
		Example: "  posset verify\n  posset verify carbonation\n  posset verify --format csv --out checks.csv",
		Args:    atMostOne("word"),
		RunE: func(cmd *cobra.Command, words []string) error {
			filter := ""
			if len(words) == 1 {
				filter = words[0]
			}
			r, err := checkvalue.Run(cmd.Context(), filter)
			r.Tool = tool()
			if len(r.Checks) == 0 && err != nil {
				return errors.New("posset verify: " + err.Error())
			}
			doc := func(u report.Units) report.Doc { return report.Verify(&r, u) }
			if told := emitOne(con, r, doc, r.Out > 0); err == nil {
				return told
			}
			return console.Refuse(err)
		},
	}
}
