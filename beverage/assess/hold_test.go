package assess

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/beverage"
)

// What is not known never makes a tube better: neither a figure left out nor a
// wider tolerance raises the credit or shortens the length.
func TestATubeOfWhichLessIsKnownIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		say := func(name string, low, high float64) beverage.Given[float64] {
			return beverage.Say(rapid.Float64Range(low, high).Draw(t, name))
		}
		target := beverage.Target{Text: "F0 6 min", Kind: beverage.TargetMinutes, Minutes: 6, TrefC: 121.1, ZC: 10}
		full := HoldOptions{Target: &target, BoreM: say("bore", 0.01, 0.1).V, LengthM: say("length", 1, 100), FlowLPerH: say("flow", 100, 20000).V,
			TempC: say("temperature", 110, 150).V, ToleranceC: 0.5, MeteredC: say("metered", 1, 100), Brix: say("brix", 1, 40), ViscosityMPS: say("viscosity", 0.3, 50)}
		less := full
		switch rapid.IntRange(0, 3).Draw(t, "what goes") {
		case 0:
			less.MeteredC = beverage.Given[float64]{}
		case 1:
			less.ViscosityMPS, less.Brix = beverage.Given[float64]{}, beverage.Given[float64]{}
		case 2:
			less.ToleranceC++
		case 3:
			less.ViscosityMPS = beverage.Given[float64]{}
			full.ViscosityMPS = beverage.Say(4 * sugarMPaS(t, less))
		}
		a, err := Hold(full)
		require.NoError(t, err)
		b, err := Hold(less)
		require.NoError(t, err)
		assert.LessOrEqual(t, *b.CreditedMinutes, *a.CreditedMinutes*(1+1e-5))
		if a.LengthNeededM == nil {
			assert.Nil(t, b.LengthNeededM)
		} else if b.LengthNeededM != nil {
			assert.GreaterOrEqual(t, *b.LengthNeededM, *a.LengthNeededM*(1-1e-5))
		}
		if *a.Outcome != beverage.Meets {
			assert.NotEqual(t, beverage.Meets, *b.Outcome)
		}
	})
}

// sugarMPaS is the viscosity that Brix alone stands for.
func sugarMPaS(t *rapid.T, o HoldOptions) float64 {
	res, err := o.tube().Residence()
	require.NoError(t, err)
	return res.ViscosityMPS
}

// Found at random: metered ice cold, more mass seems to pass than may, and the
// flow seemed turbulent.
func TestATubeMeteredNobodyKnowsWhereIsNoMoreTurbulent(t *testing.T) {
	target := beverage.Target{Text: "F0 6 min", Kind: beverage.TargetMinutes, Minutes: 6, TrefC: 121.1, ZC: 10}
	o := HoldOptions{Target: &target, BoreM: 0.049549, LengthM: beverage.Say(3.0), FlowLPerH: 4842.3, TempC: 119.575, ToleranceC: 0.5,
		MeteredC: beverage.Say(57.089), Brix: beverage.Say(39.865), ViscosityMPS: beverage.Say(2.0227)}
	warm, err := Hold(o)
	require.NoError(t, err)
	o.MeteredC = beverage.Given[float64]{}
	unknown, err := Hold(o)
	require.NoError(t, err)
	assert.GreaterOrEqual(t, *unknown.LengthNeededM, *warm.LengthNeededM)
	assert.Equal(t, "flow that may be laminar, by where it was metered", unknown.ShareBasis)
}
