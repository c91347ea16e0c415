package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"posset/beverage"
)

// A heading that a spreadsheet would run stays a word in both forms.
func TestEvidenceRunsNothing(t *testing.T) {
	result := &beverage.LethalityResult{TrefC: 121.1, ZC: 10, ToleranceC: 0.5, Logs: []beverage.LogResult{{File: "=run.csv", SHA256: "ab"}}}
	row := beverage.EvidenceRow{Probe: `=HYPERLINK("x")`, Row: 13, TimeS: 60, TempC: 121.6, LoweredC: 121.1, Rate: 1, PieceMin: 0.5, SumMin: 0.5}
	var text, book bytes.Buffer
	w, err := NewEvidenceCSV(&text)
	require.NoError(t, err)
	for _, w := range []EvidenceWriter{w, NewEvidenceXLSX(&book)} {
		require.NoError(t, w.Row(row))
		require.NoError(t, w.Close(result))
	}
	lines := strings.Split(text.String(), "\n")
	assert.Equal(t, "probe,row,time_s,temperature_c,lowered_c,lethal_rate,piece_minutes,sum_minutes,note", lines[0])
	assert.Equal(t, `"'=HYPERLINK(""x"")",13,60,121.6,121.1,1,0.5,0.5,`, lines[1])
	assert.Equal(t, "# =run.csv, sha256 ab", lines[2])

	f, err := excelize.OpenReader(&book)
	require.NoError(t, err)
	defer f.Close()
	assert.Equal(t, []string{"what it rests on", "probe 1"}, f.GetSheetList())
	formula, err := f.GetCellFormula("probe 1", "A2")
	require.NoError(t, err)
	assert.Empty(t, formula)
	name, err := f.GetCellValue("probe 1", "A2")
	require.NoError(t, err)
	assert.Equal(t, `=HYPERLINK("x")`, name)
	hash, err := f.GetCellValue("what it rests on", "A1")
	require.NoError(t, err)
	assert.Equal(t, "=run.csv, sha256 ab", hash)
}
