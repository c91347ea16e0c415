package logfile_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"

	"posset/thermal/logfile"
)

// batches writes a log of one retort batch after the other, read every second.
func batches(probes, rows int) []byte {
	const heating, hold, whole = 420, 1140, 1500.
	rng := rand.New(rand.NewPCG(1, 2))
	text := []byte("time")
	x := make([]float64, probes)
	for i := range x {
		text = fmt.Appendf(text, ",P%d (degC)", i+1)
		x[i] = 24
	}
	start := time.Date(2026, 1, 5, 6, 0, 0, 0, time.UTC)
	for r := range rows {
		medium := 121.4
		switch s := math.Mod(float64(r), whole); {
		case s < heating:
			medium = 24 + (medium-24)*math.Min(1, s/360)
		case s >= hold:
			medium = math.Max(24, medium-(s-hold)*0.45)
		}
		text = start.Add(time.Duration(r)*time.Second).AppendFormat(append(text, '\n'), "2006-01-02T15:04:05")
		for i := range x {
			x[i] += (medium - x[i]) * (1 - math.Exp(-1/(20+9*float64(i))))
			text = strconv.AppendFloat(append(text, ','), math.Round((x[i]+0.05*rng.NormFloat64())*100)/100, 'f', 2, 64)
		}
	}
	return append(text, '\n')
}

func benchmarkRead(b *testing.B, text []byte, readings int) {
	b.SetBytes(int64(len(text)))
	b.ResetTimer()
	for b.Loop() {
		if _, err := logfile.Read(context.Background(), bytes.NewReader(text), "run.csv", options()); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(readings), "ns/reading")
}

// A long log: 24 probes at 1 Hz, hashed, checked, credited.
func BenchmarkLongLog(b *testing.B) { benchmarkRead(b, batches(24, 200_000), 24*200_000) }

// An ordinary log: 4 probes, 1,500 rows.
func BenchmarkOrdinaryLog(b *testing.B) { benchmarkRead(b, batches(4, 1500), 4*1500) }

// An ordinary log with a fault, which is judged the long way.
func BenchmarkFaultyLog(b *testing.B) {
	text := bytes.Replace(batches(4, 1500), []byte("\n2026-01-05T06:10:00"), []byte("\n\n2026-01-05T06:10:01"), 1)
	benchmarkRead(b, text, 4*1500)
}

// Many ordinary logs, one after the other on each core, as of a folder.
func BenchmarkManyLogs(b *testing.B) {
	text := batches(4, 1500)
	b.SetBytes(int64(len(text)))
	b.RunParallel(func(pb *testing.PB) {
		for pb.Next() {
			if _, err := logfile.Read(context.Background(), bytes.NewReader(text), "run.csv", options()); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/(4*1500), "ns/reading")
}

// A long log in which nearly every window holds a fault: a lost reading, a code,
// a spike, a row twice, a row lost.
func BenchmarkMixedFaults(b *testing.B) {
	const probes, rows = 8, 50_000
	lines := bytes.Split(batches(probes, rows), []byte("\n"))
	for i := 1000; i+5 < len(lines); i += 5000 {
		spoil(lines[i], "     ")
		spoil(lines[i+1000], "9999,")
		spoil(lines[i+2000], "33.33")
		lines[i+3000] = lines[i+2999]
		lines[i+4000] = nil
	}
	benchmarkRead(b, bytes.Join(lines, []byte("\n")), probes*rows)
}

// spoil writes over the end of a line.
func spoil(line []byte, text string) { copy(line[len(line)-len(text):], text) }

// A log of 10,000 rows whose readings somebody listens to.
func BenchmarkHistory(b *testing.B) {
	text, o := batches(4, 10_000), options()
	sum := 0.0
	o.History = func(_ int, _, tempC float64) { sum += tempC }
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := logfile.Read(context.Background(), bytes.NewReader(text), "run.csv", o); err != nil {
			b.Fatal(err)
		}
	}
}
