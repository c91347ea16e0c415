package logfile_test

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"posset/thermal/logfile"
)

func probeNames(l *logfile.Log) (names []string) {
	for _, p := range l.Probes {
		names = append(names, p.Name)
	}
	return names
}

// What heads several columns of temperatures gives its unit to them alone.
func TestGroupHeadings(t *testing.T) {
	elapsed := func(t float64) []any { return []any{t} }
	for name, c := range map[string]struct {
		rows   [][]any
		merged string
		probes []string
		left   []logfile.LeftOut
	}{
		"pressure in bar beside": {[][]any{{"Clock", "Temperatures (°C)", "", "Pressure"}, {"Time (s)", "Can 1", "Can 2", "bar"}}, "C1",
			[]string{"Can 1", "Can 2"}, []logfile.LeftOut{{Name: "Pressure bar", Reason: "not a temperature by its heading"}}},
		"bar under no heading": {[][]any{{"", "Temperatures (°C)", "", ""}, {"Time (s)", "Can 1", "Can 2", "bar"}}, "C1",
			[]string{"Can 1", "Can 2"}, []logfile.LeftOut{{Name: "bar", Reason: "not a temperature by its heading"}}},
		"a group without a unit": {[][]any{{"", "Temperatures (°C)", "", "Valves"}, {"Time (s)", "Can 1", "Can 2", "X 5"}}, "C1",
			[]string{"Can 1", "Can 2"}, []logfile.LeftOut{{Name: "X 5", Reason: "no temperature unit, while other columns have one"}}},
		"pressure first": {[][]any{{"", "Pressure", "Temperatures (°C)", ""}, {"Time (s)", "bar", "Can 1", "Can 2"}}, "",
			[]string{"Can 1", "Can 2"}, []logfile.LeftOut{{Name: "Pressure bar", Reason: "not a temperature by its heading"}}},
		"pressure under the same blank": {[][]any{{"", "Temperatures (°C)", "", ""}, {"Time (s)", "Can 1", "Can 2", "Pressure"}}, "C1",
			[]string{"Can 1", "Can 2"}, []logfile.LeftOut{{Name: "Pressure", Reason: "not a temperature by its heading"}}},
		"probes named T": {[][]any{{"", "Temperatures (°C)", "", ""}, {"Elapsed (s)", "T1", "T 2", "t3"}}, "D1", []string{"T1", "T 2", "t3"}, nil},
		"the unit of the file": {[][]any{{"Unit", "Temperature unit °C", "", ""}, {"Time (s)", "Can 1", "Can 2", "Can 3"}}, "",
			[]string{"Can 1", "Can 2", "Can 3"}, nil},
		"probes named by letters": {[][]any{{"Time (s)", "A (°C)", "V (°C)", "N (°C)"}}, "", []string{"A", "V", "N"}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			book := workbook(t, formRecord(), c.rows, elapsed, func(f *excelize.File) {
				if c.merged != "" {
					require.NoError(t, f.MergeCell("Sheet1", "B1", c.merged))
				}
			})
			l, err := logfile.Read(context.Background(), bytes.NewReader(book), "run.xlsx", options())
			require.NoError(t, err)
			assert.Equal(t, c.probes, probeNames(l))
			assert.Equal(t, c.left, l.Understood.LeftOut)
		})
	}
}
