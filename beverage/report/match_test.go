package report

import (
	"strings"
	"testing"

	"posset/beverage"
	"posset/beverage/copacker"
)

func someMatch() *copacker.Result {
	return &copacker.Result{Schema: copacker.Schema, Tool: tool, Input: input("quince.toml"), LinesFile: input("lines.toml"), Drink: "Quince clear protein water",
		Class: quince().AcidClass, Stops: []string{"package-pressure"}, Reviews: []string{}, RunL: known(5000), Cautions: testCautions, Lines: []copacker.LineResult{
			{Line: "Bottles", Plant: "Oxlip Bottling", At: "lines.toml:1", Markets: []beverage.Market{beverage.US}, MinimumRunL: known(4000), NothingMissing: true,
				By: beverage.HotFill, Outcome: beverage.Fits, Missing: []copacker.Missing{}, Notes: []string{"handles soy beside what the drink holds"}},
			{Line: "Cans", Plant: "Brackenholt Drinks", At: "lines.toml:20", By: beverage.Tunnel, Outcome: beverage.DoesNotFit, Missing: []copacker.Missing{
				{What: "market", Text: "the drink is for US", Side: copacker.OfLine, Key: "line.markets", At: "lines.toml:20"},
				{What: "route", Text: "tunnel pasteurization does not fit: pressure", Side: copacker.OfSpec, Key: "package.pressure_rating", At: "quince.toml:30", Finding: "package-pressure"},
				{What: "allergen", Text: "the allergens of quillwort are not known", Side: copacker.OfRequest, Key: "--allergens"}},
				Others: []copacker.ProcessResult{{Route: beverage.ColdFill, Outcome: beverage.FitUnknown, At: "lines.toml:30", Missing: []copacker.Missing{{What: "acid class", Key: "line.process.classes"}}}}},
			{Line: "Small cans", Plant: "Quillwort", At: "lines.toml:40", Missing: []copacker.Missing{{What: "process", Text: "the line tells of no process", Side: copacker.OfLine, Key: "line.process", At: "lines.toml:40"}}},
		}}
}

func TestMatchGoldens(t *testing.T) {
	golden(t, "match.txt", text(t, Style{}, Match(someMatch(), Metric)))
	golden(t, "match.csv", sheet(t, Match(someMatch(), Metric)))
	golden(t, "match.json", jsonText(t, someMatch()))
}

func TestMatchInEveryForm(t *testing.T) { everyForm(t, someMatch(), Match(someMatch(), US)) }

// everyForm holds one result against what holds for all: its words, its
// cautions, its width, its rows.
func everyForm(t *testing.T, value any, doc Doc) {
	t.Helper()
	for form, s := range map[string]string{"text": text(t, Style{}, doc), "csv": sheet(t, doc), "html": page1(t, doc), "json": jsonText(t, value)} {
		if w := neverSaid.FindString(s); w != "" {
			t.Errorf("as %s it says %q", form, w)
		}
		if !strings.Contains(s, "A process authority decides") {
			t.Errorf("as %s it carries no caution", form)
		}
	}
	for _, w := range []int{100, 50} {
		for _, l := range strings.Split(text(t, Style{Width: w}, doc), "\n") {
			if width(l) > w {
				t.Errorf("at %d columns: %q", w, l)
			}
		}
	}
	tables := []Table{doc.Sheet}
	for _, s := range doc.Sections {
		for _, b := range s.Blocks {
			if table, ok := b.(Table); ok {
				tables = append(tables, table)
			}
		}
	}
	for _, table := range tables {
		for i, row := range table.Rows {
			if len(row) != len(table.Columns) {
				t.Errorf("row %d: %d cells under %d headings", i, len(row), len(table.Columns))
			}
		}
	}
}
