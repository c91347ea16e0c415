package report

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// golden compares with a file under testdata, or renews it with UPDATE=1.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if os.Getenv("UPDATE") != "" {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-want +got):\n%s", name, diff)
	}
}

func text(t *testing.T, st Style, docs ...Doc) string {
	t.Helper()
	var b strings.Builder
	if err := Text(&b, st, docs...); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func sheet(t *testing.T, docs ...Doc) string {
	t.Helper()
	var b strings.Builder
	if err := CSV(&b, docs...); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func jsonText(t *testing.T, v any) string {
	t.Helper()
	var b strings.Builder
	if err := JSON(&b, v); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestAssessmentGoldens(t *testing.T) {
	golden(t, "assessment.txt", text(t, Style{}, Assessment(quince(), Metric)))
	golden(t, "assessment-us.txt", text(t, Style{ASCII: true, Width: 72}, Assessment(quince(), US)))
	golden(t, "assessment.csv", sheet(t, Assessment(quince(), Metric)))
	golden(t, "assessment.json", jsonText(t, quince()))
}
