package assess_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/assess"
	"posset/beverage/spec"
)

func mapOf(t *testing.T, file string, over assess.MapOver) *beverage.ProteinMap {
	t.Helper()
	d, err := spec.Read("../../testdata/drinks/"+file, spec.Options{})
	require.NoError(t, err)
	m, err := assess.ProteinMap(context.Background(), d, over, beverage.Given[float64]{})
	require.NoError(t, err)
	require.Len(t, m.Cells, len(m.X.Values)*len(m.Y.Values))
	return m
}

func cellAt(t *testing.T, m *beverage.ProteinMap, x, y float64) beverage.MapCell {
	t.Helper()
	i := slices.IndexFunc(m.Cells, func(c beverage.MapCell) bool { return c.X == x && c.Y == y })
	require.GreaterOrEqual(t, i, 0, "no cell at %v, %v", x, y)
	return m.Cells[i]
}

// At each place the map says what the findings say of the drink with that pH and
// hold in its spec.
func TestMapSaysWhatTheFindingsSay(t *testing.T) {
	for _, file := range []string{"01-clear-whey-still.toml", "04-neutral-clear-still.toml", "05-milky-casein.toml"} {
		m := mapOf(t, file, assess.MapTemperature)
		for _, place := range [][2]float64{{3.25, 90}, {4.5, 70}, {5.25, 120}, {6.75, 80}, {6.75, 140}} {
			d, err := spec.Read("../../testdata/drinks/"+file, spec.Options{})
			require.NoError(t, err)
			d.Measured = beverage.Readings{PH: beverage.Say(place[0]), PHTolerance: beverage.Say(0.125), PHDegassed: beverage.Say(true), PHTempC: beverage.Say(25.0)}
			p := &d.Process
			hold := p.HoldS
			p.HoldTempC = beverage.Say(place[1])
			p.FillTempC.V, p.PackHoldC.V = min(p.FillTempC.V, place[1]), min(p.PackHoldC.V, place[1])
			if len(p.Records) > 0 {
				continue
			}
			require.True(t, hold.Known, file)
			r, err := assess.Protein(context.Background(), d, assess.Options{})
			require.NoError(t, err)
			var want, got []string
			for _, f := range r.Flags {
				want = append(want, f.ID+" "+f.Level.String())
			}
			for _, f := range append(cellAt(t, m, place[0], place[1]).Findings, m.Everywhere...) {
				got = append(got, f.ID+" "+f.Level.String())
			}
			slices.Sort(want)
			slices.Sort(got)
			require.Equal(t, slices.Compact(want), slices.Compact(got), "%s at %v", file, place)
		}
	}
}

func TestMapTellsCurdZoneAndDoubt(t *testing.T) {
	m := mapOf(t, "05-milky-casein.toml", assess.MapConcentration)
	require.Equal(t, beverage.Stop, *cellAt(t, m, 4.5, m.Y.Values[3]).Level)
	require.Equal(t, "casein-acid-curd", cellAt(t, m, 4.5, m.Y.Values[3]).Findings[0].ID)
	require.Contains(t, []beverage.Level{beverage.Review, beverage.Note}, *cellAt(t, m, 7, m.Y.Values[3]).Level)

	m = mapOf(t, "04-neutral-clear-still.toml", assess.MapTemperature)
	require.Empty(t, cellAt(t, m, 6.75, 100).CannotTell)
	require.Equal(t, []string{"how much whey protein unfolds: published rate constants are for milk near pH 6.7 and never hold below pH 4.0"}, cellAt(t, m, 3, 100).CannotTell)
	require.Equal(t, []string{"how much whey protein unfolds: all of the heat lies below 70 °C, where the constants are extended from above"}, cellAt(t, m, 6.75, 60).CannotTell)
	require.Equal(t, "clear", cellAt(t, m, 3.25, 100).Looks)
	require.Less(t, *cellAt(t, m, 6.75, 80).Denatured, *cellAt(t, m, 6.75, 140).Denatured)
	for _, s := range m.Signs {
		require.Regexp(t, "^[A-Z]$", s.Letter, s.ID)
	}
}

// A hold that is asked for takes the place of the stated one; the drink that nobody
// says how hot it gets has no place on the map.
func TestMapTakesAHoldThatIsAskedFor(t *testing.T) {
	d, err := spec.Read("../../testdata/drinks/07-hydrolysate-sparkling.toml", spec.Options{})
	require.NoError(t, err)
	m, err := assess.ProteinMap(context.Background(), d, assess.MapTemperature, beverage.Say(30.0))
	require.NoError(t, err)
	require.Equal(t, "held for 30 s at each temperature", m.Heat)
	require.Nil(t, m.Drink.Y)
	require.Equal(t, []string{"the route, cold fill, does not heat: drawn as if the drink were held in a tube"}, m.Notes)
}

// More protein never takes a gel away.
func TestMapGelsMoreWithMoreProtein(t *testing.T) {
	m := mapOf(t, "04-neutral-clear-still.toml", assess.MapConcentration)
	gels := func(x, y float64) bool {
		return slices.ContainsFunc(cellAt(t, m, x, y).Findings, func(f beverage.MapFinding) bool { return f.ID == "protein-gel" })
	}
	seen := false
	for _, x := range m.X.Values {
		for i := 1; i < len(m.Y.Values); i++ {
			require.False(t, gels(x, m.Y.Values[i-1]) && !gels(x, m.Y.Values[i]), "pH %v, %v g/L", x, m.Y.Values[i])
			seen = seen || gels(x, m.Y.Values[i])
		}
	}
	require.True(t, seen)
}

func TestMapNeedsProteinAndHold(t *testing.T) {
	for text, want := range map[string]string{
		"[drink]\nname = \"x\"\n[[ingredient]]\nname = \"sucrose\"\namount = \"80 g/L\"\n":              "no protein whose amount is known, so there is no map of it",
		"[drink]\nname = \"x\"\n[[ingredient]]\nname = \"whey protein isolate\"\namount = \"30 g/L\"\n": "says neither how hot nor how long the drink is held, so there is no map over temperature; give process.hold_temperature and process.hold_time, zones or a record, or --hold-time, or map over concentration",
	} {
		d, err := spec.Read("-", spec.Options{Stdin: strings.NewReader(text)})
		require.NoError(t, err)
		_, err = assess.ProteinMap(context.Background(), d, assess.MapTemperature, beverage.Given[float64]{})
		require.EqualError(t, err, want)
	}
}

func BenchmarkProteinMap(b *testing.B) {
	d, err := spec.Read("../../testdata/drinks/05-milky-casein.toml", spec.Options{})
	require.NoError(b, err)
	for b.Loop() {
		_, err := assess.ProteinMap(context.Background(), d, assess.MapConcentration, beverage.Given[float64]{})
		require.NoError(b, err)
	}
}
