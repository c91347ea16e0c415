package carbonation

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func anyLiquid(t *rapid.T) Liquid {
	l := Liquid{
		SugarGPerL:      rapid.Float64Range(0, 200).Draw(t, "sugar"),
		AlcoholFraction: rapid.Float64Range(0, 0.15).Draw(t, "alcohol"),
		OtherGPerL:      rapid.Float64Range(0, 150).Draw(t, "other"),
	}
	if rapid.Bool().Draw(t, "salt") {
		l.IonsMolPerL = map[string]float64{"Na+": rapid.Float64Range(0, 0.2).Draw(t, "Na"), "Cl-": 0.05}
	}
	return l
}

func anyPack(t *rapid.T) Pack {
	fill := rapid.Float64Range(200, 1000).Draw(t, "fill")
	return Pack{
		FillML: fill, BrimfulML: fill * rapid.Float64Range(1.02, 1.3).Draw(t, "brimful"),
		FillTempC:    rapid.Float64Range(0, 30).Draw(t, "fillC"),
		Material:     packOf(t, rapid.SampledFrom(PackTypes()).Draw(t, "pack")),
		HeadspaceGas: rapid.SampledFrom([]string{GasUnknown, GasAir, GasNitrogen, GasCO2, GasVacuum}).Draw(t, "gas"),
		NitrogenG:    rapid.SampledFrom([]float64{0, 0.05, 0.3}).Draw(t, "nitrogen"),
		Volumes:      rapid.SampledFrom([]float64{0, 0.5, 1.6, 2.5, 4}).Draw(t, "volumes"),
		Liquid:       anyLiquid(t),
		AltitudeM:    rapid.SampledFrom([]float64{0, -200, 1500, 3000}).Draw(t, "altitude"),
		Deaerated:    rapid.Bool().Draw(t, "deaerated"),
	}
}

// usable tells whether a pack and temperature have a gas pressure at all.
func usable(s State, err error) bool { return err == nil && !s.LiquidFull }

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		volumes, tC := rapid.Float64Range(0.01, 5).Draw(t, "volumes"), rapid.Float64Range(0, 80).Draw(t, "tC")
		l := anyLiquid(t)
		p, err := l.Pressure(volumes, tC)
		back, errBack := l.Volumes(must(t, p, err), tC)
		if got := must(t, back, errBack); !(math.Abs(got/volumes-1) <= 1e-7) {
			t.Fatalf("%g volumes came back as %g", volumes, got)
		}
		if got := VolumesOf(GramsPerLitre(volumes)); !(math.Abs(got/volumes-1) <= 1e-14) {
			t.Fatalf("%g volumes came back from g/L as %g", volumes, got)
		}
	})
}

func TestPressureRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, volumes, tC := anyLiquid(t), rapid.Float64Range(0.1, 4).Draw(t, "volumes"), rapid.Float64Range(0, 78).Draw(t, "tC")
		base := float64(pressure(t, l, volumes, tC))
		warmer, fuller := pressure(t, l, volumes, tC+1), pressure(t, l, volumes*1.01, tC)
		if !(float64(warmer) > base && float64(fuller) > base) {
			t.Fatalf("%g kPa, a degree warmer %g, 1 %% more gas %g", base, warmer, fuller)
		}
	})
}

func pressure(t fataler, l Liquid, volumes, tC float64) AbsoluteKPa {
	p, err := l.Pressure(volumes, tC)
	return must(t, p, err)
}

// TestPackPressureRises with temperature, gas, and above 20 °C with fill.
func TestPackPressureRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, tC := anyPack(t), rapid.Float64Range(20, 75).Draw(t, "tC")
		s, err := p.At(tC)
		if !usable(s, err) {
			t.Skip()
		}
		warm, err := p.At(tC + 1)
		if usable(warm, err) && !(warm.Gauge > s.Gauge) {
			t.Fatalf("%g kPa at %g °C, %g a degree above", s.Gauge, tC, warm.Gauge)
		}
		more := p
		more.Volumes += 0.1
		if p.Volumes > 0 {
			if m, err := more.At(tC); usable(m, err) && !(m.Gauge > s.Gauge) {
				t.Fatalf("%g kPa, with more gas %g", s.Gauge, m.Gauge)
			}
		}
		fuller := p
		fuller.FillML *= 1.002
		if f, err := fuller.At(tC); p.Volumes > 0 && p.HeadspaceGas == GasCO2 && usable(f, err) && !(float64(f.Gauge) > float64(s.Gauge)-1e-6) {
			t.Fatalf("%g kPa, fuller %g", s.Gauge, f.Gauge)
		}
	})
}

// TestGasIsKept adds up drink and headspace at any temperature.
func TestGasIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, tC := anyPack(t), rapid.Float64Range(0, 80).Draw(t, "tC")
		c, err := p.closeNominal()
		if err != nil {
			t.Skip()
		}
		warm := c.pack.mix.isotherm(tC)
		s, err := c.at(&warm)
		if !usable(s, err) {
			t.Skip()
		}
		b, pKPa := c.balanceAt(&warm), float64(s.Absolute)
		gaseous := b.room(pKPa) / b.gas.rt
		n2 := b.n2 / (b.n2PerKPa + gaseous) // kPa
		o2 := b.o2 / (b.o2PerKPa + gaseous)
		keep := func(what string, total, part float64) {
			if !(math.Abs(total-part) <= 1e-6*total+1e-8) {
				t.Fatalf("%s: %g mol in the pack, %g in drink and headspace", what, total, part)
			}
		}
		keep("CO2", c.co2, b.co2PerKPa*b.co2Fugacity(pKPa)+b.co2InHeadspace(pKPa))
		keep("N2", c.n2, n2*(b.n2PerKPa+gaseous))
		keep("O2", c.o2, o2*(b.o2PerKPa+gaseous))
		co2 := pKPa - b.vapour - n2 - o2
		if !(co2 >= -1e-5*pKPa) {
			t.Fatalf("partial pressures exceed the total: %g kPa left for CO2 of %g", co2, pKPa)
		}
	})
}

// TestReadingRoundTrip: what a flushed pack shows, read back, gives its volumes.
func TestReadingRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, tC := anyPack(t), rapid.Float64Range(0, 60).Draw(t, "tC")
		p.HeadspaceGas, p.NitrogenG, p.AltitudeM, p.Volumes = GasCO2, 0, 0, rapid.Float64Range(0.5, 4).Draw(t, "volumes")
		s, err := p.At(tC)
		at20, err20 := p.At(20)
		if !usable(s, err) || !usable(at20, err20) {
			t.Skip()
		}
		back, err := p.WithReading(s.Gauge, tC)
		if got := must(t, back, err).Volumes; !(math.Abs(got/p.Volumes-1) <= 1e-5) {
			t.Fatalf("%g volumes came back as %g", p.Volumes, got)
		}
	})
}

// TestWorstIsWorst: never below the nominal state, never better for a wider
// tolerance, nor for a key left unsaid.
func TestWorstIsWorst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, tC := anyPack(t), rapid.Float64Range(0, 80).Draw(t, "tC")
		narrow := p.FillML * rapid.Float64Range(0, 0.02).Draw(t, "narrow")
		wide := narrow + p.FillML*rapid.Float64Range(0, 0.02).Draw(t, "more")
		n, err := p.At(tC)
		a, errA := p.Worst(narrow, tC)
		b, errB := p.Worst(wide, tC)
		if errors.Is(err, ErrAboveGasLimit) || errA != nil || errB != nil {
			t.Skip()
		}
		const slack = 0.05 // kPa, of the search between the ends of the tolerance
		if must(t, n, err).Gauge > a.Gauge+slack || a.Gauge > b.Gauge+slack {
			t.Fatalf("nominal %g, ±%g mL %g, ±%g mL %g kPa", n.Gauge, narrow, a.Gauge, wide, b.Gauge)
		}
		between := p
		between.FillML += narrow * rapid.Float64Range(-1, 1).Draw(t, "where")
		if s, err := between.At(tC); err == nil && s.Gauge > a.Gauge+slack {
			t.Fatalf("filled %g mL: %g, worst %g kPa", between.FillML, s.Gauge, a.Gauge)
		}
		unsaid := p
		unsaid.HeadspaceGas, unsaid.Material = GasUnknown, Material{}
		u, err := unsaid.Worst(narrow, tC)
		rigid := p
		rigid.Material = Material{}
		r, errR := rigid.Worst(narrow, tC)
		if err == nil && errR == nil && u.Gauge < r.Gauge-slack {
			t.Fatalf("gas unsaid %g, said %q %g kPa", u.Gauge, p.HeadspaceGas, r.Gauge)
		}
	})
}

// TestLowestIsLowest: never above the nominal state of a still pack, never higher
// for a wider tolerance, nor for a gas left unsaid.
func TestLowestIsLowest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, tC := anyPack(t), rapid.Float64Range(0, 95).Draw(t, "tC")
		p.Volumes, p.FillTempC = 0, rapid.Float64Range(0, 90).Draw(t, "hot")
		narrow := p.FillML * rapid.Float64Range(0, 0.02).Draw(t, "narrow")
		wide := narrow + p.FillML*rapid.Float64Range(0, 0.02).Draw(t, "more")
		n, err := p.At(tC)
		if !usable(n, err) {
			t.Skip()
		}
		a, errA := p.Lowest(narrow, tC)
		b, errB := p.Lowest(wide, tC)
		const slack = 0.1 // kPa: a vacuum may be deeper by that much between the ends of the tolerance
		if must(t, a, errA).Gauge > n.Gauge+slack || must(t, b, errB).Gauge > a.Gauge+slack {
			t.Fatalf("nominal %g, ±%g mL %g, ±%g mL %g kPa", n.Gauge, narrow, a.Gauge, wide, b.Gauge)
		}
		p.HeadspaceGas = GasUnknown
		u, errU := p.Lowest(narrow, tC)
		if must(t, u, errU).Gauge > a.Gauge+slack {
			t.Fatalf("gas unsaid %g, said %g kPa", u.Gauge, a.Gauge)
		}
	})
}

// TestAnything: no input makes a panic or a number that is none.
func TestAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string) float64 {
			return rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1, 400), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0})).Draw(t, name)
		}
		p := Pack{
			BrimfulML: f("brimful"), FillML: f("fill"), FillTempC: f("fillC"), HeadspaceGas: rapid.SampledFrom([]string{"", "CO2", "air", "x"}).Draw(t, "gas"),
			NitrogenG: f("nitrogen"), Volumes: f("volumes"), AltitudeM: f("altitude"),
			Material: Material{ExpansionPerK: f("expansion"), GivePerBar: Spread{f("low"), f("nominal"), f("high")}, Barrer: Spread{f("b1"), f("b2"), f("b3")}, WallMM: f("wall")},
			Liquid:   Liquid{SugarGPerL: f("sugar"), AlcoholFraction: f("alcohol"), OtherGPerL: f("other"), IonsMolPerL: map[string]float64{"Na+": f("Na")}},
		}
		tC, tolerance := f("tC"), f("tolerance")
		for _, get := range []func() (State, error){
			func() (State, error) { return p.At(tC) }, func() (State, error) { return p.Worst(tolerance, tC) }, func() (State, error) { return p.Lowest(tolerance, tC) },
		} {
			if s, err := get(); err == nil && !s.LiquidFull && !(s.Absolute >= 0 && s.Absolute <= maxKPa && s.HeadspaceML > 0) {
				t.Fatalf("state %+v", s)
			}
		}
		finite(t, errValue(p.Liquid.Pressure(f("v"), tC)))
		finite(t, errValue(p.Liquid.Volumes(AbsoluteKPa(f("p")), tC)))
		finite(t, errValue(p.NitrogenFor(GaugeKPa(f("target")), tolerance, tC)))
		finite(t, errValue(VolumesLeft(f("v0"), f("loss"), f("months"))))
		if read, err := p.WithReading(GaugeKPa(f("g")), tC); err == nil {
			finite(t, read.Volumes)
		}
		if loss, err := p.Material.LossPerMonth(p.BrimfulML, tC); err == nil {
			finite(t, loss.High)
		}
		finite(t, errValue(AirFree(AbsoluteKPa(f("read")), f("air"), f("headspace"), StandardAtmosphere)))
	})
}

func errValue[T ~float64](v T, err error) float64 {
	if err != nil {
		return 0
	}
	return float64(v)
}

func finite(t *rapid.T, v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		t.Fatalf("%g without an error", v)
	}
}
