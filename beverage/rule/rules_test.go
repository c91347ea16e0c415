package rule_test

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/ingredient"
	"posset/beverage/law"
	"posset/beverage/rule"
	"posset/beverage/spec"
)

// examples holds, for every rule, a drink that raises it and the nearest one
// that does not.
const examples = "../../testdata/rules"

// sharedLogs is the folder of examples that belongs to no rule.
const sharedLogs = "logs"

func TestEveryRuleIsDeclaredWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range rule.All() {
		t.Run(r.ID, func(t *testing.T) {
			assert.False(t, seen[r.ID], "the id stands twice")
			seen[r.ID] = true
			assert.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)+$`, r.ID)
			assertTitle(t, r.Title)
			assertWords(t, "Means", r.Means)
			assertWords(t, "Clear", r.Clear)
			require.NotEmpty(t, r.Law, "a rule rests on at least one row of law")
			for _, id := range r.Law {
				_, ok := law.Get(id)
				assert.True(t, ok, "no row of law %q", id)
			}
		})
	}
}

// assertTitle holds a title to be a short sentence without its full stop.
func assertTitle(t *testing.T, title string) {
	first, _ := firstRune(title)
	assert.True(t, unicode.IsUpper(first), "title %q does not begin like a sentence", title)
	assert.GreaterOrEqual(t, len(strings.Fields(title)), 4, "title %q is no sentence", title)
	assert.LessOrEqual(t, len(title), 100, "title %q is long", title)
	assert.False(t, strings.HasSuffix(title, "."), "title %q ends in a full stop", title)
	assert.Empty(t, praised(title))
}

func firstRune(s string) (rune, bool) {
	for _, r := range s {
		return r, true
	}
	return 0, false
}

// praise finds words that no finding may use of a drink, unless after "not".
var praise = regexp.MustCompile(`(?i)\b(not )?(safe|safely|pass|passes|approved|compliant)\b`)

func praised(text string) string {
	for _, m := range praise.FindAllStringSubmatch(text, -1) {
		if m[1] == "" {
			return m[0]
		}
	}
	return ""
}

func assertWords(t *testing.T, field, text string) {
	assert.NotEmpty(t, text, field)
	assert.True(t, strings.HasSuffix(text, "."), "%s is made of sentences", field)
	assert.Empty(t, praised(text), field)
}

func TestPraiseIsFound(t *testing.T) {
	for text, want := range map[string]string{
		"Safe to drink.": "Safe", "It will pass": "pass", "an approved pack": "approved", "not a word, compliant": "compliant",
		"It is not safe.": "", "unsafe": "", "a bypass": "", "passed by the adult": "",
	} {
		assert.Equal(t, want, praised(text))
	}
}

func TestEveryRuleFiresAndFallsSilent(t *testing.T) {
	for _, r := range rule.All() {
		t.Run(r.ID, func(t *testing.T) {
			t.Parallel()
			fires := raised(t, r.ID, "fires.toml")
			require.NotEmpty(t, fires, "fires.toml does not raise it")
			assert.Equal(t, wantedLevel(t, r).String(), worst(fires).String(), "level in fires.toml")
			assert.Empty(t, raised(t, r.ID, "silent.toml"), "silent.toml raises it")
		})
	}
}

// raised returns the findings of one id on an example.
func raised(t *testing.T, id, name string) []beverage.Finding {
	path := filepath.Join(examples, id, name)
	assertComment(t, path)
	f := exampleFacts(t, path)
	var list []beverage.Finding
	for _, x := range rule.Findings(f) {
		if x.ID == id {
			assert.Regexp(t, `[^.]\.$`, x.Detail, "a detail is made of sentences")
			assert.Empty(t, praised(x.Detail))
			list = append(list, x)
		}
	}
	return list
}

// assertComment holds an example to say first what a practitioner should see.
func assertComment(t *testing.T, path string) {
	head := firstLine(t, path)
	assert.True(t, strings.HasPrefix(head, "# ") && len(strings.Fields(head)) >= 4 && strings.HasSuffix(head, "."), "%s does not say first what to see and why", path)
}

func firstLine(t *testing.T, path string) string {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	head, _, _ := strings.Cut(string(text), "\n")
	return head
}

// otherLevel is how an example says that it raises its finding at another level
// than the declared one.
var otherLevel = regexp.MustCompile(`\(raised as a (stop|review|note)\)`)

func wantedLevel(t *testing.T, r *rule.Rule) beverage.Level {
	m := otherLevel.FindStringSubmatch(firstLine(t, filepath.Join(examples, r.ID, "fires.toml")))
	if m == nil {
		return r.Level
	}
	return map[string]beverage.Level{"stop": beverage.Stop, "review": beverage.Review, "note": beverage.Note}[m[1]]
}

func worst(list []beverage.Finding) beverage.Level {
	level := beverage.Note
	for _, x := range list {
		level = min(level, x.Level)
	}
	return level
}

func TestNoExampleWithoutRule(t *testing.T) {
	dirs, err := os.ReadDir(examples)
	require.NoError(t, err)
	for _, d := range dirs {
		if d.Name() == sharedLogs {
			continue
		}
		_, ok := rule.Find(d.Name())
		assert.True(t, ok, "testdata/rules/%s has no rule", d.Name())
	}
}

// Every row that a label statement rests on is told by the rule.
func TestLabelStatementsAreCited(t *testing.T) {
	r, ok := rule.Find("label-statement")
	require.True(t, ok)
	for _, m := range beverage.Markets {
		for _, s := range law.Statements(m) {
			assert.Contains(t, r.Law, s.RowID)
		}
	}
}

// A rule that speaks about routes says so in its declaration, since only those
// are asked when a route is tried.
func TestOnlyDeclaredRulesSpeakAboutRoutes(t *testing.T) {
	for _, r := range rule.All() {
		for _, name := range []string{"fires.toml", "silent.toml"} {
			for _, h := range r.Check(exampleFacts(t, filepath.Join(examples, r.ID, name))) {
				assert.True(t, r.OnRoutes || h.Route == rule.NoEffect, "%s speaks about the route and does not declare OnRoutes", r.ID)
			}
		}
	}
}

func exampleFacts(t *testing.T, path string) *facts.Facts {
	d, err := spec.Read(path, spec.Options{AllowOutside: true})
	require.NoError(t, err)
	f, err := facts.Of(context.Background(), d, ingredient.Default())
	require.NoError(t, err)
	return f
}
