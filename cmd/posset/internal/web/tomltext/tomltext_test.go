package tomltext

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const sample = `# kept
[drink]
name = "Quince" # kept too
serving = "330 mL"

[[ingredient]]
name = "a"
amount = "1 g/L"

[[ingredient]]
name = "b"
amount = "2 g/L"

[process]
scheduled = { by = "someone", dated = 2026-01-02 }

[market]
jurisdiction = ["US", "EU"]
`

func read(t require.TestingT, src string) *Text {
	text, err := Read(src)
	require.NoError(t, err)
	return text
}

func TestChanges(t *testing.T) {
	for _, c := range []struct{ path, written, old, new string }{
		{"drink.serving", `"250 mL"`, `"330 mL"`, `"250 mL"`},
		{"ingredient.1.amount", `"3 g/L"`, `"2 g/L"`, `"3 g/L"`},
		{"drink.base", `"water"`, "\n\n[[ingredient]]\nname = \"a\"", "\nbase = \"water\"\n\n[[ingredient]]\nname = \"a\""},
		{"ingredient.0.kind", `"acid"`, "\"1 g/L\"\n", "\"1 g/L\"\nkind = \"acid\"\n"},
		{"market.jurisdiction", `"CA"`, `["US", "EU"]`, `"CA"`},
	} {
		got, err := read(t, sample).Set(c.path, c.written)
		require.NoError(t, err)
		require.Equal(t, strings.Replace(sample, c.old, c.new, 1), got, c.path)
	}
}

func TestATableThatIsNotThereIsAdded(t *testing.T) {
	got, err := read(t, sample).Set("measured.ph", "3.2")
	require.NoError(t, err)
	require.Equal(t, sample+"\n[measured]\nph = 3.2\n", got)
}

func TestATableOfAListIsAddedBehindTheLast(t *testing.T) {
	got := read(t, sample).AddTable("ingredient", "name = \"c\"\n")
	require.Equal(t, strings.Replace(sample, "\"2 g/L\"\n", "\"2 g/L\"\n\n[[ingredient]]\nname = \"c\"\n", 1), got)
}

func TestAKeyIsRemovedWithItsLine(t *testing.T) {
	got, err := read(t, sample).Remove("drink.name")
	require.NoError(t, err)
	require.Equal(t, strings.Replace(sample, "name = \"Quince\" # kept too\n", "", 1), got)
	got, err = read(t, sample).Remove("drink.nothing")
	require.NoError(t, err)
	require.Equal(t, sample, got)
}

func TestWhatStandsWithinAnotherValueIsLeft(t *testing.T) {
	_, err := read(t, sample).Set("process.scheduled.by", `"x"`)
	require.ErrorIs(t, err, ErrNotAlone)
	_, err = read(t, sample).Set("process.scheduled.reference", `"x"`)
	require.ErrorIs(t, err, ErrNotAlone)
	_, err = read(t, sample).Set("ingredient.7.amount", `"x"`)
	require.EqualError(t, err, "there is no ingredient.7 in the text")
}

func TestNoTOML(t *testing.T) {
	_, err := Read("[drink]\nname = \n")
	require.ErrorIs(t, err, ErrNotTOML)
}

// TestAChangeChangesNothingElse decodes demo drinks before and after a change.
func TestAChangeChangesNothingElse(t *testing.T) {
	files, err := filepath.Glob("../../../../../testdata/drinks/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	rapid.Check(t, func(rt *rapid.T) {
		data, err := os.ReadFile(rapid.SampledFrom(files).Draw(rt, "file"))
		require.NoError(rt, err)
		text := read(rt, string(data))
		path := rapid.SampledFrom([]string{"drink.name", "drink.serving", "measured.viscosity", "package.type", "carbonation.loss", "storage.temperature", "process.target"}).Draw(rt, "key")
		want := rapid.StringMatching(`[ -~äµ°]{0,40}|[\x00-\x1f"\\#\]]{0,8}`).Draw(rt, "value")
		got, err := text.Set(path, Quote(want))
		require.NoError(rt, err)
		before, after := decoded(rt, string(data)), decoded(rt, got)
		table, key := split(path)
		require.Equal(rt, want, after[table].(map[string]any)[key])
		was, _ := before[table].(map[string]any)
		if was == nil {
			delete(after, table)
		} else {
			delete(was, key)
			delete(after[table].(map[string]any), key)
		}
		require.Equal(rt, before, after)
	})
}

func decoded(t require.TestingT, src string) map[string]any {
	var m map[string]any
	_, err := toml.Decode(src, &m)
	require.NoError(t, err)
	return m
}

func FuzzRead(f *testing.F) {
	f.Add(sample)
	f.Add("a = [[{b=1}],\n\"\"\"x\n\"\"\"]\n[a.b]\nc.d.\"e\" = '''\n'''")
	f.Fuzz(func(t *testing.T, src string) {
		text, err := Read(src)
		if err != nil {
			return
		}
		for _, v := range text.Values() {
			text.Set(v.Path, `"x"`)
			text.Remove(v.Path)
		}
		text.AddTable("ingredient", "")
	})
}
