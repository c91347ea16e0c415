package logfile_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"posset/thermal/logfile"
)

// course is how a column runs: medium and what follows it, °C at a time in s.
type course func(t float64) float64

// lag follows another course as a first-order sensor or pack does, from its own
// first value on; two of them after each other make a pack that heats by
// conduction.
func (c course) lag(tauS, dt, until float64) course {
	n := int(until/dt) + 2
	x := make([]float64, n)
	x[0] = c(0)
	for i := 1; i < n; i++ {
		x[i] = x[i-1] + (c(float64(i)*dt)-x[i-1])*(1-math.Exp(-dt/tauS))
	}
	return func(t float64) float64 { return x[min(int(t/dt), n-1)] }
}

// steps makes a course of straight lines through points (s, °C).
func steps(points ...[2]float64) course {
	return func(t float64) float64 {
		for i := 1; i < len(points); i++ {
			if a, b := points[i-1], points[i]; t < b[0] {
				return a[1] + (b[1]-a[1])*(t-a[0])/(b[0]-a[0])
			}
		}
		return points[len(points)-1][1]
	}
}

// Sound logs of every process in the trade: no fault, exact credit.
func TestSoundKindsOfProcess(t *testing.T) {
	retort := steps([2]float64{0, 22}, [2]float64{60, 22}, [2]float64{600, 121.5}, [2]float64{2400, 121.5}, [2]float64{2460, 95}, [2]float64{3000, 25}, [2]float64{4800, 20})
	hunting := course(func(t float64) float64 {
		if c := retort(t); c > 121 {
			return c + 0.6*math.Sin(t/37) + 0.3*math.Sin(t/11)
		}
		return retort(t)
	})
	conduction := retort.lag(900, 1, 4800).lag(500, 1, 4800)
	tunnel := steps([2]float64{0, 18}, [2]float64{300, 40}, [2]float64{600, 52}, [2]float64{900, 64}, [2]float64{1800, 64}, [2]float64{2100, 45}, [2]float64{2700, 25}, [2]float64{3600, 25})
	filled := course(func(t float64) float64 { return 24 + 63*math.Exp(-math.Max(0, t-180)/700) })
	flow := steps([2]float64{0, 18}, [2]float64{30, 18}, [2]float64{90, 72.5}, [2]float64{1500, 72.5}, [2]float64{1520, 40}, [2]float64{1600, 20}).lag(3, 0.1, 1700)
	aseptic := steps([2]float64{0, 85}, [2]float64{120, 139}, [2]float64{3000, 139}, [2]float64{3100, 60}, [2]float64{3600, 30}).lag(2, 0.1, 3700)
	for name, c := range map[string]struct {
		columns []course
		names   []string
		until   float64
	}{
		"retort, hunting":               {[]course{hunting, hunting.lag(30, 1, 4800), hunting.lag(240, 1, 4800)}, []string{"Retort", "Can 1", "Can 2"}, 4800},
		"packs that conduct":            {[]course{retort, conduction, retort.lag(60, 1, 4800)}, []string{"Retort", "Can 1", "Can 2"}, 4800},
		"packs that conduct, no medium": {[]course{conduction, retort.lag(60, 1, 4800)}, []string{"Can 1", "Can 2"}, 4800},
		"tunnel":                        {[]course{tunnel, tunnel.lag(150, 1, 3600), tunnel.lag(200, 1, 3600)}, []string{"Spray water", "Bottle 1", "Bottle 2"}, 3600},
		"hot fill":                      {[]course{filled, filled.lag(90, 1, 3600)}, []string{"Bottle centre", "Cap"}, 3600},
		"hold tube":                     {[]course{flow}, []string{"Hold tube outlet"}, 1700},
		"aseptic line":                  {[]course{aseptic, aseptic.lag(4, 0.1, 3700)}, []string{"Hold tube inlet product", "Hold tube outlet"}, 3700},
	} {
		for _, interval := range []float64{1, 5, 15, 60} {
			for _, step := range []float64{0.01, 0.1, 1} {
				for _, noise := range []float64{0, 0.03, 0.15} {
					t.Run(fmt.Sprintf("%s, every %g s, step %g, noise %g", name, interval, step, noise), func(t *testing.T) {
						rng := rand.New(rand.NewPCG(uint64(interval*100+step*10), uint64(noise*1000)))
						checkSound(t, written(c.columns, c.names, c.until, interval, step, noise, rng, even))
					})
				}
			}
		}
	}
}

// even is a clock in equal steps.
func even(i int, interval float64, _ *rand.Rand) float64 { return float64(i) * interval }

func written(columns []course, names []string, until, interval, step, noise float64, rng *rand.Rand, clock func(i int, interval float64, rng *rand.Rand) float64) record {
	r := record{names: names, digit: decimals(step), step: step, noise: noise, cols: make([][]float64, len(columns))}
	for i := 0; ; i++ {
		t := clock(i, interval, rng)
		if t > until {
			return r
		}
		r.t = append(r.t, t)
		for k, c := range columns {
			r.cols[k] = append(r.cols[k], math.Round((c(t)+noise*rng.NormFloat64())/step)*step)
		}
	}
}

// Clocks that do not tick evenly are sound too.
func TestSoundClocks(t *testing.T) {
	retort := steps([2]float64{0, 22}, [2]float64{600, 121.5}, [2]float64{2400, 121.5}, [2]float64{2500, 80}, [2]float64{3600, 20})
	columns := []course{retort.lag(40, 1, 3700), retort.lag(200, 1, 3700)}
	for name, clock := range map[string]func(i int, interval float64, rng *rand.Rand) float64{
		"rounded to the second": func(i int, _ float64, _ *rand.Rand) float64 { return math.Floor(float64(i) * 1.4) },
		"a little off": func(i int, _ float64, rng *rand.Rand) float64 {
			return float64(i)*5 + math.Round(200*rng.Float64())/1000
		},
		"tenths of a second": func(i int, _ float64, _ *rand.Rand) float64 { return float64(i) / 10 },
		"faster while hot": func(i int, _ float64, _ *rand.Rand) float64 {
			switch {
			case i < 8:
				return float64(i) * 60
			case i < 8+400:
				return 480 + float64(i-8)*5
			}
			return 480 + 2000 + float64(i-408)*60
		},
	} {
		t.Run(name, func(t *testing.T) {
			checkSound(t, written(columns, []string{"Can 1", "Can 2"}, 3600, 0, 0.1, 0.05, rand.New(rand.NewPCG(1, 1)), clock))
		})
	}
}

// line is a course that is brought to one temperature, goes from there to another
// within a time, and back near its end.
func line(inletC, outletC, atS, withinS, until float64) course {
	return steps([2]float64{0, 20}, [2]float64{atS / 2, inletC}, [2]float64{atS, inletC}, [2]float64{atS + withinS, outletC}, [2]float64{until - 400, outletC}, [2]float64{until - 300, inletC}, [2]float64{until, 20})
}

// Lines that heat at once are sound where the readings show it: steam injection,
// a tubular line, a new set point, that reach probe after probe.
func TestSoundFastLines(t *testing.T) {
	const until = 2400
	for name, inlet := range map[string]course{
		"steam injection": line(78, 142, 600, 2, until),
		"tubular line":    line(20, 92, 600, 40, until),
		"new set point":   line(132, 141, 600, 1, until),
		"small change":    line(136, 140, 600, 1, until),
	} {
		delayed := course(func(t float64) float64 { return inlet(t - 30) })
		columns := []course{inlet.lag(2, 0.1, until), delayed.lag(3, 0.1, until), delayed.lag(5, 0.1, until)}
		for _, interval := range []float64{1, 5} {
			t.Run(fmt.Sprintf("%s, every %g s", name, interval), func(t *testing.T) {
				if name == "steam injection" && interval == 5 {
					t.Skip("a jump by any measure")
				}
				checkSound(t, written(columns, []string{"Tube inlet product", "Tube outlet", "Filler"}, until, interval, 0.01, 0.05, rand.New(rand.NewPCG(3, 4)), even))
			})
		}
	}
}

// A step that one probe alone makes counts against the process, though a sensor
// could follow it: nothing is credited until it is taken back.
func TestLoneStepOfOneProbe(t *testing.T) {
	for _, medium := range []bool{false, true} {
		for _, interval := range []float64{1, 5, 15} {
			for _, size := range []float64{3, 8, 12} {
				for _, rows := range []int{8, 40, 4000} {
					t.Run(fmt.Sprintf("%g C° for %d rows, every %g s, medium %v", size, rows, interval, medium), func(t *testing.T) {
						p := process{intervalS: interval, step: 0.01, noiseC: 0.05, tausS: []float64{40, 60, 90}, medium: medium, topC: 121.5, holdS: 1200, restS: 700}
						sound := p.run(rand.New(rand.NewPCG(uint64(size), uint64(interval))))
						r, col := sound.clone(), len(sound.cols)-2
						at := int(1100 / interval)
						for i := at; i < min(at+rows, len(r.t)); i++ {
							r.cols[col][i] += size
						}
						before, after := read(t, sound.csv(), options()).Probes, read(t, r.csv(), options()).Probes
						assert.Empty(t, before[col].Faults)
						assert.True(t, found(after[col].Faults, []logfile.FaultKind{logfile.Rate}), "%v", after[col].Faults)
						assert.LessOrEqual(t, *after[col].Results[0].CreditedMin, *before[col].Results[0].CreditedMin)
						assert.Empty(t, after[col-1].Faults)
					})
				}
			}
		}
	}
}
