package logfile_test

import (
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"posset/thermal"
	"posset/thermal/logfile"
)

// form is one way of writing a record down.
type form struct {
	name    string
	head    string // all lines above the readings
	sep     string
	at      string // Go layout of the clock, when it is a text
	clock   func(t float64) string
	comma   bool
	unit    func(c float64) float64
	digits  int // 2 unless told
	eol     string
	tail    string // after the last reading of a row
	foot    string
	options func(o *logfile.Options)
}

// began is when the written record begins: it crosses midnight.
var began = time.Date(2026, 3, 14, 23, 51, 7, 0, time.UTC)

func (f form) write(r record) string {
	var b strings.Builder
	eol := f.eol
	if eol == "" {
		eol = "\n"
	}
	if f.head != "" {
		b.WriteString(strings.ReplaceAll(f.head, "\n", eol) + eol)
	}
	for i, t := range r.t {
		cells := []string{}
		if f.clock != nil {
			cells = append(cells, f.clock(t))
		} else {
			cells = append(cells, began.Add(time.Duration(t*1e9)).Format(f.at))
		}
		for _, c := range r.cols {
			cells = append(cells, f.number(c[i]))
		}
		b.WriteString(strings.Join(cells, f.sep) + f.tail + eol)
	}
	return b.String() + f.foot
}

func (f form) number(c float64) string {
	digits := 2
	if f.digits > 0 {
		digits = f.digits
	}
	if f.unit != nil {
		c = f.unit(c)
	}
	s := fmt.Sprintf("%.*f", digits, c)
	if f.comma {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

func kelvin(c float64) float64     { return c + 273.15 }
func fahrenheit(c float64) float64 { return c*1.8 + 32 }

func dates(order string) func(o *logfile.Options) {
	return func(o *logfile.Options) { o.Dates = order }
}

func hms(t float64) string {
	s := int(t)
	return fmt.Sprintf("%02d:%02d:%02d", s/3600, s/60%60, s%60)
}

var forms = []form{
	{name: "ISO", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05"},
	{name: "ISO with blank", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02 15:04:05"},
	{name: "ISO with zone", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05+01:00"},
	{name: "zone by name", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02 15:04:05 CET"},
	{name: "zone as hours", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02 15:04:05 UTC+1"},
	{name: "ISO, milliseconds, Z", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05.000Z"},
	{name: "ISO, slashes", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006/01/02 15:04:05"},
	{name: "compact", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "20060102 150405"},
	{name: "compact ISO", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "20060102T150405"},
	{name: "carriage returns", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05", eol: "\r\n"},
	{name: "carriage returns alone", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05", eol: "\r"},
	{name: "semicolon, decimal comma, preamble", head: "Anlage;Autoklav 3\nCharge;0417\n\nZeit;Fühler 1 [°C];Fühler 2 [°C];Fühler 3 [°C]", sep: ";", at: "02.01.2006 15:04:05", comma: true},
	{name: "semicolon, decimal point", head: "Time;T1 °C;T2 °C;T3 °C", sep: ";", at: "2006-01-02 15:04:05"},
	{name: "tab", head: "Time\tT1 degC\tT2 degC\tT3 degC", sep: "\t", at: "2006-01-02 15:04:05"},
	{name: "tab, decimal comma", head: "Time\tT1 degC\tT2 degC\tT3 degC", sep: "\t", at: "2006-01-02 15:04:05", comma: true},
	{name: "quoted", head: `"Time","Probe ""A"" (°C)","Probe B (°C)","Probe C (°C)"`, sep: ",", clock: func(t float64) string {
		return began.Add(time.Duration(t * 1e9)).Format(`"2006-01-02 15:04:05"`)
	}},
	{name: "bar separators and blanks", head: "time , T1 (°C) , T2 (°C) , T3 (°C)", sep: " , ", at: "2006-01-02 15:04:05"},
	{name: "trailing separator", head: "time,T1 (°C),T2 (°C),T3 (°C),", sep: ",", at: "2006-01-02 15:04:05", tail: ","},
	{name: "unit row", head: "Time,Probe 1,Probe 2,Probe 3\nhh:mm:ss,°C,°C,°C", sep: ",", at: "2006-01-02 15:04:05"},
	{name: "unit row, kelvin", head: "Time,Probe 1,Probe 2,Probe 3\n,K,K,K", sep: ",", at: "2006-01-02 15:04:05", unit: kelvin},
	{name: "unit in preamble", head: "Recorder;7\nUnit;°C\nTime;Probe 1;Probe 2;Probe 3", sep: ";", at: "2006-01-02 15:04:05"},
	{name: "unit given", head: "Time,Probe 1,Probe 2,Probe 3", sep: ",", at: "2006-01-02 15:04:05", options: func(o *logfile.Options) { o.Unit = "C" }},
	{name: "fahrenheit", head: "Time,Probe 1 (°F),Probe 2 (°F),Probe 3 (°F)", sep: ",", at: "2006-01-02 15:04:05", unit: fahrenheit, digits: 3},
	{name: "kelvin", head: "Time,Probe 1 [K],Probe 2 [K],Probe 3 [K]", sep: ",", at: "2006-01-02 15:04:05", unit: kelvin},
	{name: "day first", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "02/01/2006 15:04:05"},
	{name: "month first", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "01/02/2006 15:04:05"},
	{name: "month first, 12 hours", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "1/2/2006 3:04:05 PM"},
	{name: "two-digit year, declared", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "02-01-06 15:04:05", options: dates("dmy")},
	{name: "named month", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "02-Jan-2006 15:04:05"},
	{name: "named month first", head: "Time;T1 (°C);T2 (°C);T3 (°C)", sep: ";", at: "Jan 2, 2006 15:04:05"},
	{name: "date and time apart", head: "Date,Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02,15:04:05"},
	{name: "date and time apart, 12 hours, day first", head: "Datum;Zeit;T1 (°C);T2 (°C);T3 (°C)", sep: ";", at: "02.01.2006;03:04:05 pm", comma: true},
	{name: "time of day over midnight", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "15:04:05"},
	{name: "time of day, 12 hours", head: "Time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "3:04:05 PM"},
	{name: "elapsed h:m:s", head: "Elapsed,T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: hms},
	{name: "elapsed m:s", head: "Elapsed (mm:ss),T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string {
		return fmt.Sprintf("%02d:%02d", int(t)/60, int(t)%60)
	}},
	{name: "elapsed m:s by its length", head: "Elapsed,T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string {
		return fmt.Sprintf("%02d:%02d", int(t)/60, int(t)%60)
	}},
	{name: "seconds", head: "time_s,T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string { return fmt.Sprint(t) }},
	{name: "seconds by unit row", head: "t,T1,T2,T3\ns,°C,°C,°C", sep: ",", clock: func(t float64) string { return fmt.Sprint(t) }},
	{name: "minutes", head: "Time (min),T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string { return fmt.Sprintf("%.10f", t/60) }},
	{name: "minutes, decimal comma", head: "Zeit/min;T1/°C;T2/°C;T3/°C", sep: ";", clock: func(t float64) string {
		return strings.Replace(fmt.Sprintf("%.10f", t/60), ".", ",", 1)
	}, comma: true},
	{name: "hours", head: "Time [h],T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string { return fmt.Sprintf("%.12f", t/3600) }},
	{name: "epoch", head: "timestamp,T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string { return fmt.Sprint(began.Unix() + int64(t)) }},
	{name: "epoch, milliseconds", head: "timestamp,T1 (°C),T2 (°C),T3 (°C)", sep: ",", clock: func(t float64) string { return fmt.Sprint(began.UnixMilli() + int64(t*1e3)) }},
	{name: "row numbers, pressure, F value, status", head: "No,Time,T1 (°C),T2 (°C),T3 (°C),Pressure (bar),F0 (min),Status", sep: ",", clock: func(t float64) string {
		return fmt.Sprintf("%d,%s", int(t)/5+1, began.Add(time.Duration(t*1e9)).Format("2006-01-02 15:04:05"))
	}, tail: ",1.93,0.25,OK"},
	{name: "footer", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05", foot: "\nEnd of record,,,\nMax,122,122,122\n"},
	{name: "no line feed at the end", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05", foot: "# end"},
	{name: "numbers with exponents", head: "time,T1 (°C),T2 (°C),T3 (°C)", sep: ",", at: "2006-01-02T15:04:05", tail: ""},
}

func formRecord() record {
	p := process{intervalS: 5, step: 0.01, noiseC: 0.02, tausS: []float64{40, 90, 180}, topC: 121.8, holdS: 1100, restS: 700}
	return p.run(rand.New(rand.NewPCG(5, 6)))
}

func TestFormsOfText(t *testing.T) {
	r := formRecord()
	for _, f := range forms {
		t.Run(f.name, func(t *testing.T) {
			o := options()
			if f.options != nil {
				f.options(&o)
			}
			checkForm(t, r, read(t, f.write(r), o), 1e-7)
		})
	}
}

// checkForm holds a log against the record it was written from.
func checkForm(t *testing.T, r record, l *logfile.Log, within float64) {
	t.Helper()
	require.Len(t, l.Probes, len(r.cols), "%+v", l.Understood)
	for i, p := range l.Probes {
		assert.Equal(t, len(r.t), p.Samples)
		assert.Empty(t, p.Faults)
		assert.InEpsilon(t, r.lethality(i, thermal.F0, 0), *p.Results[0].LethalityMin, within)
		assert.InEpsilon(t, r.lethality(i, thermal.F0, 0.5), *p.Results[0].CreditedMin, within)
	}
}

func TestEncodings(t *testing.T) {
	r := formRecord()
	text := form{head: "Zeit;Fühler 1 [°C];Fühler 2 [°C];Fühler 3 [°C]", sep: ";", at: "02.01.2006 15:04:05", comma: true}.write(r)
	encode := func(e interface {
		Bytes([]byte) ([]byte, error)
	}) []byte {
		out, err := e.Bytes([]byte(text))
		require.NoError(t, err)
		return out
	}
	var zipped bytes.Buffer
	z := gzip.NewWriter(&zipped)
	z.Write([]byte(text))
	require.NoError(t, z.Close())
	for name, c := range map[string]struct {
		data             []byte
		format, encoding string
	}{
		"UTF-8":                       {[]byte(text), "text", "UTF-8"},
		"UTF-8 with mark":             {[]byte("\ufeff" + text), "text", "UTF-8"},
		"UTF-16 little endian":        {encode(unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewEncoder()), "text", "UTF-16LE"},
		"UTF-16 big endian":           {encode(unicode.UTF16(unicode.BigEndian, unicode.UseBOM).NewEncoder()), "text", "UTF-16BE"},
		"UTF-16 without mark":         {encode(unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM).NewEncoder()), "text", "UTF-16LE"},
		"UTF-16 big endian, unmarked": {encode(unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM).NewEncoder()), "text", "UTF-16BE"},
		"Latin-1":                     {encode(charmap.ISO8859_1.NewEncoder()), "text", "Windows-1252"},
		"gzip":                        {zipped.Bytes(), "text in gzip", "UTF-8"},
	} {
		t.Run(name, func(t *testing.T) {
			l, err := logfile.Read(context.Background(), bytes.NewReader(c.data), "run.csv", options())
			require.NoError(t, err)
			assert.Equal(t, c.format, l.Understood.Format)
			assert.Equal(t, c.encoding, l.Understood.Encoding)
			assert.Equal(t, "Fühler 1", l.Probes[0].Name)
			checkForm(t, r, l, 1e-9)
		})
	}
}
