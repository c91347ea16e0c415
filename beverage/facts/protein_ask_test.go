package facts

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const retortedHold = "[process]\nroute = \"retort\"\nhold_temperature = \"121.1 C\"\nhold_time = \"20 min\"\n"

// What a recipe is asked for: sugar that reduces, calcium that is added and
// dissolves, phosphate and citrate by their charge, and gums.
func TestAskedOfARecipe(t *testing.T) {
	f := factsOf(t, `
[[ingredient]]
name = "skim milk"
amount = "500 g/L"
[[ingredient]]
name = "sucrose"
amount = "50 g/L"
[[ingredient]]
name = "glucose monohydrate"
amount = "20 g/L"
[[ingredient]]
name = "calcium chloride"
amount = "2 mmol/L"
[[ingredient]]
name = "calcium carbonate"
amount = "1 g/L"
[[ingredient]]
name = "disodium phosphate"
amount = "5 mmol/L"
[[ingredient]]
name = "trisodium citrate dihydrate"
amount = "3 mmol/L"
[[ingredient]]
name = "xanthan gum"
amount = "0.5 g/L"
`)
	assert.InDelta(t, 25+20, f.ReducingSugarGPerL().Mid, 3) // lactose of 500 g of milk, and the glucose
	assert.InDelta(t, 2, f.AddedCalciumMM().Mid, 0.02)
	assert.InDelta(t, 5*2+3*3, f.ChelatorMEqPerL().Mid, 0.3)
	assert.InDelta(t, 5*0.142, f.PhosphateGPerL().Mid, 0.01)
	assert.Equal(t, []string{"calcium carbonate"}, f.SlowCalcium())
	assert.Len(t, f.Gums(), 1)
}

// Nobody says what a described extract brings; a described juice is bounded by the
// juices that hold most, thicker by its Brix.
func TestPolyphenolBound(t *testing.T) {
	const extract = "[[ingredient]]\nname = \"sallow bark infusion\"\nkind = \"extract\"\namount = \"20 g/L\"\nph = 5.5\ntitratable_acidity = \"0.1 % as citric acid\"\n"
	const juice = "[[ingredient]]\nname = \"medlar juice\"\nkind = \"juice\"\namount = \"50 g/L\"\nph = 3.5\ntitratable_acidity = \"0.9 % as malic acid\"\n"
	high, unsaid := factsOf(t, extract).PolyphenolBound()
	assert.Zero(t, high)
	assert.Equal(t, []string{"sallow bark infusion"}, unsaid)
	high, unsaid = factsOf(t, juice).PolyphenolBound()
	assert.InDelta(t, 0.2, high, 0.01)
	assert.Empty(t, unsaid)
	high, _ = factsOf(t, juice+"brix = 64\n").PolyphenolBound()
	assert.InDelta(t, 0.8, high, 0.02)
	high, unsaid = factsOf(t, "[[ingredient]]\nname = \"caffeine\"\namount = \"0.3 g/L\"\n").PolyphenolBound()
	assert.Zero(t, high)
	assert.Empty(t, unsaid)
}

// The heat is that of the hold; half of it said is none said.
func TestHeatAsStated(t *testing.T) {
	for rest, want := range map[string]float64{
		retortedHold: 121.1,
		"[process]\nroute = \"hot fill\"\nfill_temperature = \"88 C\"\nhold_temperature = \"92 C\"\nhold_time = \"30 s\"\npack_hold_time = \"3 min\"\n":                           92,
		"[process]\nroute = \"tunnel pasteurization\"\n[[process.zone]]\ntemperature = \"50 C\"\ntime = \"5 min\"\n[[process.zone]]\ntemperature = \"64 C\"\ntime = \"10 min\"\n": 64,
	} {
		f := skimMilk(t, rest)
		assert.True(t, f.HoldStated())
		assert.InDelta(t, want, f.HeatC().High, 1e-9)
	}
	for _, rest := range []string{"", "[process]\nroute = \"retort\"\nhold_temperature = \"121 C\"\n", "[process]\nroute = \"hot fill\"\nfill_temperature = \"88 C\"\npack_hold_time = \"3 min\"\n"} {
		f := skimMilk(t, rest)
		assert.False(t, f.HoldStated(), rest)
		assert.False(t, f.HeatC().Known(), rest)
		assert.False(t, f.PHDrop().Known(), rest)
	}
}

// 20 minutes at 140 °C take milk of pH 6.7 to about 5.8 (Fox & McSweeney 1998, p.
// 370); a retort at 121 °C takes it down by a tenth or so.
func TestPHDrop(t *testing.T) {
	f := skimMilk(t, "[process]\nroute = \"retort\"\nhold_temperature = \"140 C\"\nhold_time = \"20 min\"\n")
	assert.InDelta(t, 0.8, f.PHDrop().Mid, 0.1)
	drop := skimMilk(t, retortedHold).PHDrop()
	assert.Less(t, drop.High, 0.25)
	assert.Greater(t, drop.High, 0.05)
}

// CO2 takes the lower end of the pH down, and says nothing of a still drink.
func TestWithGas(t *testing.T) {
	still, sparkling := skimMilk(t, ""), skimMilk(t, "[carbonation]\nvolumes = 2\n")
	assert.Equal(t, still.PH.Decides, still.WithGas())
	assert.Less(t, sparkling.WithGas().Low, sparkling.PH.Decides.Low-0.3)
	assert.Equal(t, sparkling.PH.Decides.High, sparkling.WithGas().High)
}

// Calcium that is sold as insoluble is not dissolved near neutral, and is in acid;
// salt beside the protein's own charge is less than all of it.
func TestIons(t *testing.T) {
	const whey = "[[ingredient]]\nname = \"whey protein isolate\"\namount = \"50 g/L\"\n"
	const chalk = "[[ingredient]]\nname = \"calcium carbonate\"\namount = \"1 g/L\"\n"
	at := func(pH string) string {
		return "[measured]\nph = " + pH + "\nph_temperature = \"25 C\"\nph_tolerance = 0.05\n"
	}
	plain, neutral, sour := factsOf(t, whey+at("6.8")), factsOf(t, whey+chalk+at("6.8")), factsOf(t, whey+chalk+at("3.2"))
	assert.InDelta(t, plain.Ions.CalciumMM.Mid, neutral.Ions.CalciumMM.Mid, 0.1)
	assert.Greater(t, sour.Ions.CalciumMM.Mid, plain.Ions.CalciumMM.Mid+8)
	assert.Less(t, sour.Ions.SaltMM.Mid, sour.Ions.IonicMM.Mid)
	unknown := factsOf(t, whey+"[[ingredient]]\nname = \"quillwort essence\"\namount = \"1 g/L\"\n"+at("6.8"))
	assert.False(t, unknown.Ions.SaltMM.Known())
	assert.False(t, unknown.Ions.CalciumMM.Known())
}

// On another route the protein's heat is not that of the stated one.
func TestDenaturedOnAnotherRoute(t *testing.T) {
	f := factsOf(t, "[[ingredient]]\nname = \"whey protein isolate\"\namount = \"40 g/L\"\n[measured]\nph = 6.7\nph_temperature = \"25 C\"\nph_tolerance = 0.05\n[process]\nroute = \"flash pasteurization\"\nhold_temperature = \"73 C\"\nhold_time = \"15 s\"\n")
	assert.Less(t, f.Protein.Denatured.High, 0.1)
	assert.False(t, f.WithRoute("retort").Protein.Denatured.Known())
	assert.Zero(t, f.WithRoute("cold fill").Protein.Denatured.High)
	assert.Less(t, f.Protein.Denatured.High, 0.1)
}
