package quantity_test

import (
	"math"
	"testing"

	"posset/beverage/quantity"
)

// Factors as printed in NIST Special Publication 811 (2008), appendix B.8, to
// the digits printed there (basis: memory); °F by its definition.
func TestFactors(t *testing.T) {
	for _, c := range []struct {
		text    string
		dim     quantity.Dimension
		want    float64
		allowed float64 // half the last digit printed, relative
	}{
		{"1 psig", quantity.Pressure, 6.894757, 1e-7},
		{"1 atma", quantity.Pressure, 101.325, 0},
		{"1 bara", quantity.Pressure, 100, 0},
		{"1 gal", quantity.Volume, 3785.412, 1e-6},
		{"1 fl oz", quantity.Volume, 29.57353, 1e-6},
		{"1 qt", quantity.Volume, 946.3529, 1e-6},
		{"1 pt", quantity.Volume, 473.1765, 1e-6},
		{"1 oz", quantity.Mass, 28.34952, 1e-6},
		{"1 lb", quantity.Mass, 453.5924, 1e-6},
		{"1 in", quantity.Length, 0.0254, 1e-15},
		{"1 ft", quantity.Length, 0.3048, 1e-15},
		{"1 oz/gal", quantity.Concentration, 7.489152, 1e-6},
		{"1 lb/gal", quantity.Concentration, 119.8264, 1e-6},
		{"1 lb/gal", quantity.Density, 0.1198264, 1e-6},
		{"1 gal/min", quantity.Flow, 3600 * 6.309020e-2, 1e-6},
		{"1 P", quantity.Viscosity, 100, 0},
		{"1 cP", quantity.Viscosity, 1, 0},
		{"212 F", quantity.Temperature, 100, 1e-15},
		{"-40 °F", quantity.Temperature, -40, 1e-15},
		{"250 F", quantity.Temperature, 121.1111, 1e-6},
		{"273.15 K", quantity.Temperature, 0, 0},
		{"18 F", quantity.TemperatureDifference, 10, 1e-15},
		{"10 K", quantity.TemperatureDifference, 10, 0},
		{"12 months", quantity.Duration, 365.25 * 86400, 1e-15},
		{"250 ppm", quantity.Fraction, 0.025, 1e-15},
		{"0.45 % w/v", quantity.Concentration, 4.5, 1e-15},
		{"5 % v/v", quantity.PerVolume, 50, 0},
		{"2 fl oz/gal", quantity.PerVolume, 15.625, 0},
		{"1022 kg/m3", quantity.Density, 1.022, 1e-15},
		{"1.2 g/mL", quantity.Concentration, 1200, 0},
		{"1 h 30 min", quantity.Duration, 5400, 0},
		{"600 MPa", quantity.Pressure, 600000, 0},
		{"0.2 µm", quantity.Length, 0.2e-6, 1e-15},
	} {
		q, err := quantity.ParseAs(c.text, c.dim)
		if err != nil || !(math.Abs(q.Value-c.want) <= c.allowed*math.Abs(c.want)) || q.Dim != c.dim {
			t.Errorf("%s: %v %v (%v), want %v", c.text, q.Value, q.Dim.Base(), err, c.want)
		}
	}
}

// Every spelling of a row is the same quantity.
func TestSpellings(t *testing.T) {
	for _, row := range [][]string{
		{"93 °C", "93C", "93 C", "93 degC", "93 deg C", "93 º C", "93\u00a0°C", "93\u202f°C", "93 ℃", " 93  °C ", "+93 C", "93.0 C", "9.3e1 C"},
		{"199 °F", "199F", "199 degF", "199 ° F", "199 ℉"},
		{"2.4 barg", "2.4 bar(g)", "2.4 bar g", "2.4 bar gauge", "2.4barg", "2.4 BARG", "2.4 bar (g)"},
		{"35 psia", "35 PSIA", "35 psi(a)", "35 psi abs", "35 psi absolute"},
		{"0.2 µm", "0.2 μm", "0.2 um", "0.2 micron"},
		{"20 mPa·s", "20 mPa.s", "20 mPa s", "20 mPas", "20 cP", "20 mPa⋅s"},
		{"2.8 g/L", "2.8 g/l", "2.8 g / L", "2.8g/L"},
		{"12 fl oz", "12 fl. oz.", "12 floz"},
		{"8 °Brix", "8 Brix", "8 °Bx", "8°Brix"},
		{"0.9 %", "0.9%", "0.9 % w/w", "0.9\u00a0%", "0.9 percent"},
		{"5 % vol", "5%vol", "5 % v/v", "5 % ABV"},
		{"1022 kg/m3", "1022 kg/m³", "1022 kg/m^3"},
		{"-18 C", "−18 °C"},
	} {
		want, err := quantity.Parse(row[0])
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range row[1:] {
			q, err := quantity.Parse(text)
			if err != nil || q.Value != want.Value || q.Dim != want.Dim || q.Gauge != want.Gauge || q.Absolute != want.Absolute {
				t.Errorf("%q: %+v (%v), want as %q", text, q, err, row[0])
			}
		}
	}
}

func TestAs(t *testing.T) {
	q, err := quantity.Parse("6.5 % as citric acid")
	if err != nil || q.As != "citric acid" || q.Value != 6.5 {
		t.Errorf("%+v %v", q, err)
	}
}

// A number in the unit it was written in is never recomputed.
func TestInUnit(t *testing.T) {
	q, err := quantity.Parse("0.2 µm")
	if err != nil || q.InUnit("µm") != 0.2 || q.InUnit("mm") != 0.0002 {
		t.Errorf("%v %v %v", q.InUnit("µm"), q.InUnit("mm"), err)
	}
	if !math.IsNaN(q.InUnit("g")) || !math.IsNaN(q.InUnit("nonsense")) {
		t.Error("a foreign unit must give NaN")
	}
}

func TestIn(t *testing.T) {
	q, err := quantity.Parse("18 F")
	if err != nil {
		t.Fatal(err)
	}
	difference, err := q.In(quantity.TemperatureDifference)
	if err != nil || difference.Value != 10 {
		t.Errorf("%+v %v", difference, err)
	}
	if _, err = q.In(quantity.Volume); err == nil || err.Error() != `"18 F" is a temperature; write a volume such as "330 mL"` {
		t.Error(err)
	}
}

func TestTyped(t *testing.T) {
	one := func(v float64, err error) float64 {
		if err != nil {
			t.Error(err)
		}
		return v
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"temperature", one(quantity.ParseTemperature("121.1C")), 121.1},
		{"difference", one(quantity.ParseTemperatureDifference("0.9 F")), 0.5},
		{"duration", one(quantity.ParseDuration("6 min")), 360},
		{"volume", one(quantity.ParseVolume("1 L")), 1000},
		{"length", one(quantity.ParseLength("2 in")), 0.0508},
		{"flow", one(quantity.ParseFlow("1 m3/h")), 1000},
		{"viscosity", one(quantity.ParseViscosity("1 Pa·s")), 1000},
		{"density", one(quantity.ParseDensity("1.03 kg/L")), 1.03},
		{"alcohol", one(quantity.ParseAlcohol("5 %")), 5},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if kPa, gauge, err := quantity.ParsePressure("2.4 bara"); kPa != 240 || gauge || err != nil {
		t.Error(kPa, gauge, err)
	}
	if kPa, gauge, err := quantity.ParsePressure("600 MPa"); kPa != 600000 || !gauge || err != nil {
		t.Error(kPa, gauge, err)
	}
	for text, dim := range map[string]quantity.Dimension{"80 g/L": quantity.Concentration, "8 Brix": quantity.Sugar, "8 %": quantity.Fraction} {
		if q, err := quantity.ParseSugar(text); q.Dim != dim || err != nil {
			t.Error(text, q, err)
		}
	}
}
