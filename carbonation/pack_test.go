package carbonation

import (
	"errors"
	"math"
	"testing"
)

func can(t fataler) Pack {
	return Pack{BrimfulML: 349, FillML: 330, FillTempC: 4, Material: packOf(t, "can"), HeadspaceGas: GasCO2}
}

// TestMeasuredPairs reads the volumes of a pack at one temperature and holds the
// pressure at another against what was measured there.
func TestMeasuredPairs(t *testing.T) {
	rows := checkRecords(t, "packs.csv")
	if len(rows) != 2 {
		t.Errorf("packs.csv has %d rows, want 2", len(rows))
	}
	for _, r := range rows {
		p := Pack{BrimfulML: r.number(t, "brimful_ml"), FillML: r.number(t, "fill_ml"), FillTempC: 4,
			Material: packOf(t, r["pack"]), HeadspaceGas: GasCO2, Liquid: Liquid{SugarGPerL: r.number(t, "sugar_g_per_l")}}
		read, err := p.WithReading(GaugeKPa(r.number(t, "gauge_kpa")), r.number(t, "t_c"))
		s, errAt := must(t, read, err).At(r.number(t, "at_c"))
		within(t, r["id"], float64(must(t, s, errAt).Gauge), r.number(t, "gauge_kpa_at"), r.number(t, "allowed_percent"))
	}
}

// TestTrappedAir: air shut in adds 1.3 bar at 62 °C in a 330 mL can with 16 mL of
// headspace, worked out apart from this code.
func TestTrappedAir(t *testing.T) {
	p := can(t)
	p.BrimfulML, p.Volumes, p.Material = 346, 2.5, Material{}
	flushed, err := p.At(62)
	p.HeadspaceGas = GasAir
	aired, errAir := p.At(62)
	within(t, "trapped air", float64(must(t, aired, errAir).Gauge-must(t, flushed, err).Gauge), 130, 15)
}

// TestVacuumByHand: a rigid bottle of water filled at 85 °C under nitrogen, by hand.
// Headspace 25 mL at 85 °C and 101.325 - 57.87 = 43.46 kPa: 0.36487 mmol. The water
// shrinks from 500 to 500 x 0.96858 / 0.99820 = 485.16 mL, which leaves 39.84 mL at
// 20 °C: 16.345 umol/kPa; 0.4843 kg of it take up 3.375 umol/kPa. 18.50 kPa of
// nitrogen and 2.34 of vapour.
func TestVacuumByHand(t *testing.T) {
	p := Pack{BrimfulML: 525, FillML: 500, FillTempC: 85, HeadspaceGas: GasNitrogen, Deaerated: true}
	s, err := p.At(20)
	within(t, "absolute", float64(must(t, s, err).Absolute), 20.84, 0.2)
	within(t, "headspace", s.HeadspaceML, 39.84, 0.1)
}

func TestLiquidFull(t *testing.T) {
	p := can(t)
	p.BrimfulML, p.Volumes = 333, 2
	s, err := p.At(65)
	if must(t, s, err); !s.LiquidFull || !math.IsInf(float64(s.Gauge), 1) || s.HeadspaceML != 0 || s.FillFraction != 1 {
		t.Errorf("330 mL from 4 °C in 333 mL at 65 °C: %+v", s)
	}
	cold, err := p.At(4)
	if must(t, cold, err); cold.LiquidFull {
		t.Errorf("at filling: %+v", cold)
	}
	worst, err := p.Worst(4, 4)
	if must(t, worst, err); !worst.LiquidFull {
		t.Errorf("4 mL over the fill: %+v", worst)
	}
}

// TestAltitude: a pack carried up shows more by what the air around it lost.
func TestAltitude(t *testing.T) {
	p := can(t)
	p.Volumes = 2.5
	low, err := p.At(30)
	p.AltitudeM = 3000
	high, errHigh := p.At(30)
	within(t, "rise of gauge pressure", float64(must(t, high, errHigh).Gauge-must(t, low, err).Gauge), 101.325-70.11, 1)
}

func TestUnknownGasIsAir(t *testing.T) {
	unknown, air := can(t), can(t)
	unknown.HeadspaceGas, air.HeadspaceGas = GasUnknown, GasAir
	u, err := unknown.At(65)
	a, errAir := air.At(65)
	if must(t, u, err) != must(t, a, errAir) {
		t.Errorf("unknown %+v, air %+v", u, a)
	}
	low, err := unknown.Lowest(0, 20)
	if must(t, low, err).Gauge > -98 {
		t.Errorf("nothing is said of gas, yet the vacuum is only %g kPa", low.Gauge)
	}
}

// TestStillUnderCO2: the CO2 of a flushed headspace goes into a still drink.
func TestStillUnderCO2(t *testing.T) {
	p := can(t)
	p.Deaerated = true
	s, err := p.At(4)
	if g := must(t, s, err).Gauge; !(g > -101.325 && g < -80) {
		t.Errorf("gauge %g kPa", g)
	}
}

func TestNitrogenDose(t *testing.T) {
	p := Pack{BrimfulML: 349, FillML: 330, FillTempC: 85, Material: packOf(t, "can"), HeadspaceGas: GasAir}
	g, err := p.NitrogenFor(70, 3.3, 20)
	p.NitrogenG = must(t, g, err)
	if !(g > 0.02 && g < 0.2) {
		t.Errorf("dose %g g", g)
	}
	low, err := p.Lowest(3.3, 20)
	within(t, "gauge with the dose", float64(must(t, low, err).Gauge), 70, 0.01)
	p.NitrogenG = 0
	if none, err := p.NitrogenFor(-101, 3.3, 20); must(t, none, err) != 0 {
		t.Errorf("no dose is needed for -101 kPa, got %g g", none)
	}
}

// TestNitrogenByHand: 0.1 g in 19 mL at 4 °C. 3.570 mmol, of which the water takes
// 0.330 kg x 9.4e-4 mol/(kg atm) = 0.310 mmol/atm and the headspace
// 0.019 L / 22.74 = 0.836 mmol/atm: 3.115 atm.
func TestNitrogenByHand(t *testing.T) {
	p := Pack{BrimfulML: 349, FillML: 330, FillTempC: 4, HeadspaceGas: GasVacuum, NitrogenG: 0.1, Deaerated: true}
	s, err := p.At(4)
	within(t, "absolute", float64(must(t, s, err).Absolute), 3.115*101.325, 1.5)
}

func TestExtrapolatedIsFlagged(t *testing.T) {
	carbonated, still := can(t), can(t)
	carbonated.Volumes, still.HeadspaceGas = 1, GasAir
	beer := still
	beer.Liquid.AlcoholFraction = 0.05
	syrup := still
	syrup.Liquid.SugarGPerL = 80
	strong := carbonated
	strong.Volumes = 4.8
	for _, c := range []struct {
		name string
		pack Pack
		tC   float64
		want bool
	}{
		{"carbonated, tunnel", carbonated, 65, false}, {"carbonated, hot", carbonated, 81, true}, {"over 12 bar", strong, 65, true},
		{"water, retort", still, 110, false}, {"sugar, retort", syrup, 110, true}, {"alcohol, tunnel", beer, 41, true}, {"alcohol, shelf", beer, 38, false},
	} {
		s, err := c.pack.At(c.tC)
		if must(t, s, err).Extrapolated != c.want {
			t.Errorf("%s: extrapolated %v, want %v", c.name, s.Extrapolated, c.want)
		}
	}
}

func TestAboveGasLimit(t *testing.T) {
	p := can(t)
	p.Volumes = 12
	_, err := p.At(90)
	wantError(t, err, "carbonation: the pack at 90 °C: pressure above 4000 kPa, beyond what is known of the gas")
	if !errors.Is(err, ErrAboveGasLimit) {
		t.Error("not told as ErrAboveGasLimit")
	}
	_, err = Liquid{}.Pressure(20, 60)
	wantError(t, err, "carbonation: 20 volumes at 60 °C: pressure above 4000 kPa, beyond what is known of the gas")
	_, err = Liquid{}.Volumes(4001, 20)
	wantError(t, err, "carbonation: 4001 kPa absolute: pressure above 4000 kPa, beyond what is known of the gas")
	p.Volumes, p.Liquid.SugarGPerL = 20, 800
	_, err = p.At(20)
	wantError(t, err, "carbonation: 20 volumes in this pack at 20 °C: pressure above 4000 kPa, beyond what is known of the gas")
}

func TestImpossiblePacks(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		change func(*Pack)
		want   string
	}{
		{func(p *Pack) { p.FillML = 350 }, "carbonation: fill 350 mL leaves no headspace in a brimful volume of 349 mL"},
		{func(p *Pack) { p.FillML, p.Material.ExpansionPerK = 348.9, 1e-4 }, "carbonation: fill 348.9 mL leaves no headspace in a brimful volume of 349 mL at 4 °C"},
		{func(p *Pack) { p.FillML = 0 }, "carbonation: fill volume 0 mL is not above 0"},
		{func(p *Pack) { p.FillML = nan }, "carbonation: fill volume NaN mL is not above 0"},
		{func(p *Pack) { p.BrimfulML = math.Inf(1) }, "carbonation: brimful volume +Inf mL is outside 0 to 1000000 mL"},
		{func(p *Pack) { p.FillTempC = 99.99 }, "carbonation: the drink boils at the filler: 99.99 °C at an ambient of 101.3 kPa"},
		{func(p *Pack) { p.FillTempC = -1 }, "carbonation: temperature -1 °C is outside 0 to 150 °C"},
		{func(p *Pack) { p.HeadspaceGas = "argon" }, `carbonation: headspace gas "argon" is none of air, nitrogen, CO2, vacuum`},
		{func(p *Pack) { p.NitrogenG = -1 }, "carbonation: nitrogen -1 g is outside 0 to 10000 g"},
		{func(p *Pack) { p.Volumes = nan }, "carbonation: NaN volumes of CO2 are outside 0 to 20"},
		{func(p *Pack) { p.AltitudeM = 12000 }, "carbonation: altitude 12000 m is outside -500 to 11000 m"},
		{func(p *Pack) { p.Material.GivePerBar.Nominal = -1 }, `carbonation: a pack of type "can" grows by -1 of its volume, outside 0 to 0.1`},
		{func(p *Pack) { p.Liquid.SugarGPerL = -1 }, "carbonation: sugar -1 g/L is outside 0 to 900 g/L"},
	} {
		p := can(t)
		c.change(&p)
		_, err := p.At(20)
		wantError(t, err, c.want)
		_, err = p.Curve([]float64{20})
		wantError(t, err, c.want)
	}
	_, err := can(t).At(151)
	wantError(t, err, "carbonation: temperature 151 °C is outside 0 to 150 °C")
	_, err = can(t).Curve([]float64{20, nan})
	wantError(t, err, "carbonation: temperature NaN °C is outside 0 to 150 °C")
	_, err = can(t).Worst(-1, 20)
	wantError(t, err, "carbonation: fill tolerance -1 mL is outside 0 to the fill of 330 mL")
	_, err = can(t).Lowest(330, 20)
	wantError(t, err, "carbonation: fill tolerance 330 mL is outside 0 to the fill of 330 mL")
	_, err = Pack{BrimfulML: 330, FillML: 331, FillTempC: 4}.Worst(5, 20)
	wantError(t, err, "carbonation: fill 331 mL leaves no headspace in a brimful volume of 330 mL")
}

func BenchmarkAt(b *testing.B) {
	p := can(b)
	p.Volumes, p.HeadspaceGas = 3.4, GasUnknown
	for b.Loop() {
		must(b, State{}, errOf(p.At(65)))
	}
}

func BenchmarkAtSugarAlcoholSalt(b *testing.B) {
	p := can(b)
	p.Volumes, p.HeadspaceGas = 3.4, GasUnknown
	p.Liquid = Liquid{SugarGPerL: 80, AlcoholFraction: 0.05, IonsMolPerL: map[string]float64{"Na+": 0.02, "Cl-": 0.02}}
	for b.Loop() {
		must(b, State{}, errOf(p.At(65)))
	}
}

// BenchmarkCurvePoint is one point of a hundred of one pack.
func BenchmarkCurvePoint(b *testing.B) {
	p := can(b)
	p.Volumes, p.HeadspaceGas = 3.4, GasUnknown
	temps := make([]float64, 100)
	for i := range temps {
		temps[i] = 0.65 * float64(i)
	}
	for i := 0; i < b.N; i += len(temps) {
		must(b, State{}, errOf(p.Curve(temps)))
	}
}

func errOf[T any](_ T, err error) error { return err }

// BenchmarkWorst is the dearest case: a still pack with air.
func BenchmarkWorst(b *testing.B) {
	p := can(b)
	p.HeadspaceGas = GasUnknown
	for b.Loop() {
		must(b, State{}, errOf(p.Worst(3.3, 65)))
	}
}
