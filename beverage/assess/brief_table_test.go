package assess

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/law"
	"posset/beverage/rule"
)

// Every word in a condition is one that can be true of some drink.
func TestBriefTablesSpeakOfWhatThereIs(t *testing.T) {
	table, err := briefTables()
	require.NoError(t, err)
	known := map[string]func(string) bool{
		"routes": func(w string) bool { return slices.Contains(beverage.Routes, beverage.Route(w)) },
		"classes": func(w string) bool {
			return slices.Contains([]string{"undecided", "low-acid", "acidified", "acid", "outside"}, w)
		},
		"when":     func(w string) bool { return circumstances[w] != nil },
		"findings": func(w string) bool { _, ok := rule.Find(w); return ok },
		"markets":  func(w string) bool { return slices.Contains(beverage.Markets, beverage.Market(w)) },
		"missing":  func(w string) bool { return answers[w] != nil },
	}
	for _, rows := range [][]row{table.critical, table.gaps, table.questions} {
		for _, r := range rows {
			for column, ok := range known {
				_, has := r[column]
				require.True(t, has, "%v has no column %s", r, column)
				for _, w := range r.list(column) {
					assert.True(t, ok(w), "%s: nothing is called %q", column, w)
				}
			}
		}
	}
}

func TestBriefTablesAreWhole(t *testing.T) {
	table, err := briefTables()
	require.NoError(t, err)
	for _, r := range table.critical {
		assert.NotNil(t, answers[r["key"]], r["key"])
		_, ok := law.Get(r["row"])
		assert.True(t, ok, "no row of law %q", r["row"])
		assert.NotEmpty(t, r["limit"])
		assert.NotEmpty(t, r["measured"])
	}
	for _, r := range table.figures {
		assert.NotNil(t, answers[r["key"]], r["key"])
	}
	for _, r := range table.gaps {
		assert.NotEmpty(t, r["what"])
		assert.NotEmpty(t, r["test"])
	}
	for _, r := range table.questions {
		assert.Contains(t, []string{"plant", "co-packer", "authority"}, r["to"])
		assert.True(t, strings.HasSuffix(r["question"], "?") || strings.Contains(r["question"], "? "), r["question"])
	}
	for _, number := range []string{"2541", "2541d", "2541e", "2541g"} {
		for _, f := range law.Form(number) {
			assert.NotNil(t, answers[f.AnsweredBy], "%s: nothing answers %q", number, f.AnsweredBy)
		}
	}
}

func TestTablesRefuseTornLines(t *testing.T) {
	_, err := readRows("gaps", "# head\nwhat\ttest\n\na\tb\nc\n")
	assert.EqualError(t, err, "gaps.tsv:5: 1 cells under 2 headings; give every heading a cell")
}
