package heatpen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
)

var sterilize = Target{Minutes: 6, Basis: thermal.F0.Bound()}

// TestConductionFactors: at the centre of a finite cylinder fh follows from size
// and diffusivity, jh is 2.04 without come-up (Ball and Olson 1957, recalled).
func TestConductionFactors(t *testing.T) {
	m := medium{retortC: 121.1, coolingC: 20, coolAtS: 7200}
	c, err := Fit(testOf("can", halfLitreCan, m, 60, 14400, 30))
	require.NoError(t, err)
	assert.InEpsilon(t, halfLitreCan.theoryFhMin(), c.FhMin, 0.015)
	assert.InEpsilon(t, 2.04, c.Jh, 0.05)
	assert.False(t, c.Broken)
	assert.True(t, c.Cooled)
	assert.InEpsilon(t, c.FhMin, c.FcMin, 0.025)
	assert.Greater(t, c.Heating.R2, 0.9999)
}

func TestStirredFactors(t *testing.T) {
	m := medium{retortC: 121.1, coolingC: 20, coolAtS: 1500}
	c, err := Fit(testOf("can", lumped{fMin: 6}, m, 60, 3000, 10))
	require.NoError(t, err)
	assert.InEpsilon(t, 6, c.FhMin, 1e-3)
	assert.InEpsilon(t, 1, c.Jh, 1e-3)
	assert.InEpsilon(t, 6, c.FcMin, 1e-3)
	assert.InEpsilon(t, 1, c.Jc, 1e-3)
	assert.InEpsilon(t, 6, c.Heating.FHighMin, 1e-3)
}

func TestBrokenHeating(t *testing.T) {
	m := medium{retortC: 121.1, coolingC: 20, coolAtS: 3600}
	c, err := Fit(testOf("can", lumped{fMin: 6, f2Min: 25, breakS: 420}, m, 60, 5400, 10))
	require.NoError(t, err)
	require.True(t, c.Broken)
	assert.InEpsilon(t, 6, c.FhMin, 0.02)
	assert.InEpsilon(t, 25, c.F2Min, 0.02)
	assert.InEpsilon(t, 7, c.BreakMin, 0.02)
}

// TestProcessesDeliver: every process time, at the conditions of the test and
// moved to others, is simulated, and delivers the target.
func TestProcessesDeliver(t *testing.T) {
	m := medium{fromC: 60, retortC: 121.1, coolingC: 20, comeUpS: 480}
	processes := []Process{
		{RetortC: 121.1, InitialC: 60, CoolingC: 20, ComeUpMin: 8},
		{RetortC: 118, InitialC: 40, CoolingC: 10, ComeUpMin: 8},
		{RetortC: 125, InitialC: 75, CoolingC: 25, ComeUpMin: 8},
		{RetortC: 121.1, InitialC: 60, CoolingC: 20, ComeUpMin: 4},
	}
	for name, x := range map[string]struct {
		s     simulator
		coolS float64
		most  float64 // of the target that Ball's formula delivers
	}{
		"conduction": {halfLitreCan, 6600, 2}, "stirred": {lumped{fMin: 6}, 2400, 1.15},
		"thickens": {lumped{fMin: 6, f2Min: 25, breakS: 900}, 4800, 1.8},
	} {
		m.coolAtS = x.coolS
		test := testOf(name, x.s, m, 60, x.coolS+5400, 10)
		study, err := StudyOf([]Test{test}, sterilize, processes[0])
		require.NoError(t, err, name)
		for _, p := range processes {
			ball, err := study.Curves[0].BallTime(sterilize, p)
			require.NoError(t, err)
			general, err := GeneralTime(test, study.Curves[0], sterilize, p)
			require.NoError(t, err)
			byBall, byGeneral := delivered(x.s, p, sterilize.Basis, ball.CountMin), delivered(x.s, p, sterilize.Basis, general.CountMin)
			assert.GreaterOrEqual(t, byBall, 6., "%s %+v", name, p)
			assert.LessOrEqual(t, byBall, 6*x.most, "%s %+v", name, p)
			assert.GreaterOrEqual(t, byGeneral, 6*0.995, "%s %+v", name, p)
			assert.LessOrEqual(t, byGeneral, 6*1.3, "%s %+v", name, p)
		}
	}
}
