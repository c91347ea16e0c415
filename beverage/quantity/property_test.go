package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// written draws a quantity in any unit, as a user may write it.
func written(t *rapid.T) string {
	u := units[rapid.IntRange(0, len(units)-1).Draw(t, "unit")]
	names := append([]string{u.name}, u.also...)
	name := rapid.SampledFrom(names).Draw(t, "name")
	if u.dim == Pressure {
		name = u.name + rapid.SampledFrom([]string{"g", "a", "(g)", " absolute"}).Draw(t, "kind")
	}
	v := rapid.Float64Range(0, 1e9).Draw(t, "number")
	if v < 1e-9 {
		v = 0
	}
	return shortest(v) + rapid.SampledFrom([]string{"", " ", "\u00a0"}).Draw(t, "space") + name
}

// What is written canonically reads back as the very same quantity.
func TestStringReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q, err := Parse(written(t))
		if err != nil {
			t.Fatal(err)
		}
		again, err := Parse(q.String())
		again.Text = q.Text
		if err != nil || again != q {
			t.Fatalf("%+v became %+v (%v)", q, again, err)
		}
	})
}

// A formatted value with all its digits reads back as itself, in both systems.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Dimension(rapid.IntRange(int(Temperature), int(Sugar)).Draw(t, "dimension"))
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		v := rapid.Float64Range(1e-6, 1e6).Draw(t, "value")
		text := Format(v, d, 0, s)
		if d == Pressure {
			text = FormatPressure(v, rapid.Bool().Draw(t, "gauge"), 0, s)
		}
		q, err := ParseAs(text, d)
		if err != nil || !(math.Abs(q.Value-v) <= 1e-12*max(math.Abs(v), zeroCInK)) {
			t.Fatalf("%v became %s, %v (%v)", v, text, q.Value, err)
		}
	})
}

// A difference is linear in what is written: it has no 32 in it, whatever the
// unit and the sign.
func TestDifferencesAreLinear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]string{"C", "F", "K", "C°", "F°", "°F"}).Draw(t, "unit")
		v := rapid.Float64Range(-500, 500).Draw(t, "number")
		once, err1 := ParseTemperatureDifference(shortest(v) + " " + unit)
		twice, err2 := ParseTemperatureDifference(shortest(2*v) + " " + unit)
		if math.Abs(v) < smallest && v != 0 {
			return
		}
		if err1 != nil || err2 != nil || math.Abs(twice-2*once) > 1e-12*math.Abs(twice) {
			t.Fatalf("%v %s: %v and doubled %v (%v, %v)", v, unit, once, twice, err1, err2)
		}
	})
}

// More is more: a larger number in the same unit is a larger quantity.
func TestUnitsKeepOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := units[rapid.IntRange(0, len(units)-1).Draw(t, "unit")]
		a, b := rapid.Float64Range(0, 1e6).Draw(t, "a"), rapid.Float64Range(0, 1e6).Draw(t, "b")
		if (u.toBase(a, u.dim) < u.toBase(b, u.dim)) != (a < b) && math.Abs(a-b) > 1e-9*(a+b)+1e-9 {
			t.Fatalf("%v and %v %s change order", a, b, u.name)
		}
	})
}

// No spelling is claimed by two units, and every dimension can be told, taken
// and formatted.
func TestTablesAreWhole(t *testing.T) {
	names := make(map[string]string)
	for _, u := range units {
		for _, n := range append([]string{u.name}, u.also...) {
			if other, taken := names[n]; taken {
				t.Errorf("%q is both %s and %s", n, other, u.name)
			}
			names[n] = u.name
			if tidy("1 "+n) != "1 "+n && unitByName[tidy("1 " + n)[2:]] == nil {
				t.Errorf("%q cannot be reached after tidying: %q", n, tidy("1 "+n))
			}
		}
	}
	for d := Temperature; d <= Sugar; d++ {
		about := dimensions[d]
		if q, err := ParseAs(about.example, d); err != nil || q.Dim != d {
			t.Errorf("example of %v: %v", d, err)
		}
		if d != Pressure && unitByName[about.base].dim != d {
			t.Errorf("base unit of %v is not its own", d)
		}
		for _, offered := range about.units {
			if _, err := ParseAs("1 "+offered, d); err != nil {
				t.Errorf("offered unit of %v: %v", d, err)
			}
		}
	}
}

func FuzzQuantity(f *testing.F) {
	for _, seed := range []string{"330 mL", "199 °F", "2.4 barg", "2,5 g/L", "1,000 mg/L", "0.45 % as citric acid", "600 MPa", "nan C", "1e400 g", "-0 mL", "1 h 30 min", "\u00a05\u00a0%", "5 as", "1e", ",", ".", "9999999999999 µm"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, dims := range [][]Dimension{nil, {Volume}, {Concentration, Fraction, PerServing}, {TemperatureDifference}, {Pressure}} {
			q, err := ParseAs(text, dims...)
			if err != nil {
				oneCleanLine(t, err.Error())
				continue
			}
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) || q.Value < least(q.Dim, noReference) && q.Dim != Pressure {
				t.Fatalf("%q became %v", text, q.Value)
			}
			if again, err := ParseAs(q.String(), dims...); err != nil || again.Value != q.Value {
				t.Fatalf("%q, written %q, became %v (%v)", text, q, again.Value, err)
			}
		}
	})
}

func oneCleanLine(t *testing.T, line string) {
	for _, c := range line {
		if c < ' ' || c == 0x7f {
			t.Fatalf("control character in %q", line)
		}
	}
	if len(line) > 1000 {
		t.Fatalf("%d bytes in one line", len(line))
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseAs("330 mL", Volume); err != nil {
			b.Fatal(err)
		}
	}
}
