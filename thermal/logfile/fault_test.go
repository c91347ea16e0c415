package logfile_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal"
	"posset/thermal/logfile"
)

func cans() record {
	p := process{intervalS: 5, step: 0.01, noiseC: 0.02, tausS: []float64{40, 180}, medium: true, topC: 121.6, holdS: 1100, restS: 700}
	return p.run(rand.New(rand.NewPCG(8, 9)))
}

// What is said of each kind of fault, in full.
func TestFaultsAreTold(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(r *record)
		probe int
		want  []logfile.Fault
	}{
		"gap": {func(r *record) { r.dropRows(200, 60) }, 1, []logfile.Fault{
			{Kind: logfile.Gap, Row: 201, Time: "995 s", Detail: "no reading for 5.08 min; nothing is credited over it"}}},
		"dropout": {func(r *record) { set(r, 1, 200, 203, nan) }, 1, []logfile.Fault{
			{Kind: logfile.Dropout, Row: 202, Time: "1000 s", Detail: "no value in 3 rows; nothing is credited over them"}}},
		"repeat": {func(r *record) { r.insertRow(200, r.t[200], r.row(200)) }, 1, []logfile.Fault{
			{Kind: logfile.Repeat, Row: 203, Time: "1000 s", Detail: "the same time with the same value again; counted once"}}},
		"conflict": {func(r *record) {
			r.insertRow(201, r.t[200], r.row(200))
			r.cols[1][201] = 119
		}, 1, []logfile.Fault{
			{Kind: logfile.Conflict, Row: 203, Time: "1000 s", Detail: "the same time with 119 °C beside 121.6 °C; the lower counts"}}},
		"disorder": {func(r *record) {
			at, row := r.t[200], r.row(200)
			r.dropRows(200, 1)
			r.insertRow(203, at, row)
		}, 1, []logfile.Fault{
			{Kind: logfile.Disorder, Row: 205, Time: "1000 s", Detail: "the row stands later in the file than its time"}}},
		"clock back": {func(r *record) {
			for i := 250; i < len(r.t); i++ {
				r.t[i] -= 300
			}
		}, 1, []logfile.Fault{
			{Kind: logfile.ClockBack, Row: 252, Time: "950 s", Detail: "the clock was set back by 4.92 min; of what it ran over twice the lower counts"}}},
		"spike up": {func(r *record) { r.cols[1][200] += 7 }, 1, []logfile.Fault{
			{Kind: logfile.Spike, Row: 202, Time: "1000 s", Detail: "128.6 °C stands 7.02 C° above what the readings beside it support; the lower neighbour counts"}}},
		"spike down": {func(r *record) { r.cols[1][200] -= 7 }, 1, []logfile.Fault{
			{Kind: logfile.Spike, Row: 202, Time: "1000 s", Detail: "114.6 °C stands 6.93 C° below what the readings beside it support; it counts as it is"}}},
		"spike of three readings": {func(r *record) { add(r, 1, 200, 203, 7) }, 1, []logfile.Fault{
			{Kind: logfile.Spike, Row: 202, Time: "1000 s", Detail: "128.6 °C stands 7.11 C° above what the readings beside it support; the lower neighbour counts (3 on end)"}}},
		"stuck": {func(r *record) { set(r, 1, 300, 340, 121.58) }, 1, []logfile.Fault{
			{Kind: logfile.Stuck, Row: 301, Time: "1495 s", Detail: "121.6 °C without change over 25 readings, though this probe's readings scatter; nothing is credited while it stood still"}}},
		"code": {func(r *record) { set(r, 1, 200, 203, 999.9) }, 1, []logfile.Fault{
			{Kind: logfile.Code, Row: 202, Time: "1000 s", Detail: "999.9 is a recorder's error code (3 on end)"}}},
		"range": {func(r *record) { r.cols[1][200] = 260 }, 1, []logfile.Fault{
			{Kind: logfile.Range, Row: 202, Time: "1000 s", Detail: "260 °C is no temperature of a drink or of what heats it"}}},
		"rate": {func(r *record) { add(r, 1, 100, 130, 30) }, 1, []logfile.Fault{
			{Kind: logfile.Rate, Row: 102, Time: "500 s", Detail: "from 110.2 °C to 141.3 °C in 5 s: faster than a sensor in a liquid can follow; nothing is credited until it is taken back"},
			{Kind: logfile.Rate, Row: 132, Time: "650 s", Detail: "from 151.3 °C to 121.3 °C in 5 s: faster than a sensor in a liquid can follow; nothing is credited over it"}}},
		"kelvin": {func(r *record) { add(r, 1, 0, len(r.t), 273.15) }, 1, []logfile.Fault{
			{Kind: logfile.UnitDoubt, Row: 2, Time: "0 s", Detail: "said to be in °C, but the values look like kelvin; the lower of the two is credited"}}},
		"above the medium": {func(r *record) { add(r, 1, 0, len(r.t), 3) }, 1, []logfile.Fault{
			{Kind: logfile.AboveMedium, Row: 116, Time: "570 s", Detail: "122.8 °C, but the medium had been no hotter than 121.6 °C; not credited, and all readings of this probe are lowered by the excess (213 on end)"}}},
		"cut short": {func(r *record) { r.dropRows(300, len(r.t)-300) }, 1, []logfile.Fault{
			{Kind: logfile.CutShort, Row: 301, Time: "1495 s", Detail: "the record ends at 121.6 °C, still hot; what came after is not known"}}},
	} {
		t.Run(name, func(t *testing.T) {
			r := cans()
			c.spoil(&r)
			l := read(t, r.csv(), options())
			assert.Equal(t, c.want, l.Probes[c.probe].Faults)
		})
	}
}

func set(r *record, col, from, to int, v float64) {
	for i := from; i < to; i++ {
		r.cols[col][i] = v
	}
}

func add(r *record, col, from, to int, by float64) {
	for i := from; i < to; i++ {
		r.cols[col][i] += by
	}
}

// A recorder that reads above the reference thermometer: told of the recorder,
// taken off every product.
func TestRecorderAboveReference(t *testing.T) {
	r := cans()
	r.names = []string{"Retort recorder", "Reference thermometer", "Can 2"}
	copy(r.cols[1], r.cols[0])
	add(&r, 0, 0, len(r.t), 0.8)
	l := read(t, r.csv(), options())
	require.Len(t, l.Probes[0].Faults, 1)
	assert.Equal(t, logfile.ReferenceDisagree, l.Probes[0].Faults[0].Kind)
	assert.Equal(t, "the recorder stands 0.8 C° above the reference thermometer; all product readings are lowered by as much", l.Probes[0].Faults[0].Detail)
	assert.Equal(t, logfile.ReferenceThermometer, l.Probes[1].Role)
	assert.InDelta(t, 0.8, l.Probes[2].LoweredC, 1e-9)
	assert.InEpsilon(t, r.lethality(2, thermal.F0, 0.5+0.8), *l.Probes[2].Results[0].CreditedMin, 1e-9)
}

// The list of faults stays bounded, and says how much it leaves out.
func TestFaultListIsBounded(t *testing.T) {
	r := cans()
	long := record{names: r.names, digit: r.digit, cols: make([][]float64, 3)}
	for cycle := 0; cycle < 12; cycle++ {
		for i, at := range r.t {
			long.t = append(long.t, at+float64(cycle)*5*float64(len(r.t)))
			for k := range r.cols {
				long.cols[k] = append(long.cols[k], r.cols[k][i])
			}
		}
	}
	for i := 7; i < len(long.t); i += 20 {
		long.cols[1][i] = nan
	}
	faults := read(t, long.csv(), options()).Probes[1].Faults
	require.Len(t, faults, 201)
	assert.Equal(t, "79 more faults are not listed", faults[200].Detail)
}

// In a doubted unit every reading counts lower than it says; a spike in it is one
// all the same.
func TestSpikeIsToldInADoubtedUnit(t *testing.T) {
	var csv strings.Builder
	csv.WriteString("Time (s),Retort (°C),Can (°C)\n")
	for i := 0; i < 400; i++ {
		can := 70 + 0.4*float64(i)
		if i > 10 && i < 100 {
			fmt.Fprintf(&csv, "%d,%.2f,\n", 2*i, min(126, 22+float64(i)))
			continue
		}
		if i == 300 {
			can -= 6
		}
		fmt.Fprintf(&csv, "%d,%.2f,%.2f\n", 2*i, min(126, 22+float64(i)), can)
	}
	faults := read(t, csv.String(), options()).Probes[1].Faults
	require.True(t, found(faults, []logfile.FaultKind{logfile.UnitDoubt}), "%v", faults)
	require.True(t, found(faults, []logfile.FaultKind{logfile.Spike}), "%v", faults)
}
