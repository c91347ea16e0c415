package carbonation

import (
	"math"
	"slices"
	"testing"
)

// TestMaterials pins the table: its types, its sums, and what each row must satisfy.
func TestMaterials(t *testing.T) {
	want := []string{"HDPE bottle", "PET bottle", "PP bottle", "aluminium bottle", "can", "carton", "cup", "glass bottle", "heat-set PET bottle", "keg", "pouch", "steel can"}
	if got := PackTypes(); !slices.Equal(got, want) {
		t.Errorf("types %q, want %q", got, want)
	}
	var expansion, give float64
	for _, name := range PackTypes() {
		m := packOf(t, name)
		expansion, give = expansion+m.ExpansionPerK, give+m.GivePerBar.Nominal
		if m.Pack != name || m.Source == "" || m.Basis == "" || m.Confidence == "" || !(m.GivePerBar.Low <= m.GivePerBar.Nominal && m.GivePerBar.Nominal <= m.GivePerBar.High) {
			t.Errorf("%+v", m)
		}
	}
	within(t, "sum of expansions", expansion, 1.479e-3, 0.01)
	within(t, "sum of give", give, 0.02605, 0.01)
	if m, ok := MaterialOf("bag"); ok || m != (Material{}) {
		t.Errorf("a bag is known: %+v", m)
	}
}

// TestGiveOfAThinWall recomputes the low end of the can: closed cylinder, r 33 mm,
// wall 0.10 mm, 69 GPa, Poisson 0.33.
func TestGiveOfAThinWall(t *testing.T) {
	perBar := 1e5 * 0.033 / (2 * 0.0001 * 69e9) * (5 - 4*0.33)
	within(t, "give of a can", packOf(t, "can").GivePerBar.Low, perBar, 3)
}

// TestShelfLife: a 500 mL bottle of 4 volumes loses 16 % in 9 to 15 weeks at 22 °C
// (trade practice, memory), a 2 L one in 16 to 20; loss doubles over 10 C°.
func TestShelfLife(t *testing.T) {
	pet := packOf(t, "PET bottle")
	weeks := func(ml, tC float64) float64 {
		loss, err := pet.LossPerMonth(ml, tC)
		return 365.25 / 12 / 7 * math.Log(0.84) / math.Log(1-must(t, loss, err).Nominal/100)
	}
	if w := weeks(525, 22); !(w >= 9 && w <= 15) {
		t.Errorf("500 mL: %g weeks", w)
	}
	if w := weeks(2080, 22); !(w >= 15 && w <= 20) {
		t.Errorf("2 L: %g weeks", w)
	}
	if r := weeks(525, 17) / weeks(525, 27); !(r >= 1.5 && r <= 2.2) {
		t.Errorf("10 C° change it %g fold", r)
	}
	for _, name := range []string{"can", "glass bottle", "carton"} {
		if loss, err := packOf(t, name).LossPerMonth(330, 20); must(t, loss, err) != (Spread{}) {
			t.Errorf("%s loses %v", name, loss)
		}
	}
}

// TestPermeationByHand: 1 barrer, 1 mm, 500 mL at 23 °C. Wall 6.2 x 500^(2/3) =
// 390.6 cm2; 0.7501e-10 cm3 cm/(cm2 s kPa) through 0.1 cm give 2.930e-7 cm3/(s kPa),
// 1.307e-11 mol; the bottle holds 0.5 L x (0.96 x 0.0359 / 101.325 + 0.04 / 2462) =
// 1.782e-4 mol/kPa: a share of 7.335e-8 a second.
func TestPermeationByHand(t *testing.T) {
	got := Material{WallMM: 1}.lossPerSecondAndBarrer(500, 23)
	within(t, "share a second", got, 7.335e-8, 0.2)
}

func TestVolumesLeft(t *testing.T) {
	v, err := VolumesLeft(4, 2, 9)
	within(t, "4 volumes, 2 % a month, 9 months", must(t, v, err), 4*math.Pow(0.98, 9), 1e-9)
	_, err = VolumesLeft(4, 101, 9)
	wantError(t, err, "carbonation: a loss of 101 % a month is outside 0 to 100 %")
	_, err = VolumesLeft(4, 2, -1)
	wantError(t, err, "carbonation: -1 months are not a time from 0 on")
	_, err = VolumesLeft(math.NaN(), 2, 9)
	wantError(t, err, "carbonation: NaN volumes of CO2 are outside 0 to 20")
	_, err = packOf(t, "PET bottle").LossPerMonth(500, 46)
	wantError(t, err, "carbonation: loss through the wall is known for 0 to 45 °C, not for 46 °C")
	_, err = packOf(t, "PET bottle").LossPerMonth(0, 20)
	wantError(t, err, "carbonation: brimful volume 0 mL is outside 0 to 1000000 mL")
	_, err = Material{Barrer: Spread{High: -1}}.LossPerMonth(500, 20)
	wantError(t, err, "carbonation: permeability 0 to -1 barrer through 0 mm is not possible")
}

func TestAirFree(t *testing.T) {
	p, err := AirFree(300, 2, 20, StandardAtmosphere)
	within(t, "300 kPa less 2 mL of air in 20", float64(must(t, p, err)), 300-10.1325, 1e-9)
	_, err = AirFree(300, 2, 0, StandardAtmosphere)
	wantError(t, err, "carbonation: 2 mL of air from 0 mL of headspace is not possible")
	_, err = AirFree(300, 60, 20, StandardAtmosphere)
	wantError(t, err, "carbonation: 60 mL of air in 20 mL of headspace make more than the 300 kPa read")
	_, err = AirFree(5000, 1, 20, StandardAtmosphere)
	wantError(t, err, "carbonation: 5000 kPa absolute: pressure above 4000 kPa, beyond what is known of the gas")
}

func TestReadingsThatCannotBe(t *testing.T) {
	p := can(t)
	_, err := p.WithReading(-100, 20)
	wantError(t, err, "carbonation: 1.325 kPa absolute at 20 °C is below the vapour pressure of the drink, 2.339 kPa: it would boil")
	_, err = p.WithReading(-102, 20)
	wantError(t, err, "carbonation: gauge pressure -102 kPa at an ambient of 101.325 kPa is below vacuum or not a number")
	_, err = p.WithReading(200, 151)
	wantError(t, err, "carbonation: temperature 151 °C is outside 0 to 150 °C")
	p.BrimfulML = 333
	_, err = p.WithReading(500, 65)
	wantError(t, err, "carbonation: the pack is full of liquid at 65 °C: its pressure tells nothing of its gas")
}

func TestNoDoseHelps(t *testing.T) {
	p := can(t)
	p.BrimfulML = 333
	_, err := p.NitrogenFor(70, 0, 65)
	wantError(t, err, "carbonation: the pack is full of liquid at 65 °C: no dose of nitrogen helps")
	_, err = can(t).NitrogenFor(GaugeKPa(math.NaN()), 0, 20)
	wantError(t, err, "carbonation: no dose of nitrogen up to 34.9 g gives NaN kPa gauge at 20 °C")
}
