package carbonation

import (
	"math"
	"testing"
)

// TestHighestPressure: 3.2 % of solubility at 65 °C, 3 % more with 100 g/L of solids.
func TestHighestPressure(t *testing.T) {
	for _, c := range []struct {
		liquid Liquid
		ratio  float64
	}{{Liquid{}, 1 / (1 - 0.0315)}, {Liquid{OtherGPerL: 100}, 1 / (1 - 0.0315) / 0.97}} {
		high, err := c.liquid.HighestPressure(1, 65)
		vapour := AbsoluteKPa(WaterVapourKPa(65))
		within(t, "CO2 at its highest", float64((must(t, high, err)-vapour)/(pressure(t, c.liquid, 1, 65)-vapour)), c.ratio, 0.15)
	}
}

func TestIonTable(t *testing.T) {
	known, err := ionParameters()
	sum := 0.0
	for _, h := range must(t, known, err) {
		sum += h
	}
	within(t, "sum over 13 ions", sum, 1.3842, 0.001)
	if len(Ions()) != 13 {
		t.Errorf("%d ions: %q", len(Ions()), Ions())
	}
}

func TestConventionOfAVolume(t *testing.T) {
	within(t, "grams of a volume", GramsPerLitre(1), 1.9770, 0.003) // 44.0095 / 22.2605
	within(t, "volumes of 7 g/L", VolumesOf(7), 3.541, 0.02)
}

// TestSolutes holds the solubility per litre of drink over that of water.
func TestSolutes(t *testing.T) {
	for _, c := range []struct {
		name          string
		liquid        Liquid
		want, allowed float64 // per cent
	}{
		// water-alcohol literature, memory, low confidence, +-0.02; wine lies far lower,
		// and at one total pressure the vapour of the alcohol counts too
		{"5 % alcohol", Liquid{AlcoholFraction: 0.05}, 0.985, 2},
		{"12 % alcohol", Liquid{AlcoholFraction: 0.12}, 0.965, 3},
		{"50 g/L of protein", Liquid{OtherGPerL: 50}, 1 - 0.05*0.73, 0.05},
		{"acid alone never raises it", Liquid{IonsMolPerL: map[string]float64{"H+": 0.1}}, 1, 0},
	} {
		within(t, c.name, overWater(c.liquid, 25), c.want, c.allowed)
	}
}

// TestBeerAndWine: Henry's constant of a lager at 6 °C is about 2.4 g/(L bar), of a
// sparkling wine at 10 °C about 2.1 (ACS Omega 2021, 6:9672, table 1, seen).
func TestBeerAndWine(t *testing.T) {
	for _, c := range []struct {
		name     string
		liquid   Liquid
		tC, want float64
	}{
		{"lager", Liquid{AlcoholFraction: 0.05, SugarGPerL: 40}, 6, 2.4},
		{"sparkling wine", Liquid{AlcoholFraction: 0.125, SugarGPerL: 10, OtherGPerL: 15}, 10, 2.1},
	} {
		m, err := c.liquid.mix()
		must(t, m, err)
		nominal := m.solvent(c.tC, false) * henryCO2(c.tC) * kPaPerBar * molarMassCO2
		low := m.solvent(c.tC, true) * henryCO2Low(c.tC) * kPaPerBar * molarMassCO2
		within(t, c.name, nominal, c.want, 7)
		if !(low <= c.want*1.01) { // two digits
			t.Errorf("%s: the unfavourable end %g lies above the measured %g", c.name, low, c.want)
		}
	}
}

// TestExpansion holds the growth from 20 °C.
func TestExpansion(t *testing.T) {
	for _, c := range []struct {
		name      string
		liquid    Liquid
		tC, ratio float64
	}{
		{"water to 62 °C", Liquid{}, 62, 998.20 / 982.16},
		{"water to 121.1 °C", Liquid{}, 121.1, 998.20 / 942.2},
		{"10 Brix to 50 °C", Liquid{SugarGPerL: 103.8}, 50, 1.0381 / 1.0270},                                     // ICUMSA tables, memory
		{"5 % by volume to 40 °C", Liquid{AlcoholFraction: 0.05}, 40, 991.06 / 984.83},                           // OIML R22, computed apart
		{"15 % by volume to 30 °C", Liquid{AlcoholFraction: 0.15}, 30, 998.20 / 995.65 * (1 + 0.595e-3*0.15*10)}, // as above
	} {
		m, err := c.liquid.mix()
		must(t, m, err)
		within(t, c.name, m.expansion(c.tC), c.ratio, 0.03)
	}
}

func TestImpossibleLiquids(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		liquid  Liquid
		volumes float64
		tC      float64
		want    string
	}{
		{Liquid{}, 2, -0.1, "carbonation: temperature -0.1 °C is outside 0 to 150 °C"},
		{Liquid{}, 2, nan, "carbonation: temperature NaN °C is outside 0 to 150 °C"},
		{Liquid{}, -1, 20, "carbonation: -1 volumes of CO2 are outside 0 to 20"},
		{Liquid{SugarGPerL: nan}, 2, 20, "carbonation: sugar NaN g/L is outside 0 to 900 g/L"},
		{Liquid{AlcoholFraction: 5}, 2, 20, "carbonation: alcohol fraction 5 by volume is outside 0 to 0.25"},
		{Liquid{OtherGPerL: 401}, 2, 20, "carbonation: other solids 401 g/L are outside 0 to 400 g/L"},
		{Liquid{SugarGPerL: 900, AlcoholFraction: 0.25, OtherGPerL: 400}, 2, 20, "carbonation: sugar 900 g/L, other solids 400 g/L and alcohol fraction 0.25 leave no water"},
		{Liquid{IonsMolPerL: map[string]float64{"Xe+": 1}}, 2, 20, `carbonation: no salting-out figure is known for ion "Xe+"; known are Ca2+, Cl-, H+, H2PO4-, HCO3-, HPO42-, K+, Mg2+, NH4+, Na+, OH-, PO43-, SO42-`},
		{Liquid{IonsMolPerL: map[string]float64{"Na+": nan}}, 2, 20, "carbonation: NaN mol/L of Na+ is outside 0 to 5 mol/L"},
	} {
		_, err := c.liquid.Pressure(c.volumes, c.tC)
		wantError(t, err, c.want)
	}
	_, err := Liquid{}.Volumes(100, 100)
	wantError(t, err, "carbonation: 100 kPa absolute at 100 °C is below the vapour pressure of the drink, 101.4 kPa: it would boil")
	_, err = Liquid{}.Volumes(-5, 20)
	wantError(t, err, "carbonation: -5 kPa absolute at 20 °C is below the vapour pressure of the drink, 2.339 kPa: it would boil")
	_, err = Liquid{}.Volumes(AbsoluteKPa(nan), 20)
	wantError(t, err, "carbonation: NaN kPa absolute at 20 °C is below the vapour pressure of the drink, 2.339 kPa: it would boil")
}

func TestAmbientOutsideTheTroposphere(t *testing.T) {
	_, err := AmbientKPa(math.NaN())
	wantError(t, err, "carbonation: altitude NaN m is outside -500 to 11000 m")
}

func TestGaugeAndAbsolute(t *testing.T) {
	p, err := GaugeKPa(190).Absolute(StandardAtmosphere)
	if must(t, p, err) != 291.325 || p.Gauge(StandardAtmosphere) != 190 {
		t.Errorf("190 kPa gauge is %g absolute, back %g", p, p.Gauge(StandardAtmosphere))
	}
	_, err = GaugeKPa(-102).Absolute(StandardAtmosphere)
	wantError(t, err, "carbonation: gauge pressure -102 kPa at an ambient of 101.325 kPa is below vacuum or not a number")
}

func BenchmarkPressure(b *testing.B) {
	for b.Loop() {
		pressure(b, Liquid{SugarGPerL: 80}, 3, 20)
	}
}

func BenchmarkVolumes(b *testing.B) {
	for b.Loop() {
		must(b, 0.0, errOf(Liquid{SugarGPerL: 80}.Volumes(300, 20)))
	}
}
