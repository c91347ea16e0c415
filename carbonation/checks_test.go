package carbonation

import (
	"math"
	"testing"
)

// TestPublishedValues recomputes every row of checkdata/checks.csv.
func TestPublishedValues(t *testing.T) {
	rows := checkRecords(t, "checks.csv")
	if len(rows) != 175 {
		t.Errorf("checks.csv has %d rows, want 175", len(rows))
	}
	for _, r := range rows {
		within(t, r["id"], recompute(t, r), r.number(t, "want"), r.number(t, "allowed_percent"))
	}
}

// recompute works out what a row's source prints.
func recompute(t *testing.T, r record) float64 {
	tC, given := r.optional(t, "t_c"), r.optional(t, "given")
	switch {
	case r["kind"] == "correlation":
		return correlation(t, r["equation"]).MolPerLitreAtm(tC)
	case r["kind"] == "mole fraction" && r["equation"] != "":
		return 1000 * correlation(t, r["equation"]).MoleFraction(given, tC)
	}
	compute, ok := printed[r["kind"]]
	if !ok {
		t.Fatalf("unknown kind %q", r["kind"])
	}
	return compute(tC, given)
}

// printed is what each kind of row holds, in the units that its header names; NaN
// where it cannot be worked out.
var printed = map[string]func(tC, given float64) float64{
	"mole fraction":     func(tC, kPa float64) float64 { return 1000 * MoleFraction(kPa, tC) },
	"K0":                func(tC, _ float64) float64 { return Solubility(tC).Nominal },
	"Bunsen":            func(tC, _ float64) float64 { return Bunsen(tC) },
	"Ostwald":           func(tC, _ float64) float64 { return Ostwald(tC) },
	"grams":             func(tC, _ float64) float64 { return orNaN(GramsPer100(tC)) },
	"grams of a volume": func(_, volumes float64) float64 { return GramsPerLitre(volumes) },
	"virial":            func(tC, _ float64) float64 { return 1000 * VirialCO2LPerMol(tC) },
	"N2":                func(tC, _ float64) float64 { return NitrogenMolPerLitreAtm(tC) },
	"O2":                func(tC, _ float64) float64 { return OxygenMolPerLitreAtm(tC) },
	"vapour":            func(tC, _ float64) float64 { return WaterVapourKPa(tC) },
	"water density":     func(tC, _ float64) float64 { return 1000 * WaterDensityKgPerL(tC) },
	"sugar density":     func(tC, percent float64) float64 { return SucroseDensityKgPerL(percent/100, tC) },
	"ethanol density":   func(tC, percent float64) float64 { return 1000 * EthanolDensityKgPerL(percent/100, tC) },
	"pressure":          func(tC, volumes float64) float64 { return float64(orNaN(Liquid{}.Pressure(volumes, tC))) },
	"ambient":           func(_, m float64) float64 { return float64(orNaN(AmbientKPa(m))) },
	"beside sugar":      func(tC, gPerL float64) float64 { return overWater(Liquid{SugarGPerL: gPerL}, tC) },
	"beside salt": func(tC, molPerL float64) float64 {
		return overWater(Liquid{IonsMolPerL: map[string]float64{"Na+": molPerL, "Cl-": molPerL}}, tC)
	},
}

// overWater is what a litre of drink takes up at 200 kPa over what water does.
func overWater(l Liquid, tC float64) float64 {
	const anyKPa = 200
	return orNaN(l.Volumes(anyKPa, tC)) / orNaN(Liquid{}.Volumes(anyKPa, tC))
}

func orNaN[T ~float64](v T, err error) T {
	if err != nil {
		return T(math.NaN())
	}
	return v
}

func correlation(t *testing.T, name string) Correlation {
	for _, c := range Correlations() {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no correlation %q", name)
	return Correlation{}
}

// TestChoiceHasNoStep walks the solubility that is computed with: it falls all the
// way to 150 °C and has no step where one equation takes over from the other.
func TestChoiceHasNoStep(t *testing.T) {
	before := Solubility(0).Nominal
	for tC := 0.01; tC <= 150; tC += 0.01 {
		s := Solubility(tC)
		if fall := 1 - s.Nominal/before; !(fall > 0 && fall < 0.0005) {
			t.Fatalf("at %.2f °C solubility changes by %g in 0.01 °C", tC, -fall)
		}
		if !(s.Low <= s.Nominal && s.Nominal <= s.High) {
			t.Fatalf("at %.2f °C the spread is %v", tC, s)
		}
		before = s.Nominal
	}
}

// TestDistanceToOthers pins what the documentation says of the other equations.
func TestDistanceToOthers(t *testing.T) {
	for _, c := range []struct{ tC, lowPercent, highPercent float64 }{
		{0, -2.41, 0.44}, {20, 0, 1.59}, {40, -0.71, 1.96}, {65, -3.15, 0}, {80, -3.80, 0},
	} {
		s := Solubility(c.tC)
		low, high := 100*(s.Low/s.Nominal-1), 100*(s.High/s.Nominal-1)
		if !(abs(low-c.lowPercent) <= 0.01 && abs(high-c.highPercent) <= 0.01) {
			t.Errorf("at %g °C others lie %.2f to %+.2f %%, want %.2f to %+.2f", c.tC, low, high, c.lowPercent, c.highPercent)
		}
	}
}

// TestBrewingChart holds the chart of beer to what is known of it: it lies 2.5 to
// 6.5 % below water, and within 3 % of a beer with 5 % of alcohol and 4 % of extract.
func TestBrewingChart(t *testing.T) {
	beer := Liquid{AlcoholFraction: 0.05, SugarGPerL: 40}
	rows := records(t, "testdata/charts.csv")
	if len(rows) != 35 {
		t.Errorf("charts.csv has %d rows, want 35", len(rows))
	}
	for _, r := range rows {
		if r["quantity"] != "volumes" {
			continue
		}
		tC, want := r.number(t, "t_c"), r.number(t, "want")
		p := AbsoluteKPa(r.number(t, "gauge")*kPaPerPSI) + StandardAtmosphere
		water, err := Liquid{}.Volumes(p, tC)
		if below := 100 * (1 - want/must(t, water, err)); !(below >= 2.5 && below <= 6.5) {
			t.Errorf("chart at %g °C and %.4g kPa: %g volumes, %.2f %% below water", tC, p, want, below)
		}
		v, err := beer.Volumes(p, tC)
		within(t, "beer at "+r["t_c"]+" °C", must(t, v, err), want, 3)
	}
}

const kPaPerPSI = 6.894757

// TestHeadPressureTable: 5 % below water at 0 °C, 2 % above it at 20 °C, and its
// figures have one digit after the point.
func TestHeadPressureTable(t *testing.T) {
	for _, r := range records(t, "testdata/charts.csv") {
		if r["quantity"] != "g/L" {
			continue
		}
		tC, want := r.number(t, "t_c"), r.number(t, "want")
		v, err := Liquid{}.Volumes(AbsoluteKPa(r.number(t, "gauge")*kPaPerBar)+StandardAtmosphere, tC)
		got := GramsPerLitre(must(t, v, err))
		const digit = 0.05
		if !(want-digit <= got*1.02 && want+digit >= got*0.945) {
			t.Errorf("table at %g °C and %s barg: %g g/L, water %.3g", tC, r["gauge"], want, got)
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }
