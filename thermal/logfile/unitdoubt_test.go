package logfile_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"posset/thermal/logfile"
)

// outlet writes a record that starts, runs and ends at three readings, a minute
// between each two of them; the middle is held.
func outlet(heading string, from, run, to float64) string {
	var csv strings.Builder
	fmt.Fprintf(&csv, "Time (s),%s\n", heading)
	const moving, held = 60, 300
	for i := 0; i < held+2*moving; i++ {
		v := run + 0.1*float64(i%3)
		if i < moving {
			v = from + (run-from)*float64(i)/moving
		} else if i >= moving+held {
			v = run + (to-run)*float64(i-moving-held+1)/moving
		}
		fmt.Fprintf(&csv, "%d,%.1f\n", 2*i, v)
	}
	return csv.String()
}

const eitherUnit = "said to be in °C, but the values may be °F as well; the lower of the two is credited; if the recorder was set to °C, settle it with --unit C, or with unit = \"C\" for the record in the spec"

// A tube that starts and ends hot may be a pasteurizer in °F. Who knows the
// recorder settles it: then nothing is left to find.
func TestUnitThatMayBeEitherIsSettledByWord(t *testing.T) {
	for _, text := range []string{
		outlet("Hold tube outlet (°C)", 78, 139, 80),
		outlet("Hold tube outlet (°C)", 60, 126, 60),
	} {
		p := read(t, text, options()).Probes[0]
		assert.Equal(t, []logfile.Fault{{Kind: logfile.UnitDoubt, Row: 2, Time: "0 s", Detail: eitherUnit}}, p.Faults)
		assert.Less(t, *p.Results[0].CreditedMin, 1e-3)

		o := options()
		o.Unit = "C"
		l := read(t, text, o)
		assert.Empty(t, l.Probes[0].Faults)
		assert.Greater(t, *l.Probes[0].Results[0].CreditedMin, 10.0)
		assert.Equal(t, "heading and declared, where the readings may be °F as well", l.Understood.UnitBasis)
	}
}

// A tube that only ever ran hot, and one that was started with cool water, are in °C.
func TestTubesInCelsiusAreNotDoubted(t *testing.T) {
	for _, text := range []string{outlet("Hold tube outlet (°C)", 20, 139, 20), outlet("Hold tube outlet (°C)", 135, 139, 137), outlet("Hold tube outlet (°C)", 95, 139, 105)} {
		o := options()
		o.Unit = "C"
		assert.Equal(t, "heading and declared", read(t, text, o).Understood.UnitBasis)
		for _, f := range read(t, text, options()).Probes[0].Faults {
			assert.NotEqual(t, logfile.UnitDoubt, f.Kind)
		}
	}
}

// Records in °F under a heading in °C are told and not credited as °C.
func TestFahrenheitUnderCelsiusIsNotCredited(t *testing.T) {
	for name, c := range map[string]struct {
		from, run, to float64
		word          bool // that they are in °C clears them: a process in °C could read so
	}{
		"milk":              {40, 165, 40, false},
		"tunnel":            {70, 140, 85, true},
		"retort":            {70, 250, 90, false},
		"hot fill":          {185, 195, 182, false},
		"tube of long life": {170, 282, 75, false},
	} {
		t.Run(name, func(t *testing.T) {
			for _, word := range []string{"", "C"} {
				o := options()
				o.Unit = word
				p := read(t, outlet("Can (°C)", c.from, c.run, c.to), o).Probes[0]
				if word == "C" && c.word {
					assert.False(t, found(p.Faults, []logfile.FaultKind{logfile.UnitDoubt}), "%v", p.Faults)
					continue
				}
				require.True(t, found(p.Faults, []logfile.FaultKind{logfile.UnitDoubt}), "%v", p.Faults)
				inF := read(t, outlet("Can (°F)", c.from, c.run, c.to), options()).Probes[0]
				assert.LessOrEqual(t, *p.Results[0].CreditedMin, *inF.Results[0].CreditedMin*(1+1e-9))
			}
		})
	}
}
