package spec_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
	"posset/beverage/spec"
)

func TestReadKey(t *testing.T) {
	d, err := spec.ReadKey("package.fill", "0.33 L")
	require.NoError(t, err)
	require.InDelta(t, 330, d.Package.FillML.V, 1e-9)
	d, err = spec.ReadKey("measured.ph", " 3.2 ")
	require.NoError(t, err)
	require.Equal(t, 3.2, d.Measured.PH.V)
	d, err = spec.ReadKey("market.jurisdiction", "US, EU")
	require.NoError(t, err)
	require.Equal(t, []beverage.Market{beverage.US, beverage.EU}, d.Markets)
	d, err = spec.ReadKey("ingredient.amount", "20 g/L")
	require.NoError(t, err)
	require.Equal(t, 20.0, d.Ingredients[0].Amount.V.Value)
	d, err = spec.ReadKey("drink.live_cultures", "true")
	require.NoError(t, err)
	require.True(t, d.LiveCultures.V)
	for key, c := range map[string][2]string{
		"measured.ph":         {"sour", `"sour" is a text; write a bare number from 0 to 14`},
		"package.type":        {"tin", `"tin" is unknown; write one of "can", "steel can", "aluminium bottle", "glass bottle", "PET bottle", "heat-set PET bottle", "PP bottle", "HDPE bottle", "carton", "pouch", "cup" or "keg"`},
		"market.jurisdiction": {"US, USA", `"USA" is unknown; write "US"`},
		"package.brimful":     {"352", `"352" has no unit; write "352 mL" or "352 fl oz"`},
		"drink.name":          {"a\nb", `"a\nb" holds a control character; write plain letters`},
		"no.key":              {"1", "no.key is no key of a spec"},
	} {
		_, err := spec.ReadKey(key, c[0])
		require.EqualError(t, err, c[1])
	}
}

// Whatever a text holds, quoted it is one value: the reader gives it back or says
// what is wrong with it, and no other key is set by it.
func TestQuotedIsOneValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		d, err := spec.ReadKey("process.scheduled.reference", text)
		if err != nil {
			return
		}
		if d.Process.Route.Known || d.Process.Scheduled == nil || !d.Process.Scheduled.Reference.Known {
			t.Fatalf("%q sets something else", text)
		}
	})
}
