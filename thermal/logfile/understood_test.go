package logfile_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

func TestUnderstood(t *testing.T) {
	text := "Anlage;Autoklav 3\nCharge;0417\n\nDatum;Zeit;Kern 1 [°C];Autoklav [°C];Referenz [°C];Raum [°C];Druck [bar];Probe X [°C];leer [°C]\n" +
		"02.03.2026;22:41:00;20,5;90,1;90,0;21,0;1,3;19,9;\n02.03.2026;22:41:10;21,5;90,2;90,0;21,0;1,3;19,9;\nstop\n02.03.2026;22:41:20;22,5;90,3;90,1;21,0;1,3;19,8;\n"
	l := read(t, text, options())
	assert.Equal(t, logfile.Understood{
		Format: "text", Encoding: "UTF-8", Separator: "semicolon", DecimalMark: "comma", HeadingRow: 4, FirstRow: 5, Rows: 3,
		TimeForm: "date and time in two columns", DateOrder: "dmy", DateBasis: "convention", IntervalS: 10,
		Unit: "C", UnitBasis: "heading", ResolutionC: 0.1, SkippedRows: 1, FirstSkipped: 7,
		LeftOut: []logfile.LeftOut{{Name: "Druck [bar]", Reason: "not a temperature by its heading"}, {Name: "leer", Reason: "holds no reading"}},
	}, l.Understood)
	var roles []string
	for _, p := range l.Probes {
		roles = append(roles, p.Name+": "+string(p.Role)+", "+string(p.RoleBasis))
	}
	assert.Equal(t, []string{"Kern 1: product, heading", "Autoklav: retort, heading", "Referenz: reference, heading", "Raum: other, heading", "Probe X: product, assumed"}, roles)
	assert.Equal(t, "2026-03-02T22:41:00", l.Probes[0].Start)
	assert.Equal(t, "2026-03-02T22:41:20", l.Probes[0].End)
	assert.Equal(t, []float64{0, 20, 20.5, 22.5}, []float64{l.Probes[0].StartS, l.Probes[0].EndS, l.Probes[0].MinC, l.Probes[0].MaxC})
}

func TestRoles(t *testing.T) {
	for heading, want := range map[string]logfile.Role{
		"Probe 1": logfile.Product, "Can 3 in retort 2": logfile.Product, "Bottle water bath": logfile.Product, "Coeur": logfile.Product,
		"Retort": logfile.Retort, "Steam": logfile.Retort, "Zone 2": logfile.Retort, "Water bath": logfile.Retort, "Recorder": logfile.Retort,
		"MIG thermometer": logfile.ReferenceThermometer, "TID": logfile.ReferenceThermometer, "Ref": logfile.ReferenceThermometer,
		"Ambient": logfile.Other, "Cooling water": logfile.Other, "Set point": logfile.Other,
	} {
		l := read(t, "time_s,"+heading+" (°C),Can 9 (°C)\n0,20,20\n5,21,21\n", options())
		assert.Equal(t, want, l.Probes[0].Role, heading)
	}
}

func TestDeclaredRoles(t *testing.T) {
	o := options()
	o.Roles = map[string]logfile.Role{" can  1 (°c)": logfile.Retort, "T2": logfile.Ignore, "Pump": logfile.Other}
	l := read(t, "time_s,Can 1 (°C),T2 (°C),Pump (°C)\n0,20,20,20\n5,21,21,21\n", o)
	require.Len(t, l.Probes, 2)
	assert.Equal(t, logfile.Retort, l.Probes[0].Role)
	assert.Equal(t, logfile.Declared, l.Probes[0].RoleBasis)
	assert.Equal(t, []logfile.LeftOut{{Name: "T2 (°C)", Reason: "declared as ignored"}}, l.Understood.LeftOut)
}

// A product that was declared stays, though it never showed a reading: unknown,
// and so the coldest.
func TestDeclaredProductWithoutReadings(t *testing.T) {
	o := options()
	o.Roles = map[string]logfile.Role{"T2": logfile.Product}
	l := read(t, "time_s,T1 (°C),T2 (°C)\n0,120,\n5,121,\n10,121,\n", o)
	require.Len(t, l.Probes, 2)
	assert.Zero(t, l.Probes[1].Samples)
	assert.Nil(t, l.Probes[1].Results[0].LethalityMin)
	assert.Equal(t, []logfile.Fault{{Kind: logfile.Dropout, Row: 2, Time: "0 s", Detail: "no value in 3 rows; nothing is credited over them"}}, l.Probes[1].Faults)
	index, _ := l.ColdestProduct(0)
	assert.Equal(t, 1, index)
}

// A channel without a sensor that wakes up later is not passed over.
func TestLateColumnIsRefused(t *testing.T) {
	defer logfile.SetWindowRows(50)()
	r := cans()
	for i := range 200 {
		r.cols[2][i] = nan
	}
	_, err := logfile.Read(context.Background(), strings.NewReader(r.csv()), "run.csv", options())
	require.EqualError(t, err, `run.csv: column "Can 2" shows its first reading after row 202; declare its role to have it counted, or to have it ignored`)
}

func TestNewestFirst(t *testing.T) {
	r := cans()
	want := read(t, r.csv(), options())
	slices.Reverse(r.t)
	for _, c := range r.cols {
		slices.Reverse(c)
	}
	l := read(t, r.csv(), options())
	assert.True(t, l.Understood.NewestFirst)
	for i, p := range l.Probes {
		assert.Empty(t, p.Faults)
		assert.Equal(t, want.Probes[i].Results, p.Results)
		assert.Equal(t, []float64{want.Probes[i].StartS, want.Probes[i].EndS}, []float64{p.StartS, p.EndS})
	}
	defer logfile.SetWindowRows(100)()
	_, err := logfile.Read(context.Background(), strings.NewReader(r.csv()), "run.csv", options())
	require.EqualError(t, err, "run.csv: the rows run from newest to oldest; sort them by time")
}

// Heating, hold and cooling of one can by hand: a triangle and a plateau.
func TestHoldAndStays(t *testing.T) {
	text := "time_s,Can (°C)\n"
	for s := 0; s <= 3000; s += 10 {
		c := 20.0
		switch {
		case s < 1000:
			c = 20 + 0.1*float64(s)
		case s < 2000:
			c = 120
		case s < 3000:
			c = 120 - 0.1*float64(s-2000)
		}
		text += fmt.Sprintf("%d,%.1f\n", s, c)
	}
	o := options()
	o.ToleranceC = 1
	o.StaysAtC = []float64{110, 119.5}
	p := read(t, text, o).Probes[0]
	require.NotNil(t, p.Hold)
	assert.InDelta(t, 990, p.Hold.StartS, 10)
	assert.InDelta(t, 2010, p.Hold.EndS, 10)
	assert.Equal(t, 120.0, p.Hold.PeakC)
	assert.Equal(t, 1000.0, p.PeakS)
	assert.InDelta(t, 1200, *p.Stays[0].WordS, 1e-6)
	assert.InDelta(t, 1180, *p.Stays[0].CreditedS, 1e-6)
	assert.InDelta(t, 1010, *p.Stays[1].WordS, 1e-6)
	assert.Zero(t, *p.Stays[1].CreditedS, "119 °C lowered is below")
	res := p.Results[0]
	hold := thermal.F0.Piece(p.Hold.EndS-p.Hold.StartS, 119, 119) / 60
	assert.InEpsilon(t, hold, *res.CreditedHoldMin, 0.02)
	assert.InEpsilon(t, *res.CreditedMin, *res.CreditedHeatingMin+*res.CreditedHoldMin+(*res.CreditedMin-*res.CreditedBeforeCoolingMin), 1e-12)
	assert.Less(t, *res.CreditedBeforeCoolingMin, *res.CreditedMin)
}

// What was won after the steam was off counts as cooling, though the can is
// still at its peak.
func TestMediumTellsWhenCoolingBegan(t *testing.T) {
	r := cans()
	steam := 0.0
	for i, c := range r.cols[0] {
		if c > 121 {
			steam = r.t[i]
		}
	}
	at := slices.Index(r.t, steam)
	before := r
	before.t = r.t[:at+1]
	l := read(t, r.csv(), options())
	assert.InEpsilon(t, before.lethality(1, thermal.F0, 0.5), *l.Probes[1].Results[0].CreditedBeforeCoolingMin, 0.01)
}

// A carriage return within a cell ends no row: what follows it is not lost.
func TestCarriageReturnWithinACell(t *testing.T) {
	text := "time_s,T1 (°C)\n0,20.0\n5,21.0\n10,22.0\r15,90.0\n20,23.0\n25,24.0\n"
	l := read(t, text, options())
	assert.Contains(t, l.Probes[0].Faults, logfile.Fault{Kind: logfile.Code, Row: 4, Time: "10 s", Detail: `the recorder wrote "22.0\r15" in place of a value`})
}

func TestHistory(t *testing.T) {
	r := cans()
	r.insertRow(100, r.t[100], r.row(100))
	r.cols[1][200] += 9
	r.cols[1][201] = nan
	heard := make([][]float64, 3)
	o := options()
	o.History = func(probe int, timeS, tempC float64) { heard[probe] = append(heard[probe], timeS, tempC) }
	lines := strings.Split(r.csv(), "\n")
	o.Readings = func(x logfile.Reading) {
		cells := strings.Split(lines[x.Row-1], ",")
		assert.Equal(t, []string{fmt.Sprintf("%g", x.TimeS), fmt.Sprintf("%.*f", r.digit, x.TempC)}, []string{cells[0], cells[x.Probe+1]})
	}
	read(t, r.csv(), o)
	for i, h := range heard {
		var want []float64
		for k, at := range r.t {
			if k == 101 || i == 1 && (k == 200 || k == 201) {
				continue
			}
			want = append(want, at, r.cols[i][k])
		}
		assert.InDeltaSlice(t, want, h, 1e-9)
	}
}
