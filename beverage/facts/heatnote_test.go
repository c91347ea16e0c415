package facts

import (
	"math"
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
