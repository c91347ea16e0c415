package rule_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/law"
	"posset/beverage/rule"
)

const findingsPage = "../../docs/findings.md"

// The page of all findings is written from their declarations. UPDATE=1 renews
// it; without, a page that differs fails.
func TestFindingsPage(t *testing.T) {
	got := page()
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.MkdirAll(filepath.Dir(findingsPage), 0o755))
		require.NoError(t, os.WriteFile(findingsPage, []byte(got), 0o644))
	}
	want, err := os.ReadFile(findingsPage)
	require.NoError(t, err)
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("docs/findings.md differs from the declarations (-page +declared); UPDATE=1 go test ./beverage/rule renews it:\n%s", diff)
	}
}

const pageHead = `# Findings

Written from the declarations in ` + "`beverage/rule`" + ` by its tests: change it there, then run
` + "`UPDATE=1 go test ./beverage/rule`" + `. ` + "`posset explain ID`" + ` says the same at the command line.

A level is what a finding asks of the reader. It may rise by market or circumstance; where it is another one
than here, the finding's detail says why. Nothing here is a scheduled process, a release or legal advice: a
process authority decides. Laws are cited with the date of the text that was read; check the text in force.

`

// levelWords says what each level asks.
var levelWords = map[beverage.Level]string{
	beverage.Stop:   "do not make or ship as described",
	beverage.Review: "a qualified person must look",
	beverage.Note:   "worth knowing",
}

func page() string {
	var b strings.Builder
	b.WriteString(pageHead)
	for _, l := range []beverage.Level{beverage.Stop, beverage.Review, beverage.Note} {
		fmt.Fprintf(&b, "## %s: %s\n\n| id | title |\n| --- | --- |\n", l, levelWords[l])
		for _, r := range rule.All() {
			if r.Level == l {
				fmt.Fprintf(&b, "| [`%s`](#%s) | %s |\n", r.ID, r.ID, r.Title)
			}
		}
		b.WriteString("\n")
	}
	for _, r := range rule.All() {
		writeRule(&b, r)
	}
	return b.String()
}

func writeRule(b *strings.Builder, r *rule.Rule) {
	fmt.Fprintf(b, "## %s\n\n**%s.** %s.\n\n%s\n\nTo clear it: %s\n\nRests on:\n\n", r.ID, r.Level, r.Title, r.Means, r.Clear)
	for _, id := range r.Law {
		row := law.MustGet(id)
		fmt.Fprintf(b, "- %s, `%s`: %s %s", speaker(row), id, row.Cite()+".", row.Statement)
		if row.Argued != "" {
			fmt.Fprintf(b, " Argued: %s.", row.Argued)
		}
		b.WriteString("\n")
	}
	b.WriteString("\n")
	if told := law.Cases(r.ID); len(told) > 0 {
		b.WriteString("Published cases that it would have named:\n\n")
		for _, row := range told {
			fmt.Fprintf(b, "- %s %s\n", row.Cite()+".", row.Statement)
		}
		b.WriteString("\n")
	}
}

// speaker is the market whose law a row is, or custom.
func speaker(row law.Row) string {
	if len(row.Markets) == 0 {
		return "trade and science"
	}
	names := make([]string, len(row.Markets))
	for i, m := range row.Markets {
		names[i] = string(m)
	}
	return strings.Join(names, ", ")
}
