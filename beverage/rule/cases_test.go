package rule_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage/law"
	"posset/beverage/rule"
)

// cases holds published outbreaks and recalls as drinks, each named after the row
// that tells of it.
const cases = "../../testdata/cases"

// wentWrong is the line of a case that names the findings it has to raise.
var wentWrong = regexp.MustCompile(`(?m)^# Names what went wrong: ([a-z0-9, -]+)\.$`)

// The assessment of each published case names what went wrong in it.
func TestCasesAreNamed(t *testing.T) {
	for _, path := range caseFiles(t) {
		id := strings.TrimSuffix(filepath.Base(path), ".toml")
		t.Run(id, func(t *testing.T) {
			row, ok := law.Get(id)
			require.True(t, ok, "no row tells of the case")
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			m := wentWrong.FindSubmatch(text)
			require.NotNil(t, m, "the case does not say what went wrong")
			raised := map[string]bool{}
			for _, x := range rule.Findings(exampleFacts(t, path)) {
				raised[x.ID] = true
			}
			fed := append([]string{row.Finding}, row.Also...)
			for _, want := range strings.Split(string(m[1]), ", ") {
				assert.True(t, raised[want], "%s is not raised", want)
			}
			assert.Contains(t, string(m[1]), fed[0], "the row of the case feeds a finding that the case does not name")
		})
	}
}

// Every row that tells of a case has its drink.
func TestEveryCaseHasADrink(t *testing.T) {
	have := map[string]bool{}
	for _, path := range caseFiles(t) {
		have[strings.TrimSuffix(filepath.Base(path), ".toml")] = true
	}
	for _, r := range law.Rows() {
		if r.Topic == law.CaseTopic {
			assert.True(t, have[r.ID], "%s has no drink", r.ID)
		}
	}
}

func caseFiles(t *testing.T) []string {
	files, err := filepath.Glob(filepath.Join(cases, "*.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}
