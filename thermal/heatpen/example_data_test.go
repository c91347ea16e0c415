package heatpen

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
)

// fromF turns a temperature of °F into °C.
func fromF(f float64) float64 { return (f - 32) / 1.8 }

// cannedCream is a canned cream of olluco, readings every 2 min, retort at
// 240.4 °F, 10 min of come-up, cooled from 80 min (course exercise,
// de.scribd.com/document/367874169, exercise 3). The reading at 40 min lies
// 4 F° below its neighbours.
func cannedCream(t *testing.T) (product, retort []thermal.Point) {
	for _, r := range numbers(t, "testdata/canned_cream.csv", 47, 0, 1, 2) {
		retort = append(retort, thermal.Point{TimeS: r[0] * 60, TempC: fromF(r[1])})
		product = append(product, thermal.Point{TimeS: r[0] * 60, TempC: fromF(r[2])})
	}
	return product, retort
}

func creamTest(t *testing.T) Test {
	product, _ := cannedCream(t)
	return Test{Name: "cream", Points: product, ComeUpS: 600, MediumC: fromF(240.4), CoolAtS: 80 * 60, CoolingC: fromF(81.14)}
}

// TestCannedCream: least squares over 20 to 78 min without the slip gives fh
// 45.82 min, jh 1.142 from the corrected zero and 1.529 from steam on, r2
// 0.99936, worked out elsewhere from the same readings. The part chosen here is
// shorter.
func TestCannedCream(t *testing.T) {
	test := creamTest(t)
	s, err := test.heatingSeries()
	require.NoError(t, err)
	s, _ = s.withoutSlips()
	line := s.line(5, len(s.x)-1, test.MediumC-test.initialC()) // 20 to 76 min
	last := s.line(5, len(s.x), test.MediumC-test.initialC())   // 20 to 78 min
	assert.InDelta(t, 45.82, last.FMin, 0.3, "%v to %v", line.FromMin, line.ToMin)
	assert.InDelta(t, 45.82, line.FMin, 0.3)
	assert.InDelta(t, 1.142, line.J, 0.02)
	assert.InDelta(t, 1.529, line.J*math.Pow(10, 5.8/line.FMin), 0.02)
	assert.InDelta(t, 0.9994, line.R2, 5e-4)

	c, err := Fit(test)
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{34.2}, c.SlipsMin, 1e-9)
	assert.InDelta(t, 45.82, c.FhMin, 0.5)
	assert.InDelta(t, 1.142, c.Jh, 0.04)
	assert.InDelta(t, 10, c.ComeUpMin, 1e-12)
	assert.InDelta(t, fromF(76.1), c.InitialC, 1e-9)
	assert.Less(t, c.Heating.FLowMin, 45.82)
	assert.Greater(t, c.Heating.FHighMin, 45.82)
	assert.False(t, c.Cooled, "the retort cools with the can: no straight part")
}

func TestMediumOfCannedCream(t *testing.T) {
	_, retort := cannedCream(t)
	m, err := MediumOf(retort)
	require.NoError(t, err)
	assert.InDelta(t, fromF(240.4), m.HoldC, 0.1)
	assert.InDelta(t, 600, m.HoldAtS, 1e-9)
	assert.InDelta(t, 78*60, m.CoolAtS, 1e-9)
	assert.InDelta(t, fromF(81.14), m.CoolingC, 1e-9)
	assert.InDelta(t, fromF(239.9), m.LowestC, 1e-9)
}

// TestCannedCreamGeneralMethod: 2.446 min at 250 °F, z 18 F°, by trapezoid of
// the heating up to 78 min; straight lines between the readings give less.
func TestCannedCreamGeneralMethod(t *testing.T) {
	test := creamTest(t)
	c, err := Fit(test)
	require.NoError(t, err)
	ref := thermal.Reference{TrefC: fromF(250), ZC: 10}
	same := Process{RetortC: test.MediumC, InitialC: c.InitialC, CoolingC: test.CoolingC, ComeUpMin: 10}
	m := test.move(c, Target{Minutes: 1, Basis: ref.Bound()}, same)
	assert.InEpsilon(t, 2.446465, m.heating(78), 0.002)
	out, err := GeneralTime(test, c, Target{Minutes: m.heating(70), Basis: ref.Bound()}, same)
	require.NoError(t, err)
	assert.InDelta(t, 60, out.HeatingOnlyMin, 1e-6)
}

// TestWorkedFormulaExamples: processes worked out elsewhere from the same
// equations: retort, initial temperature, jh, fh, time, cooling medium, and F0
// of the heating and of all.
func TestWorkedFormulaExamples(t *testing.T) {
	for _, x := range []struct{ rt, it, jh, fh, tp, drop, heating, whole float64 }{
		{121.1, 70, 1.4, 22, 45, 100, 14.0828, 15.7539},
		{115.6, 65, 1.9, 50, 110, 100, 9.34019, 10.4197},
		{124, 20, 1.05, 6.5, 16, 72.2222, 10.7392, 11.9652},
		{121.1, 60, 1.6, 30, 44.8622, 100, 4.6946, 5.99999},
	} {
		start := x.jh * (x.rt - x.it)
		table := PrintedTable(10, x.drop)
		table.StartC = start
		rate := thermal.F0.LethalRate(x.rt)
		heating := rate * table.Approach(x.fh, start, x.tp)
		assert.InEpsilon(t, x.heating, heating, 1e-5)
		by, _, err := Curve{FhMin: x.fh, Jh: x.jh}.Delivered(thermal.F0.Bound(), Process{RetortC: x.rt, InitialC: x.it, CoolingC: x.rt - x.drop}, x.tp)
		require.NoError(t, err)
		assert.InEpsilon(t, x.heating, by, 2e-4) // counted from 80 F° below the retort
		g := start * math.Pow(10, -x.tp/x.fh)
		assert.InEpsilon(t, x.whole, heating+rate*x.fh*table.cooling(g), 1e-4)
	}
}

// TestExponentialHistories: closed forms at 60 decimal digits, of heating
// T = RT - jI 10^(-t/f) and of cooling T = Tc + A 10^(-t/f).
func TestExponentialHistories(t *testing.T) {
	for _, x := range []struct{ rt, jI, f, t, tref, z, want float64 }{
		{121.1, 81.1, 25, 60, 121.1, 10, 22.74445208}, {121.1, 113.54, 25, 60, 121.1, 10, 19.40013716},
		{124, 112, 8, 20, 121.1, 10, 13.61136628}, {115.6, 170.1, 55, 150, 121.1, 10, 14.18303736},
		{65, 45, 6, 25, 60, 6.94, 86.44432624}, {95, 75, 5, 20, 93.3, 8.3, 19.48753494},
	} {
		table := Table{ZC: x.z, StartC: x.jI}
		ref := thermal.Reference{TrefC: x.tref, ZC: x.z}
		assert.InEpsilon(t, x.want, ref.LethalRate(x.rt)*table.Approach(x.f, x.jI, x.t), 1e-9)
	}
	for _, x := range []struct{ tc, a, f, t, tref, z, want float64 }{
		{20, 101.1, 25, 40, 121.1, 10, 0.4884264525}, {25, 40, 6, 25, 60, 6.94, 1.125199778},
		{20, 100.6479891, 25, 60, 121.1, 10, 0.442223122},
	} {
		ref := thermal.Reference{TrefC: x.tref, ZC: x.z}
		got := ref.LethalRate(x.tc+x.a) * x.f * Table{ZC: x.z}.tail(x.a, 1, x.a*math.Pow(10, -x.t/x.f))
		assert.InEpsilon(t, x.want, got, 1e-8)
	}
}

// TestPham1987: g = jh (RT-IT) 10^(-t/fh), example 1 of Pham 1987, J. Food Sci.
// 52:967, as transcribed in a spreadsheet: printed 0.118 F°; U of the heating
// 83.8855 min worked out elsewhere.
func TestPham1987(t *testing.T) {
	rt, it := fromF(230), fromF(160)
	b := Curve{FhMin: 55, Jh: 2}.ball(Target{Minutes: 1, Basis: thermal.Reference{TrefC: fromF(250), ZC: 16 / 1.8}.Bound()}, Process{RetortC: rt, InitialC: it, CoolingC: fromF(50)})
	assert.InDelta(t, 0.118, b.below(169)*1.8, 0.0005)
	assert.InEpsilon(t, 83.8855, b.heating(169), 1e-4)
}

// TestFormulaExamples: process times through the printed table (fh/U : log g)
// and by heating alone; what is counted here lies between, at or above the
// table's.
func TestFormulaExamples(t *testing.T) {
	for _, x := range []struct{ rt, it, jh, fh, f0, printed, heatingOnly float64 }{
		{250, 140, 1.4, 30, 6, 43.366, 45.635}, {240, 160, 1.9, 50, 5, 84.948, 88.254},
	} {
		c := Curve{FhMin: x.fh, Jh: x.jh, Cooled: true, FcMin: x.fh, Jc: ballJc}
		p := Process{RetortC: fromF(x.rt), InitialC: fromF(x.it), CoolingC: fromF(x.rt - 180)}
		out, err := c.BallTime(Target{Minutes: x.f0, Basis: thermal.Reference{TrefC: fromF(250), ZC: 10}.Bound()}, p)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, out.CountMin, x.printed)
		assert.LessOrEqual(t, out.CountMin, x.heatingOnly)
		assert.InEpsilon(t, x.heatingOnly, out.HeatingOnlyMin, 2e-5)
		assert.InEpsilon(t, x.f0, out.HeatingMinutes+out.CoolingMinutes, 1e-9)
		c.Cooled = false
		out, err = c.BallTime(Target{Minutes: x.f0, Basis: thermal.Reference{TrefC: fromF(250), ZC: 10}.Bound()}, p)
		require.NoError(t, err)
		assert.True(t, out.CoolingAssumed)
		assert.Equal(t, out.HeatingOnlyMin, out.CountMin)
	}
}
