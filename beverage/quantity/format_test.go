package quantity_test

import (
	"math"
	"testing"

	"posset/beverage/quantity"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		v      float64
		dim    quantity.Dimension
		digits int
		metric string
		us     string
	}{
		{121.1111, quantity.Temperature, 4, "121.1 °C", "250 °F"},
		{10, quantity.TemperatureDifference, 3, "10 C°", "18 F°"},
		{330, quantity.Volume, 3, "330 mL", "11.2 fl oz"},
		{20000, quantity.Volume, 3, "20 L", "5.28 gal"},
		{0.25, quantity.Concentration, 3, "250 mg/L", "250 mg/L"},
		{66, quantity.Concentration, 3, "66 g/L", "66 g/L"},
		{0.025, quantity.Fraction, 2, "0.025 %", "0.025 %"},
		{0.0025, quantity.Fraction, 2, "25 mg/kg", "25 mg/kg"},
		{90, quantity.Duration, 2, "90 s", "90 s"},
		{360, quantity.Duration, 2, "6 min", "6 min"},
		{86400, quantity.Duration, 2, "24 h", "24 h"},
		{60 * 86400, quantity.Duration, 2, "60 days", "60 days"},
		{273.9375 * 86400, quantity.Duration, 2, "9 months", "9 months"},
		{1.022, quantity.Density, 4, "1.022 g/mL", "8.529 lb/gal"},
		{0.2e-6, quantity.Length, 2, "0.2 µm", "0.2 µm"},
		{0.0508, quantity.Length, 3, "50.8 mm", "2 in"},
		{1200, quantity.Length, 3, "1200 m", "3937 ft"},
		{227.1247, quantity.Flow, 3, "227 L/h", "60 gal/h"},
		{22712.47, quantity.Flow, 3, "22712 L/h", "100 gal/min"},
		{0.3, quantity.PerServing, 3, "300 mg/serving", "300 mg/serving"},
		{100, quantity.Mass, 3, "100 g", "3.53 oz"},
		{math.NaN(), quantity.Mass, 3, "unknown", "unknown"},
		{math.Inf(1), quantity.Temperature, 3, "unknown", "unknown"},
		{3.25, quantity.None, 3, "3.25", "3.25"},
	} {
		if got := quantity.Format(c.v, c.dim, c.digits, quantity.Metric); got != c.metric {
			t.Errorf("%v metric: %s, want %s", c.v, got, c.metric)
		}
		if got := quantity.Format(c.v, c.dim, c.digits, quantity.US); got != c.us {
			t.Errorf("%v US: %s, want %s", c.v, got, c.us)
		}
	}
}

func TestFormatPressure(t *testing.T) {
	for _, c := range []struct {
		kPa    float64
		gauge  bool
		s      quantity.System
		wanted string
	}{
		{620, true, quantity.Metric, "6.2 barg"},
		{101.325, false, quantity.Metric, "1.01 bara"},
		{620, true, quantity.US, "89.9 psig"},
		{600000, true, quantity.Metric, "600 MPa"},
		{600000, false, quantity.US, "87023 psi"},
		{math.NaN(), true, quantity.US, "unknown"},
	} {
		if got := quantity.FormatPressure(c.kPa, c.gauge, 3, c.s); got != c.wanted {
			t.Errorf("%v: %s, want %s", c.kPa, got, c.wanted)
		}
	}
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{
		{0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {-0.00001, 1, "-0.00001"}, {1234.5, 2, "1234"}, {0.99999, 2, "1"},
		{2.5, 0, "2.5"}, {1e-7, 0, "0.0000001"}, {math.NaN(), 2, "unknown"}, {12.0, 4, "12"}, {99.96, 3, "100"},
	} {
		if got := quantity.Number(c.v, c.digits); got != c.want {
			t.Errorf("%v to %d digits: %s, want %s", c.v, c.digits, got, c.want)
		}
	}
}
