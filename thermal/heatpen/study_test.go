package heatpen

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
)

func TestStudyOfThreeContainers(t *testing.T) {
	m := medium{fromC: 20, retortC: 121.1, coolingC: 20, comeUpS: 300, coolAtS: 2400}
	tests := []Test{
		testOf("left", lumped{fMin: 6}, m, 62, 4800, 10),
		testOf("middle", lumped{fMin: 7.5}, m, 60, 4800, 10),
		testOf("right", lumped{fMin: 6.5}, m, 58, 4800, 10),
	}
	s, err := StudyOf(tests, sterilize, Process{RetortC: 120, InitialC: 55, CoolingC: 15, ComeUpMin: 5})
	require.NoError(t, err)
	assert.Equal(t, "middle", s.Curves[s.SlowestAt].Name)
	assert.Equal(t, "middle", s.Worst.FhOf)
	assert.Equal(t, "right", s.Worst.InitialOf)
	for i := range tests {
		assert.GreaterOrEqual(t, s.WorstBall.CountMin, s.Ball[i].CountMin)
		assert.GreaterOrEqual(t, s.CountMin, s.General[i].CountMin)
	}
	assert.InDelta(t, s.WorstBall.CountMin-s.General[1].CountMin, s.MoreByBall, 1e-12)
	assert.InEpsilon(t, s.General[1].CountMin, s.WorstBall.CountMin, 0.05)
}

// A bottle with fh 6 min and jh 1.1, started at 60 °C in a retort at 118 °C
// with 5 min of come-up, for F0 6 min. Cooling was not measured.
func ExampleCurve_BallTime() {
	c := Curve{FhMin: 6, Jh: 1.1, ComeUpMin: 5}
	out, err := c.BallTime(Target{Minutes: 6, Basis: thermal.F0.Bound()}, Process{RetortC: 118, InitialC: 60, CoolingC: 15, ComeUpMin: 5})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f min by the formula, %.1f min without any credit for cooling\n", out.AfterComeUpMin, out.HeatingOnlyMin)
	// Output: 18.4 min by the formula, 18.6 min without any credit for cooling
}
