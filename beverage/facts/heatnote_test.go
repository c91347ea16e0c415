package facts

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/beverage"
	"posset/beverage/law"
	"posset/thermal"
)

func TestAStatedHoldAgainstStatutoryPairs(t *testing.T) {
	f := &Facts{Drink: &beverage.Drink{}}
	f.Process.DrinkHeat = DrinkHeat{TempC: beverage.Say(75.0), TimeS: beverage.Say(15.0)}
	n := f.pairNote(beverage.US, law.FoodRichMilk)
	require.Len(t, n, 1)
	assert.Equal(t, "the stated hold of 15 s at 75 °C reaches the pair of 75 C for 15 s: as stated, not as recorded, and for the food the text names", n[0].Text)
	f.Process.DrinkHeat.TempC = beverage.Say(74.9)
	n = f.pairNote(beverage.US, law.FoodRichMilk)
	assert.Equal(t, "the stated hold of 15 s at 74.9 °C reaches none of 7 pairs of the text", n[0].Text)
	f.Process.DrinkHeat.Medium = true
	assert.Empty(t, f.pairNote(beverage.US, law.FoodRichMilk), "the medium's heat is not the drink's")
	f.Process.DrinkHeat = DrinkHeat{TempC: beverage.Say(75.0)}
	assert.Empty(t, f.pairNote(beverage.US, law.FoodRichMilk), "without a time nothing is reached")
	f.Process.DrinkHeat = DrinkHeat{TempC: beverage.Say(140.0), TimeS: beverage.Say(4.0)}
	n = f.pairNote(beverage.EU, law.FoodUHTMilk)
	assert.Contains(t, n[0].Text, "reaches none of 1 pairs", "a text without a time is reached by none")
}

// A pack that follows at once has the units of the spray, and a slower one never
// more on the way up.
func TestTunnelEstimate(t *testing.T) {
	zones := []beverage.Zone{{TempC: 45, TimeS: 300}, {TempC: 62, TimeS: 900}}
	spray := thermal.PU.LethalRate(45)*5 + thermal.PU.LethalRate(62)*15
	assert.InEpsilon(t, spray, zoneUnits(zones, 45, 1e-6), 0.01) // the first piece of a zone is a straight line
	last := math.Inf(1)
	for _, f := range []float64{1, 5, 10, 20} {
		u := zoneUnits(zones, 10, f)
		assert.Less(t, u, last)
		last = u
	}
}

// The least of the probes counts, at the coolest of each stretch.
func TestHotFillOfARecord(t *testing.T) {
	band, ok := law.HotFill(3.5)
	require.True(t, ok)
	hold := make([]float64, 10)
	for i := range hold {
		hold[i] = 85
	}
	b := bandBound(band)
	got := historyOf(hold...).least(b, 0.5, 60)
	assert.InEpsilon(t, 9*b.LethalRate(84.5), got, 1e-9)
	assert.Zero(t, historyOf(hold...).least(b, 0.5, 30), "readings that are too far apart support nothing")
	assert.Zero(t, historyOf(40, 40, 40).least(b, 0.5, 60), "nothing is published so cool")
}

// A record in the closed pack is held against the pairs of each market; one
// probe that stays too short is enough, and a tube's record shows no stay.
func TestARecordAgainstStatutoryPairs(t *testing.T) {
	const text = "Time (min),Pack 1 product (C),Pack 2 product (C)\n0,40.1,40.2\n1,52.2,52.1\n2,62.3,61.9\n3,69.2,68.8\n4,73.2,72.4\n5,73.4,72.3\n6,73.3,72.4\n7,66.3,66.1\n8,60.2,60.3\n"
	run := readLog(t, t.TempDir(), text)
	f := &Facts{Drink: &beverage.Drink{}, Records: Records{Logs: []Run{*run}}}
	f.Records.Logs[0].Result.File = "run.csv"
	f.Process.Route = beverage.Tunnel
	n := f.recordedPairs(beverage.US, law.FoodMilk)
	require.Len(t, n, 1)
	assert.Equal(t, "run.csv reaches none of 7 pairs of the text at its coldest product probe", n[0].Text)
	warmer := readLog(t, t.TempDir(), strings.ReplaceAll(text, ",72.", ",73."))
	f.Records.Logs[0] = *warmer
	f.Records.Logs[0].Result.File = "run.csv"
	n = f.recordedPairs(beverage.US, law.FoodMilk)
	assert.Equal(t, "run.csv reaches the pair of 72 C for 15 s at its coldest product probe, unbroken and with the tolerance off, if the probe stood in the coldest place; for the food the text names", n[0].Text)
	f.Process.Route = beverage.Flash
	assert.Empty(t, f.recordedPairs(beverage.US, law.FoodMilk))
}
