package checkvalue

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

// sound is a check without fault; each case changes one line of it.
const sound = `[[check]]
id = "a"
model = "thermal.lethal-rate"
given = { t_c = 111.1, tref_c = 121.1, z_c = 10 }
want = 0.1
allowed = 1e-12
why_allowed = "definition of z"
source = "Bigelow et al. 1920"
basis = "memory"
`

func TestSoundData(t *testing.T) {
	checks, err := load(fstest.MapFS{"data/x.toml": {Data: []byte(sound)}})
	require.NoError(t, err)
	v, err := checks[0].verify()
	require.NoError(t, err)
	require.True(t, v.Holds)
}

func TestFaultsOfACheck(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{`id = "a"`, ``, `x.toml: check "": has no id`},
		{`source = "Bigelow et al. 1920"`, ``, `x.toml: check "a": has no source`},
		{`why_allowed = "definition of z"`, ``, `x.toml: check "a": does not say why its difference is allowed`},
		{`"memory"`, `"hearsay"`, `x.toml: check "a": basis "hearsay" is none of seen, memory, computed, common practice`},
		{`want = 0.1`, ``, `x.toml: check "a": has no wanted value`},
		{`want = 0.1`, `want = nan`, `x.toml: check "a": has no wanted value`},
		{`allowed = 1e-12`, ``, `x.toml: check "a": allows no difference; give one above 0`},
		{`allowed = 1e-12`, `allowed = 0.0`, `x.toml: check "a": allows no difference; give one above 0`},
		{`allowed = 1e-12`, `allowed = inf`, `x.toml: check "a": allows no difference; give one above 0`},
		{`want = 0.1`, "want = 0.1\nmisprint = 0.1", `x.toml: check "a": its misprint lies within twice what is allowed of the wanted value: it cannot be told apart`},
		{`lethal-rate`, `lethal-rates`, `x.toml: check "a": model "thermal.lethal-rates" is not in the registry`},
		{`t_c = 111.1, `, ``, `x.toml: check "a": t_c or t_f is not given`},
		{`t_c = 111.1`, `t_c = "warm"`, `x.toml: check "a": t_c is warm, which is not a number`},
		{`t_c = 111.1`, `t_c = 111.1, ph = 4`, `x.toml: check "a": ph is given, and the model has no use for it`},
		{`want = 0.1`, "want = 0.1\nwnat = 0.2", `data/x.toml: unknown key check.wnat`},
	} {
		_, err := load(fstest.MapFS{"data/x.toml": {Data: []byte(replaceOnce(t, sound, c.from, c.to))}})
		require.EqualError(t, err, c.want, "%s for %s", c.to, c.from)
	}
}

func TestFaultsAreToldTogether(t *testing.T) {
	_, err := load(fstest.MapFS{"data/x.toml": {Data: []byte(sound + sound + "[[check]]\n")}})
	require.EqualError(t, err, `x.toml: check "": has no id
x.toml: check "": has no source
x.toml: check "": does not say why its difference is allowed
x.toml: check "": basis "" is none of seen, memory, computed, common practice
x.toml: check "": has no wanted value
x.toml: check "": allows no difference; give one above 0
x.toml: check "": model "" is not in the registry
check "a" stands twice`)
	_, err = load(fstest.MapFS{"data/x.toml": {Data: []byte("[[check")}})
	require.ErrorContains(t, err, "data/x.toml: toml: line 1")
}

const tabled = `[[table]]
file = "data/t.csv"
id = "Low acid/{name}/{none}"
model = "thermal.f0"
given = { t_c = "{t}", time_min = "{min}" }
want = "{want}"
allowed_percent = "1"
why_allowed = "test"
source = "test"
basis = "computed"
`

func TestTable(t *testing.T) {
	files := fstest.MapFS{"data/x.toml": {Data: []byte(tabled)}, "data/t.csv": {Data: []byte("# note\nname,none,t,min,want\nOne Two,,111.1,30,3\nskipped,,111.1,30,\n")}}
	checks, err := load(files)
	require.NoError(t, err)
	c := checks[0]
	require.Equal(t, "low-acid/one-two", c.ID)
	require.Equal(t, map[string]any{"t_c": 111.1, "time_min": 30.0}, c.Given)
	require.InDelta(t, 0.03, c.Allowed, 1e-12)
	require.NotEqual(t, "low-acid/skipped", checks[1].ID)
}

func TestFaultsOfATable(t *testing.T) {
	for _, c := range []struct{ from, to, csv, want string }{
		{`data/t.csv`, `data/u.csv`, "", "data/x.toml: table data/u.csv: open data/u.csv: file does not exist"},
		{`[[table]]`, "[[table]]\nof = \"wine\"", "", `data/x.toml: table data/t.csv: there are no check values of "wine"`},
		{``, ``, "name,none,t,min,want\n", "data/x.toml: table data/t.csv: has no rows"},
		{`{t}`, `{temp}`, "name,none,t,min,want\na,,1,2,3\n", "data/x.toml: table data/t.csv: row 1: no column {temp}"},
		{``, ``, "name,none,t,min,want\na,,1,2,three\n", `data/x.toml: table data/t.csv: row 1: "three" is not a number`},
		{`"1"`, `"one"`, "name,none,t,min,want\na,,1,2,3\n", `data/x.toml: table data/t.csv: row 1: "one" is not a number`},
	} {
		files := fstest.MapFS{"data/x.toml": {Data: []byte(replaceOnce(t, tabled, c.from, c.to))}, "data/t.csv": {Data: []byte(c.csv)}}
		_, err := load(files)
		require.EqualError(t, err, c.want)
	}
}

// What a model cannot work out is an error that names the check, never a value.
func TestModelsThatCannotTell(t *testing.T) {
	for _, c := range []struct {
		model string
		given map[string]any
		want  string
	}{
		{"thermal.organism-time", map[string]any{"organism": "yeti", "reductions": 5.0}, `check "x": no organism "yeti"`},
		{"thermal.index", map[string]any{"index": "yeti"}, `check "x": no index "yeti"`},
		{"thermal.lethal-rate", map[string]any{"t_c": 20.0, "tref_c": 400.0, "z_c": 10.0}, `check "x": thermal: reference temperature 400 °C is outside 0 to 200 °C`},
		{"thermal.hold-over", map[string]any{"t_c": 20.0, "time_s": 1.0, "over_s": 0.0, "tref_c": 20.0, "z_c": 10.0}, `check "x": gives no number`},
		{"thermal.profile", map[string]any{"t_c": []float64{1, 2}, "time_s": []float64{1}, "tref_c": 20.0, "z_c": 10.0}, `check "x": 1 times for 2 temperatures`},
		{"thermal.rate-sum", map[string]any{"rule": "midpoint", "t_c": []float64{1}, "step_s": 1.0, "tref_c": 20.0, "z_c": 10.0}, `check "x": rule "midpoint" is none of rectangle, left, trapezoid`},
		{"acid.ph", map[string]any{"composition": "citric", "t_c": 25.0}, `check "x": "citric" is not pairs of component and molality`},
		{"acid.ph", map[string]any{"composition": "citric much", "t_c": 25.0}, `check "x": "much" is not a molality`},
		{"acid.pk", map[string]any{"acid": "citric", "step": 4.0}, `check "x": no step 4 of acid "citric"`},
		{"acid.complex", map[string]any{"composition": "citric 0.01", "metal": "Ca2+", "ligand": "Cit3-", "complex": "CaCit-", "t_c": 25.0}, `check "x": the solution has no "CaCit-"`},
		{"acid.solubility", map[string]any{"solid": "calcite", "composition": "carbonic 0.01", "ions": "Ca2+", "t_c": 25.0}, `check "x": "Ca2+" is not pairs of component and molality`},
		{"acid.saturation", map[string]any{"solid": "chalk", "composition": "carbonic 0.01", "t_c": 25.0}, `check "x": acid: no mineral "chalk"; Minerals lists the known ones`},
		{"acid.ph-of-one", map[string]any{"acid": "yeti"}, `check "x": no acid "yeti"`},
		{"acid.titratable-factor", map[string]any{"acid": "yeti"}, `check "x": no titratable acid "yeti"`},
		{"carbonation.correlation", map[string]any{"equation": "yeti"}, `check "x": no equation "yeti"`},
		{"carbonation.pack-pair", map[string]any{"pack": "gourd"}, `check "x": no pack "gourd"`},
		{"protein.zero-charge-ph", map[string]any{"protein": "yeti"}, `check "x": no protein "yeti"`},
		{"protein.molar-mass", map[string]any{"protein": "soy", "part": "yeti"}, `check "x": soy has no part "yeti"`},
		{"protein.amino-acids", map[string]any{"protein": "soy", "amino": "yeti"}, `check "x": no amino acids "yeti"`},
		{"protein.more-amino-acids", map[string]any{"protein": "soy", "than": "pea", "analysis": 99.0, "amino": "leucine"}, `check "x": pea has no analysis 99`},
		{"law.hot-fill-hold", map[string]any{"ph": 7.0, "t_c": 80.0}, `check "x": no hot fill figure at pH 7`},
		{"law.hot-fill-hold", map[string]any{"ph": 4.0, "t_c": 20.0}, `check "x": no hold at 20 °C`},
		{"law.schedule-temperature", map[string]any{"food": "milk", "market": "US", "time_s": 77.0}, `check "x": no such line for milk in US`},
		{"law.free-acid", map[string]any{"ingredient": "yeti"}, `check "x": no preservative "yeti"`},
		{"law.undissociated", map[string]any{"acid": "yeti"}, `check "x": no preserving acid "yeti"`},
		{"law.figure", map[string]any{"row": "yeti"}, `check "x": no row "yeti"`},
		{"law.figure", map[string]any{"row": "us-low-acid", "figure": "yeti"}, `check "x": row "us-low-acid" has no figure "yeti"`},
		{"ingredient.molar-mass", map[string]any{"ingredient": "yeti"}, `check "x": no ingredient "yeti"`},
	} {
		_, err := Check{ID: "x", Model: c.model, Given: c.given}.verify()
		require.EqualError(t, err, c.want, c.model)
	}
}

func replaceOnce(t *testing.T, text, from, to string) string {
	t.Helper()
	if from != "" {
		require.Contains(t, text, from)
	}
	return strings.Replace(text, from, to, 1)
}
