package checkvalue

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"posset/beverage"
)

// TestPublishedValues is the table that `posset verify` prints.
func TestPublishedValues(t *testing.T) {
	result, err := Run(context.Background(), "")
	require.NoError(t, err)
	for _, v := range result.Checks {
		if !(math.Abs(v.Ours-v.Published) <= v.Allowed) || !v.Holds {
			t.Errorf("%s (%s): ours %.8g, published %.8g within %g (%s); %s", v.ID, v.Condition, v.Ours, v.Published, v.Allowed, v.Why, v.Source)
		}
	}
	require.Zero(t, result.Out)
}

// The number of checks of each package is pinned, so that none is lost in silence.
// Those of ingredients follow the library and only have a floor.
func TestEveryPackageIsChecked(t *testing.T) {
	checks, err := All()
	require.NoError(t, err)
	count := map[string]int{}
	for _, c := range checks {
		pkg, _, _ := strings.Cut(c.Model, ".")
		count[pkg]++
	}
	require.GreaterOrEqual(t, count["ingredient"], 80)
	delete(count, "ingredient")
	require.Equal(t, map[string]int{"acid": 329, "carbonation": 177, "facts": 91, "heatpen": 77, "holdtube": 17, "law": 159, "protein": 67, "thermal": 114}, count)
}

func TestEveryModelHasAPublishedValue(t *testing.T) {
	checks, err := All()
	require.NoError(t, err)
	used := map[string]bool{}
	for _, c := range checks {
		used[c.Model] = true
	}
	for _, name := range Models() {
		require.True(t, used[name], "model %s recomputes nothing", name)
	}
}

// Every row of the published tables becomes a check.
func TestNoRowOfATableIsLeftOut(t *testing.T) {
	var f file
	_, err := toml.DecodeFS(ownData, "data/tables.toml", &f)
	require.NoError(t, err)
	byFile := map[string][]table{}
	for _, tab := range f.Table {
		byFile[tab.Of+":"+tab.File] = append(byFile[tab.Of+":"+tab.File], tab)
	}
	for _, name := range append(append(allTables(t, "acid", "."), allTables(t, "facts", ".")...), append(allTables(t, "carbonation", "."), allTables(t, "", "data")...)...) {
		of, path, _ := strings.Cut(name, ":")
		files, err := tablesOf(of, ownData)
		require.NoError(t, err)
		rows, err := readRows(files, path)
		require.NoError(t, err)
		for i, r := range rows {
			require.True(t, anyTakes(byFile[name], r), "%s row %d is in no check", name, i+1)
		}
	}
}

func allTables(t *testing.T, of, folder string) []string {
	files, err := tablesOf(of, ownData)
	require.NoError(t, err)
	entries, err := fs.ReadDir(files, folder)
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), ".csv") {
			names = append(names, of+":"+strings.TrimPrefix(folder+"/"+e.Name(), "./"))
		}
	}
	require.NotEmpty(t, names)
	return names
}

func anyTakes(tables []table, r row) bool {
	for _, t := range tables {
		if c, err := t.check(r); t.takes(r) && err == nil && c != nil {
			return true
		}
	}
	return false
}

func TestRunTakesWhatTheFilterHolds(t *testing.T) {
	byID, err := Run(context.Background(), "ACID/Water-pk/25")
	require.NoError(t, err)
	require.Len(t, byID.Checks, 1)
	require.Equal(t, beverage.VerifySchema, byID.Schema)
	v := byID.Checks[0]
	require.InEpsilon(t, v.Ours-13.995, v.Difference, 0.005)
	require.Equal(t, "t 25 °C", v.Condition)
	require.Equal(t, beverage.Computed, v.Basis)

	bySource, err := Run(context.Background(), "Breidt et al. 2014")
	require.NoError(t, err)
	require.Greater(t, len(bySource.Checks), 40)

	_, err = Run(context.Background(), "rhubarb")
	require.EqualError(t, err, `no check has "rhubarb" in its id, model or source; models are `+strings.Join(Models(), ", "))
}

func TestRunEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Run(ctx, "")
	require.ErrorIs(t, err, context.Canceled)
}

func TestResultIsJSON(t *testing.T) {
	result, err := Run(context.Background(), "misprint")
	require.NoError(t, err)
	_, err = json.Marshal(result)
	require.NoError(t, err)
	for _, v := range result.Checks {
		if v.ID == "thermal/misprint/swapped-8.87" {
			require.Equal(t, "t 116 °C, time 25 min, tref 121 °C, z 11 C°; the source prints 8.87, which is wrong", v.Condition)
			return
		}
	}
	t.Error("the misprint 8.87 is not told")
}

func ExampleRun() {
	result, err := Run(context.Background(), "thermal/lecture/rate")
	for _, v := range result.Checks {
		fmt.Printf("%s: %g published, %.6g ours\n", v.Condition, v.Published, v.Ours)
	}
	fmt.Println(result.Out, "out of tolerance", err)
	// Output:
	// t 101.1 °C, tref 121.1 °C, z 10 C°: 0.01 published, 0.01 ours
	// t 111.1 °C, tref 121.1 °C, z 10 C°: 0.1 published, 0.1 ours
	// t 121.1 °C, tref 121.1 °C, z 10 C°: 1 published, 1 ours
	// t 131.1 °C, tref 121.1 °C, z 10 C°: 10 published, 10 ours
	// t 141.1 °C, tref 121.1 °C, z 10 C°: 100 published, 100 ours
	// 0 out of tolerance <nil>
}
