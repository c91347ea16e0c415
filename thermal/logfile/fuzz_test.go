package logfile_test

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

// FuzzRead feeds anything: it must end in one line or in numbers that are some.
func FuzzRead(f *testing.F) {
	short := record{t: []float64{0, 5, 10, 15, 20}, cols: [][]float64{{20, 90, 121, 121, 60}, {20, 85, 120, 121, 70}, {20, 80, 118, 120, 75}}}
	for _, form := range forms {
		f.Add([]byte(form.write(short)))
	}
	for _, bad := range []string{
		"", "time,T (°C)\n", "\xff\xfet\x00", "\x1f\x8b\x08\x00", "PK\x03\x04", "a;b\n\"1;2\n\"\"3\";4", "time_s,T1 (°C)\n0,999.9\n0,20\n0,21\n-5,1e300\n1e99,7\n",
		"time_s,T1 (°C)\n0,20\n5,20\n10,20\n5,20\n6,21\n7,22\n8,23\n100,24\n50,25\n", "Time,T1 (°C)\n23:59:59,20\n00:00:01,21\n23:59:58,22\n12:00:00,23\n",
	} {
		f.Add([]byte(bad))
	}
	o := logfile.Options{ToleranceC: 0.5, StaysAtC: []float64{100}, Bases: []logfile.Basis{{Ref: thermal.F0}, {Ref: thermal.PU, MinC: 50}}}
	f.Fuzz(func(t *testing.T, data []byte) {
		if bytes.HasPrefix(data, []byte("PK")) && len(data) > 1<<16 {
			t.Skip("a workbook takes too long to fuzz")
		}
		l, err := logfile.Read(context.Background(), bytes.NewReader(data), "run.csv", o)
		if err != nil {
			require.False(t, strings.ContainsAny(err.Error(), "\n\r\x1b"), "%q", err.Error())
			return
		}
		for _, p := range l.Probes {
			require.LessOrEqual(t, len(p.Faults), 201)
			for _, r := range p.Results {
				sane(t, r.LethalityMin, r.CreditedMin, r.CreditedBeforeCoolingMin, r.CreditedHeatingMin, r.CreditedHoldMin)
			}
			for _, s := range p.Stays {
				sane(t, s.WordS, s.CreditedS, s.TotalS)
			}
		}
	})
}

func sane(t *testing.T, values ...*float64) {
	t.Helper()
	for _, v := range values {
		require.True(t, v == nil || *v >= -1e-9 && !math.IsInf(*v, 0), "%v", values)
	}
}
