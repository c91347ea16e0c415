package carbonation

import (
	"strings"
	"testing"
)

// TestPublishedValues recomputes every row of testdata/checks.csv.
func TestPublishedValues(t *testing.T) {
	rows := records(t, "testdata/checks.csv")
	if len(rows) != 163 {
		t.Errorf("checks.csv has %d rows, want 163", len(rows))
	}
	for _, r := range rows {
		what := r["kind"] + " at " + r["t_c"] + " °C"
		tC := r.number(t, "t_c")
		within(t, what, recompute(t, r, tC), r.number(t, "want"), r.number(t, "allowed_percent"))
	}
}

func recompute(t *testing.T, r record, tC float64) float64 {
	kind := r["kind"]
	if name, ok := strings.CutPrefix(kind, "correlation "); ok {
		return correlation(t, name).MolPerLitreAtm(tC)
	}
	if name, ok := strings.CutPrefix(kind, "mole fraction "); ok {
		return 1000 * correlation(t, name).MoleFraction(r.number(t, "given"), tC)
	}
	atm := Solubility(tC).Nominal * realGasAt(tC).fugacityFactor(kPaPerAtm, 1) // mol/L under 1 atm
	switch kind {
	case "mole fraction":
		return 1000 * moleFraction(henryCO2(tC), r.number(t, "given"), tC)
	case "K0":
		return Solubility(tC).Nominal
	case "Bunsen":
		return atm * litresPerMol
	case "Ostwald": // over the concentration in the gas
		return atm * realGasAt(tC).rt * realGasAt(tC).compressibility(kPaPerAtm, 1) / kPaPerAtm
	case "grams": // per 100 g of water, 1 atm in all
		return gramsPer100(t, tC)
	case "virial":
		return 1000 * virialCO2(tC)
	case "N2":
		return perLitreAtm(iapwsTermsN2.molPerKgKPa(tC), tC)
	case "O2":
		return perLitreAtm(iapwsTermsO2.molPerKgKPa(tC), tC)
	case "vapour":
		return waterVapourKPa(tC)
	case "water density":
		return 1000 * waterDensity(tC)
	case "sugar density":
		return sugarDensity(r.number(t, "given")/100, tC)
	case "ethanol density":
		return 1000 * ethanolWaterDensity(r.number(t, "given")/100, tC)
	}
	t.Fatalf("unknown kind %q", kind)
	return 0
}

func gramsPer100(t *testing.T, tC float64) float64 {
	volumes, err := Liquid{}.Volumes(StandardAtmosphere, tC)
	return GramsPerLitre(must(t, volumes, err)) / waterDensity(referenceC) / 10
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
