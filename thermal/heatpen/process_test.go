package heatpen

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"posset/thermal"
)

func drawCurve(t *rapid.T) Curve {
	c := Curve{
		MediumC: 121.1, InitialC: rapid.Float64Range(5, 80).Draw(t, "it"), ComeUpMin: rapid.Float64Range(0, 15).Draw(t, "come-up"),
		FhMin: rapid.Float64Range(0.5, 80).Draw(t, "fh"), Jh: rapid.Float64Range(0.5, 2.2).Draw(t, "jh"),
		Cooled: rapid.Bool().Draw(t, "cooled"), Jc: rapid.Float64Range(0.5, 2).Draw(t, "jc"), FcMin: rapid.Float64Range(0.5, 80).Draw(t, "fc"),
	}
	if c.Broken = rapid.Bool().Draw(t, "broken"); c.Broken {
		c.F2Min, c.BreakMin = c.FhMin*rapid.Float64Range(1.15, 5).Draw(t, "f2/fh"), c.FhMin*rapid.Float64Range(0.1, 3).Draw(t, "break")
		c.BreakC = c.MediumC - c.Jh*(c.MediumC-c.InitialC)*math.Pow(10, -c.BreakMin/c.FhMin)
	}
	return c
}

func drawProcess(t *rapid.T) Process {
	return Process{
		RetortC: rapid.Float64Range(105, 130).Draw(t, "rt"), InitialC: rapid.Float64Range(5, 85).Draw(t, "initial"),
		CoolingC: rapid.Float64Range(0, 35).Draw(t, "cooling"), ComeUpMin: rapid.Float64Range(0, 15).Draw(t, "come-up of the plant"),
	}
}

func count(t *rapid.T, c Curve, target Target, p Process) float64 {
	out, err := c.BallTime(target, p)
	if err != nil {
		t.Fatal(err)
	}
	if !(out.CountMin >= 0) || out.HeatingOnlyMin < out.AfterComeUpMin-1e-9 {
		t.Fatalf("%+v", out)
	}
	return out.CountMin
}

// TestUnfavourableIsNeverShorter: each change for the worse asks for as much
// time or more.
func TestUnfavourableIsNeverShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawCurve(t), drawProcess(t)
		target := Target{Minutes: rapid.Float64Range(0.5, 30).Draw(t, "target"), Basis: thermal.F0.Bound()}
		before := count(t, c, target, p)
		share := rapid.Float64Range(0, 0.3).Draw(t, "worse by")
		worse := map[string]func(*Curve, *Target, *Process){
			"fh": func(c *Curve, _ *Target, _ *Process) {
				// Cooling stays as it was; a slower second part stays slower.
				c.FcMin = min(c.FcMin, c.FhMin)
				c.FhMin *= 1 + share
				c.F2Min = max(c.F2Min, c.FhMin)
				c.BreakMin = 0
			},
			"jh":          func(c *Curve, _ *Target, _ *Process) { c.Jh *= 1 + share; c.BreakMin = 0 },
			"f2":          func(c *Curve, _ *Target, _ *Process) { c.F2Min *= 1 + share },
			"come-up":     func(c *Curve, _ *Target, _ *Process) { c.ComeUpMin *= 1 - share },
			"its come-up": func(_ *Curve, _ *Target, p *Process) { p.ComeUpMin *= 1 - share },
			"target":      func(_ *Curve, x *Target, _ *Process) { x.Minutes *= 1 + share },
			"cooling":     func(_ *Curve, _ *Target, p *Process) { p.CoolingC -= 5 * share },
			"unmeasured":  func(c *Curve, _ *Target, _ *Process) { c.Cooled = false },
			"worth":       func(_ *Curve, x *Target, _ *Process) { x.Basis.MinC = 100 },
			"spread":      func(_ *Curve, x *Target, _ *Process) { x.Basis.Below.ZC -= share; x.Basis.Above.ZC += share },
		}
		for what, change := range worse {
			c, target, p := c, target, p
			change(&c, &target, &p)
			if after := count(t, c, target, p); after < before-1e-6 {
				t.Fatalf("%s worse: %g min became %g min", what, before, after)
			}
		}
	})
}

// TestProcessTimeDelivers: what a process time was asked for is what it delivers.
func TestProcessTimeDelivers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawCurve(t), drawProcess(t)
		target := Target{Minutes: rapid.Float64Range(0.5, 30).Draw(t, "target"), Basis: thermal.F0.Bound()}
		out, err := c.BallTime(target, p)
		if err != nil {
			t.Fatal(err)
		}
		heating, cooling, err := c.Delivered(target.Basis, p, out.FromZeroMin)
		if err != nil || heating+cooling < target.Minutes*(1-1e-9) || out.FromZeroMin > 0 && heating+cooling > target.Minutes*(1+1e-9) {
			t.Fatalf("%g and %g min, %v", heating, cooling, err)
		}
	})
}

// TestWorstIsNeverShorter: the joined container takes no less than any.
func TestWorstIsNeverShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, target := drawProcess(t), Target{Minutes: 6, Basis: thermal.F0.Bound()}
		var curves []Curve
		longest := 0.0
		for range rapid.IntRange(1, 4).Draw(t, "containers") {
			c := drawCurve(t)
			curves = append(curves, c)
			longest = max(longest, count(t, c, target, p))
		}
		w, err := WorstOf(curves)
		if err != nil {
			t.Fatal(err)
		}
		if worst := count(t, w.Curve, target, p); worst < longest-1e-6 {
			t.Fatalf("worst of all %g min, slowest %g min", worst, longest)
		}
	})
}

func TestWorstNamesItsContainers(t *testing.T) {
	w, err := WorstOf([]Curve{
		{Name: "1", FhMin: 20, Jh: 1.4, InitialC: 20, MediumC: 121}, {Name: "2", FhMin: 25, Jh: 1.2, InitialC: 18, MediumC: 121.2},
	})
	require.NoError(t, err)
	assert.Equal(t, []string{"2", "1", "2", "1"}, []string{w.FhOf, w.JhOf, w.InitialOf, w.RetortOf})
	assert.Equal(t, []float64{25, 1.4, 18, 121}, []float64{w.FhMin, w.Jh, w.InitialC, w.MediumC})
	assert.False(t, w.Broken)
	assert.False(t, w.Cooled)
	_, err = WorstOf(nil)
	assert.EqualError(t, err, "heatpen: no heating curve to take the worst of; give one at least")
}

// TestThinPack: a product at retort temperature gains a minute a minute, however
// long.
func TestThinPack(t *testing.T) {
	c := Curve{FhMin: 0.05, Jh: 1}
	out, err := c.BallTime(Target{Minutes: 600, Basis: thermal.F0.Bound()}, Process{RetortC: 121.1, InitialC: 20})
	require.NoError(t, err)
	assert.InDelta(t, 600, out.CountMin, 0.2)
	assert.Greater(t, out.CountMin, 600.)
}

// TestNoise: readings of a logger with 0.1 C° of resolution and a noise of
// 0.1 C° give the factors of the clean curve.
func TestNoise(t *testing.T) {
	m := medium{fromC: 30, retortC: 121.1, coolingC: 20, comeUpS: 480, coolAtS: 6000}
	clean := testOf("can", halfLitreCan, m, 60, 9600, 20)
	want, err := Fit(clean)
	require.NoError(t, err)
	dice := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		noisy := clean
		noisy.Points = append([]thermal.Point(nil), clean.Points...)
		for i := range noisy.Points {
			noisy.Points[i].TempC = math.Round((noisy.Points[i].TempC+0.1*dice.NormFloat64())*10) / 10
		}
		got, err := Fit(noisy)
		require.NoError(t, err)
		assert.InEpsilon(t, want.FhMin, got.FhMin, 0.03)
		assert.InEpsilon(t, want.Jh, got.Jh, 0.1)
		assert.False(t, got.Broken)
	}
}

// TestGeneralMethodExtends: a test that is cut short is carried on along its line.
func TestGeneralMethodExtends(t *testing.T) {
	m := medium{fromC: 60, retortC: 121.1, coolingC: 20, coolAtS: 1e9}
	long := testOf("can", lumped{fMin: 6}, m, 60, 1800, 10)
	short := testOf("can", lumped{fMin: 6}, m, 60, 420, 10)
	p := Process{RetortC: 121.1, InitialC: 60, CoolingC: 20}
	var times []float64
	for _, test := range []Test{long, short} {
		c, err := Fit(test)
		require.NoError(t, err)
		out, err := GeneralTime(test, c, sterilize, p)
		require.NoError(t, err)
		times = append(times, out.CountMin)
		assert.Equal(t, len(test.Points) < 50, out.Extended)
		assert.Equal(t, out.HeatingOnlyMin, out.CountMin)
	}
	assert.InEpsilon(t, times[0], times[1], 2e-3)
}

// TestOrganismBasis: both methods take the spread of an organism's z and its
// range, and ask for more than its smaller z alone above Tref.
func TestOrganismBasis(t *testing.T) {
	o, ok := thermal.FindOrganism("Alicyclobacillus acidoterrestris")
	require.True(t, ok)
	m := medium{fromC: 20, retortC: 95, coolingC: 15, comeUpS: 120, coolAtS: 9000}
	test := testOf("bottle", lumped{fMin: 8}, m, 20, 12000, 10)
	c, err := Fit(test)
	require.NoError(t, err)
	p := Process{RetortC: 95, InitialC: 20, CoolingC: 15, ComeUpMin: 2}
	spread, plain := Target{Minutes: o.MinutesFor(2), Basis: o.Bound()}, Target{Minutes: o.MinutesFor(2), Basis: o.Reference().Bound()}
	for _, f := range []func(Target) (ProcessTime, error){
		func(x Target) (ProcessTime, error) { return c.BallTime(x, p) },
		func(x Target) (ProcessTime, error) { return GeneralTime(test, c, x, p) },
	} {
		with, err := f(spread)
		require.NoError(t, err)
		without, err := f(plain)
		require.NoError(t, err)
		assert.Greater(t, with.CountMin, without.CountMin)
		assert.GreaterOrEqual(t, delivered(lumped{fMin: 8}, p, o.Bound(), with.CountMin), o.MinutesFor(2)*0.999)
	}
}

func TestProcessErrors(t *testing.T) {
	c := Curve{Name: "can", FhMin: 20, Jh: 1.4}
	good := Process{RetortC: 121.1, InitialC: 60, CoolingC: 20}
	o, _ := thermal.FindOrganism("Listeria monocytogenes")
	for want, f := range map[string]func(*Curve, *Target, *Process){
		"heatpen: a target of NaN min; give more than 0 and no more than a week":                                  func(_ *Curve, x *Target, _ *Process) { x.Minutes = math.NaN() },
		"heatpen: retort 500 °C, initial 60 °C, cooling 20 °C; give temperatures of -10 to 200 °C":                func(_ *Curve, _ *Target, p *Process) { p.RetortC = 500 },
		"heatpen: a retort at 50 °C heats nothing that starts at 60 °C and cools to 20 °C; give a hotter retort":  func(_ *Curve, _ *Target, p *Process) { p.RetortC = 50 },
		"heatpen: a come-up of -1 min; give 0 where it is not known":                                              func(_ *Curve, _ *Target, p *Process) { p.ComeUpMin = -1 },
		"heatpen: nothing counts toward the target at 50 °C; give a retort temperature and z within its basis":    func(_ *Curve, x *Target, p *Process) { x.Basis, p.RetortC, p.InitialC = o.Bound(), 50, 10 },
		"heatpen: nothing counts toward the target at 121.1 °C; give a retort temperature and z within its basis": func(_ *Curve, x *Target, _ *Process) { x.Basis = thermal.Bound{} },
		"heatpen: can: fh 0 min and jh 1.4; give figures above 0":                                                 func(c *Curve, _ *Target, _ *Process) { c.FhMin = 0 },
		"heatpen: can: at 80 °C the target is not reached within a week; give a hotter retort":                    func(_ *Curve, _ *Target, p *Process) { p.RetortC = 80 },
	} {
		c, target, p := c, sterilize, good
		f(&c, &target, &p)
		_, err := c.BallTime(target, p)
		assert.EqualError(t, err, want)
	}
	_, _, err := c.Delivered(thermal.F0.Bound(), good, math.NaN())
	assert.EqualError(t, err, "heatpen: a process of NaN min; give 0 to a week")
	_, _, err = Curve{Name: "can"}.Delivered(thermal.F0.Bound(), good, 10)
	assert.EqualError(t, err, "heatpen: can: fh 0 min and jh 0; give figures above 0")
	_, _, err = c.Delivered(thermal.Bound{}, good, 10)
	assert.EqualError(t, err, "heatpen: nothing counts toward the target at 121.1 °C; give a retort temperature and z within its basis")
}

func TestFitErrors(t *testing.T) {
	m := medium{fromC: 60, retortC: 121.1, coolingC: 20, coolAtS: 1500}
	good := testOf("can", lumped{fMin: 6}, m, 60, 1200, 60)
	for want, f := range map[string]func(*Test){
		"heatpen: can: a medium at NaN °C; give its temperature in the hold, below 200 °C":                                                                  func(x *Test) { x.MediumC = math.NaN() },
		"heatpen: can: a come-up of -5 s; give 0 where it is not known":                                                                                     func(x *Test) { x.ComeUpS = -5 },
		"heatpen: can: steam on or cooling has no time; give seconds of the record's clock":                                                                 func(x *Test) { x.CoolAtS = math.NaN() },
		"heatpen: can: reading 3: 121.1 °C at 0 s; give temperatures of -10 to 200 °C at times that rise":                                                   func(x *Test) { x.Points = []thermal.Point{{TempC: 20}, {TimeS: 1, TempC: 21}, {TempC: 121.1}} },
		"heatpen: can: no reading at steam on that is colder than the medium's 121.1 °C":                                                                    func(x *Test) { x.Points = nil },
		"heatpen: can: 2 readings between come-up and 1 C° short of the medium; a line needs 5":                                                             func(x *Test) { x.Points = x.Points[:2] },
		"heatpen: can: no straight part: the log of 150 °C less the product bends all the way; check the temperature of the medium and when it was reached": func(x *Test) { x.MediumC = 150 },
	} {
		test := good
		f(&test)
		_, err := Fit(test)
		assert.EqualError(t, err, want)
		_, err = StudyOf([]Test{test}, sterilize, Process{RetortC: 121, InitialC: 60})
		assert.EqualError(t, err, want)
	}
	_, err := StudyOf(nil, sterilize, Process{RetortC: 121, InitialC: 60})
	assert.EqualError(t, err, "heatpen: no heating curve to take the worst of; give one at least")
}

func TestMediumErrors(t *testing.T) {
	for want, points := range map[string][]thermal.Point{
		"heatpen: 1 readings of the medium; give the whole of the test, 5 at least": {{TempC: 20}},
		"heatpen: reading 2 of the medium: 999.9 °C; give -10 to 200 °C":            {{TempC: 20}, {TempC: 999.9}, {TempC: 20}, {TempC: 20}, {TempC: 20}},
		"heatpen: the medium holds no temperature: it is near 100 °C for no more than a reading": {
			{TimeS: 0, TempC: 20}, {TimeS: 60, TempC: 40}, {TimeS: 120, TempC: 60}, {TimeS: 180, TempC: 80}, {TimeS: 240, TempC: 100},
		},
	} {
		_, err := MediumOf(points)
		assert.EqualError(t, err, want)
	}
}

// TestAnyRecordIsAnswered: no record makes the package panic or hand back a
// process time that is no number.
func TestAnyRecordIsAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		test := Test{
			Name: "x", MediumC: rapid.Float64Range(60, 140).Draw(t, "medium"), ComeUpS: rapid.Float64Range(0, 900).Draw(t, "come-up"),
			CoolAtS: rapid.Float64Range(0, 4000).Draw(t, "cool at"), CoolingC: rapid.Float64Range(-5, 40).Draw(t, "cooling"),
		}
		at := 0.0
		for range rapid.IntRange(0, 60).Draw(t, "readings") {
			test.Points = append(test.Points, thermal.Point{TimeS: at, TempC: rapid.Float64Range(-20, 160).Draw(t, "reading")})
			at += rapid.Float64Range(0, 120).Draw(t, "later")
		}
		c, err := Fit(test)
		if err != nil {
			return
		}
		out, err := GeneralTime(test, c, sterilize, drawProcess(t))
		if err == nil && !(out.CountMin >= 0) {
			t.Fatalf("%+v", out)
		}
	})
}

func BenchmarkFit(b *testing.B) {
	m := medium{fromC: 20, retortC: 121.1, coolingC: 20, comeUpS: 480, coolAtS: 6000}
	test := testOf("can", halfLitreCan, m, 60, 9600, 1)
	for b.Loop() {
		if _, err := Fit(test); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(test.Points)), "ns/reading")
}

func BenchmarkBallTime(b *testing.B) {
	c := Curve{FhMin: 50, Jh: 1.9, Cooled: true, FcMin: 50, Jc: 1.5}
	p := Process{RetortC: 121.1, InitialC: 60, CoolingC: 20}
	for b.Loop() {
		if _, err := c.BallTime(sterilize, p); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGeneralTime(b *testing.B) {
	m := medium{fromC: 20, retortC: 121.1, coolingC: 20, comeUpS: 480, coolAtS: 6000}
	test := testOf("can", halfLitreCan, m, 60, 9600, 1)
	c, err := Fit(test)
	if err != nil {
		b.Fatal(err)
	}
	p := Process{RetortC: 121.1, InitialC: 60, CoolingC: 20}
	for b.Loop() {
		if _, err := GeneralTime(test, c, sterilize, p); err != nil {
			b.Fatal(err)
		}
	}
}
