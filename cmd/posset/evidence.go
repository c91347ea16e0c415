package main

import (
	"context"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/report"
	"posset/cmd/posset/internal/console"
)

const (
	csvEnding  = ".csv"
	xlsxEnding = ".xlsx"
	htmlEnding = ".html"
)

// evidenceFits refuses what no evidence can be written of before anything is read.
func (o *lethalityFlags) evidenceFits(cmd *cobra.Command, files []string) error {
	ending := strings.ToLower(filepath.Ext(o.evidence))
	switch {
	case o.evidence == "":
		return nil
	case ending != csvEnding && ending != xlsxEnding && ending != htmlEnding:
		return usageError(cmd, "--evidence: name a file that ends in .csv, .xlsx or .html")
	case len(files) != 1 || files[0] == "-":
		return usageError(cmd, "--evidence is of one log in a file; name one")
	}
	return nil
}

// writeEvidence writes the evidence of one log as it is read once more.
func writeEvidence(ctx context.Context, con *console.Console, reader *assess.LogReader, file, to string, result *beverage.LogResult) error {
	return con.Stream(to, func(w io.Writer) error {
		out, err := evidenceWriter(w, to)
		if err != nil {
			return err
		}
		if err := reader.Evidence(ctx, file, result, out.Row); err != nil {
			return err
		}
		return out.Close(reader.Result([]beverage.LogResult{*result}))
	})
}

func evidenceWriter(w io.Writer, name string) (report.EvidenceWriter, error) {
	switch strings.ToLower(filepath.Ext(name)) {
	case xlsxEnding:
		return report.NewEvidenceXLSX(w), nil
	case htmlEnding:
		return report.NewEvidenceHTML(w)
	}
	return report.NewEvidenceCSV(w)
}
