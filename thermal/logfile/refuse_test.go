package logfile_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

// Files that are no logs, and logs that do not tell enough: one line each.
func TestRefusals(t *testing.T) {
	rows := func(head string, row ...string) string { return head + "\n" + strings.Join(row, "\n") + "\n" }
	for name, c := range map[string]struct {
		text    string
		options func(o *logfile.Options)
		want    string
	}{
		"empty":        {"", nil, "run.csv: the file is empty"},
		"only blanks":  {"\n \n\n", nil, "run.csv: the file is empty"},
		"heading only": {"time,T1 (°C)\n", nil, "run.csv: no row of readings (a time and a temperature, divided by comma, semicolon or tab)"},
		"one row":      {rows("time_s,T1 (°C)", "0,20.5"), nil, "run.csv: 1 row of readings; at least two are needed"},
		"prose":        {"The retort was run twice that day.\nNothing was written down.\n", nil, "run.csv: no row of readings (a time and a temperature, divided by comma, semicolon or tab)"},
		"binary":       {"\x7fELF\x02\x01\x01\x00\x00\x00\x00\x00\x00\x03", nil, "run.csv: is not text, and not a workbook either"},
		"an old workbook": {"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", nil,
			"run.csv: is a workbook of the old .xls kind; save it as .xlsx or CSV"},
		"nothing but NaN":      {rows("time_s,T1 (°C)", "0,NaN", "5,NaN", "10,NaN"), nil, "run.csv: no row of readings (a time and a temperature, divided by comma, semicolon or tab)"},
		"nothing but codes":    {rows("time_s,T1 (°C)", "0,999.9", "5,999.9", "10,999.9"), nil, "run.csv: no reading can be a temperature"},
		"a line without end":   {strings.Repeat("7", 300<<10), nil, "run.csv:1: a line of more than 65536 bytes is no row of a recorder"},
		"a long line later":    {rows("time_s,T1 (°C)", "0,20.5", "5,20.6", strings.Repeat("7", 600<<10)), nil, "run.csv:4: a line of more than 65536 bytes is no row of a recorder"},
		"too many columns":     {rows(strings.Repeat("a,", 1999)+"b", strings.Repeat("1,", 1999)+"2"), nil, "run.csv: 2000 columns; at most 1024 are read"},
		"no unit":              {rows("time_s,T1,T2", "0,20.5,20.6", "5,20.5,20.6"), nil, `run.csv: no unit for temperature column "T1"; say which with --unit C, --unit F or --unit K`},
		"unit against heading": {rows("time_s,T1 (°F)", "0,70.5", "5,70.6"), func(o *logfile.Options) { o.Unit = "C" }, `run.csv: column "T1" is headed °F but the unit was given as C; give none, or correct the heading`},
		"day or month": {rows("time,T1 (°C)", "03/04/2026 10:00:00,20.5", "03/04/2026 10:00:05,20.6"), nil,
			`run.csv:2: "03/04/2026 10:00:00" can be 3 April 2026 or 4 March 2026; say which with --dates dmy or --dates mdy`},
		"not that order": {rows("time,T1 (°C)", "31/04/2026 10:00:00,20.5", "31/04/2026 10:00:05,20.6"), func(o *logfile.Options) { o.Dates = "mdy" },
			`run.csv:2: "31/04/2026 10:00:00" cannot be a date in the order mdy`},
		"hours or minutes": {rows("Elapsed,T1 (°C)", "00:00,20.5", "00:05,20.6", "00:10,20.6"), nil,
			`run.csv:2: "00:00" can be hours and minutes or minutes and seconds; head the column with (hh:mm) or (mm:ss)`},
		"seconds or minutes": {rows("Time,T1 (°C)", "0,20.5", "5,20.6", "10,20.6"), nil,
			`run.csv: time column "Time" is a number without a unit; head it with (s), (min) or (h)`},
		"no clock":       {rows("T1 (°C),T2 (°C)", "20.5,20.5", "20.5,20.6"), nil, "run.csv: no column is a clock; one headed time, or time (s), is needed"},
		"no temperature": {rows("time_s,Pressure (bar)", "0,1.1", "5,1.2"), nil, `run.csv: no temperature column; the headings are "time", "Pressure"`},
		"decimal comma between commas": {rows("time,T1 (°C)", "10:00:00,20,5", "10:00:05,20,6"), nil,
			"run.csv:2: 3 cells under 2 headings; a decimal comma needs semicolon or tab between the cells"},
		"a role for nobody": {rows("time_s,Can 1 (°C)", "0,20.5", "5,20.6"), func(o *logfile.Options) { o.Roles = map[string]logfile.Role{"Can 2": logfile.Product} },
			`run.csv: no column is headed "Can 2"; the headings are "time", "Can 1"`},
		"a role that is none": {rows("time_s,Can 1 (°C)", "0,20.5", "5,20.6"), func(o *logfile.Options) { o.Roles = map[string]logfile.Role{"Can 1": "drink"} },
			`run.csv: role "drink" of "Can 1" is none of product, retort, reference, other, ignore`},
		"most rows without a time": {rows("time_s,T1 (°C)", strings.Repeat("0,20.5\n5,20.6\n", 15)+strings.Repeat("x,1\n", 39)+"x,1"), nil, "run.csv:32: 40 of 70 rows have no readable time"},
		"negative tolerance":       {"", func(o *logfile.Options) { o.ToleranceC = -0.5 }, "sensor tolerance -0.5 C° is not zero or more"},
		"tolerance that is none":   {"", func(o *logfile.Options) { o.ToleranceC = math.NaN() }, "sensor tolerance NaN C° is not zero or more"},
		"unknown unit":             {"", func(o *logfile.Options) { o.Unit = "R" }, `unit "R" is none of C, F, K`},
		"unknown order":            {"", func(o *logfile.Options) { o.Dates = "ydm" }, `date order "ydm" is none of dmy, mdy, ymd`},
		"no basis":                 {"", func(o *logfile.Options) { o.Bases = nil }, "no basis to integrate lethality on"},
		"bound without z":          {"", func(o *logfile.Options) { o.Bases[0].Bound = &thermal.Bound{} }, `basis "F0": its bound has no z`},
		"basis without z":          {"", func(o *logfile.Options) { o.Bases = []logfile.Basis{{Name: "F"}} }, `basis "F": reference temperature 0 °C with z 0 C° cannot be integrated on`},
		"stay nowhere":             {"", func(o *logfile.Options) { o.StaysAtC = []float64{math.Inf(1)} }, "stay at +Inf °C is not a temperature"},
	} {
		t.Run(name, func(t *testing.T) {
			o := options()
			if c.options != nil {
				c.options(&o)
			}
			_, err := logfile.Read(context.Background(), strings.NewReader(c.text), "run.csv", o)
			require.EqualError(t, err, c.want)
		})
	}
}

func TestFilesThatAreNone(t *testing.T) {
	dir := t.TempDir()
	loop := filepath.Join(dir, "loop.csv")
	require.NoError(t, os.Symlink(loop, loop))
	for path, want := range map[string]string{
		loop:                             loop + ": cannot be opened: too many levels of symbolic links",
		dir:                              dir + ": is a folder, not a log",
		filepath.Join(dir, "absent.csv"): filepath.Join(dir, "absent.csv") + ": cannot be opened: no such file or directory",
	} {
		_, err := logfile.ReadFile(context.Background(), path, options())
		require.EqualError(t, err, want)
	}
}

func TestStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := logfile.Read(ctx, strings.NewReader("time_s,T1 (°C)\n0,20\n5,20\n"), "run.csv", options())
	require.ErrorIs(t, err, context.Canceled)
}

// The caller's folder is left as it was, and the hash is that of the file.
func TestReadFileOnlyReads(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "run.csv")
	text := "time_s,Can 1 (°C)\n0,120\n5,121\n10,121\n"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o400))
	l, err := logfile.ReadFile(context.Background(), path, logfile.Options{Bases: []logfile.Basis{{Ref: thermal.F0}}})
	require.NoError(t, err)
	assert.Equal(t, path, l.File)
	assert.Equal(t, "ba54ebc80b479fac5f475f990cc1736e33e6c854f92938f7d67e344500fe409d", l.SHA256)
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, entries, 1)
}
