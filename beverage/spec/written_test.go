package spec_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage/spec"
)

func TestWritten(t *testing.T) {
	file := filepath.Join(t.TempDir(), "drink.toml")
	text := `[drink]
name = "Quince water"
[[ingredient]]
name = "citric  acid"
amount = "1 g/L"
[[ingredient]]
name = "citric acid"
amount = "2 g/L"
treatments = ["pasteurized", "sterilized"]
[measured]
ph = 3.20
[[bench]]
amounts = { "citric acid" = "1.8 g/L" }
ph = 3.1
[process.scheduled]
dated = 2026-03-02
[[process.zone]]
temperature = "45 C"
time = "6 min"
[[process.critical]]
what = "pH"
at_most = 3.5
`
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	d, got, err := spec.ReadWritten(file, spec.Options{})
	require.NoError(t, err)
	require.Equal(t, "Quince water", d.Name)
	require.Equal(t, []spec.Written{
		{Key: "drink.name", Text: "Quince water", Line: 2},
		{Key: "ingredient.name", Item: "citric acid", Text: "citric  acid", Line: 4},
		{Key: "ingredient.amount", Item: "citric acid", Text: "1 g/L", Line: 5},
		{Key: "ingredient.name", Item: "citric acid (2)", Text: "citric acid", Line: 7},
		{Key: "ingredient.amount", Item: "citric acid (2)", Text: "2 g/L", Line: 8},
		{Key: "ingredient.treatments", Item: "citric acid (2)", Text: "pasteurized, sterilized", Line: 9},
		{Key: "measured.ph", Text: "3.20", Line: 11},
		{Key: "bench.amounts.citric acid", Item: "1", Text: "1.8 g/L", Line: 13},
		{Key: "bench.ph", Item: "1", Text: "3.1", Line: 14},
		{Key: "process.scheduled.dated", Text: "2026-03-02", Line: 16},
		{Key: "process.zone.temperature", Item: "1", Text: "45 C", Line: 18},
		{Key: "process.zone.time", Item: "1", Text: "6 min", Line: 19},
		{Key: "process.critical.what", Item: "pH", Text: "pH", Line: 21},
		{Key: "process.critical.at_most", Item: "pH", Text: "3.5", Line: 22},
	}, got)
}

func TestWrittenOfWhatIsNoSpec(t *testing.T) {
	_, _, err := spec.ReadWritten("none.toml", spec.Options{})
	require.EqualError(t, err, "none.toml: is not there; check the name and the folder")
}
