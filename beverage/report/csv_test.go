package report

import (
	"encoding/csv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestFormulasAreMadeHarmless(t *testing.T) {
	for cell, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1.25": "-1.25", "-1.2e-07": "-1.2e-07", "-1+2": "'-1+2", "@SUM(A1)": "'@SUM(A1)", "\t=1": "' =1",
		"\r=1": "' =1", "  =1": "'  =1", "\x00=1": "\ufffd=1", "-": "'-", "12": "12", "": "", "quince": "quince", "\ufeff=1": "\ufffd=1",
	} {
		if got := harmless([]string{cell})[0]; got != want {
			t.Errorf("%q: got %q, want %q", cell, got, want)
		}
	}
}

func TestSheetsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := rapid.SliceOfN(rapid.String(), 3, 3).Draw(t, "row")
		d := Doc{Sheet: Table{Columns: columns("a", "b", "c"), Rows: [][]string{row}}, Cautions: []string{rapid.String().Draw(t, "caution")}}
		var b strings.Builder
		if err := CSV(&b, d); err != nil {
			t.Fatal(err)
		}
		r := csv.NewReader(strings.NewReader(b.String()))
		r.Comment = '#'
		if _, err := r.ReadAll(); err != nil {
			t.Fatalf("%v in %q", err, b.String())
		}
	})
}

func TestSheetsShareOneHeaderAndTellEachCautionOnce(t *testing.T) {
	s := sheet(t, Assessment(quince(), Metric), Assessment(quince(), Metric))
	if n := strings.Count(s, "file,drink,part"); n != 1 {
		t.Errorf("%d headers", n)
	}
	if n := strings.Count(s, "# "+testCautions[0]); n != 1 {
		t.Errorf("caution stands %d times", n)
	}
	if !strings.HasSuffix(s, "# posset 0.1.0\n") {
		t.Errorf("ends in %q", s[len(s)-40:])
	}
}
