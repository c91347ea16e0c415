package rule

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/thermal/logfile"
)

// A test of the thermometers counts for a year, and not for a run before it.
func TestCalibrationWords(t *testing.T) {
	run := func(tested, start string) *facts.Run {
		r := &facts.Run{Log: &logfile.Log{Probes: []logfile.Probe{{Start: start}}}}
		if tested != "" {
			r.Record.Calibrated = beverage.Say(tested)
		}
		return r
	}
	for _, c := range []struct{ tested, start, want string }{
		{"", "2026-03-14T06:20:00", "no calibration date is given"},
		{"2025-03-14", "2026-03-14T06:20:00", ""},
		{"2025-03-12", "2026-03-14T06:20:00", "the thermometers were tested on 2025-03-12, 367 days before the run; the text asks for a test each year"},
		{"2026-03-15", "2026-03-14T06:20:00", "the thermometers were tested on 2026-03-15, after the run"},
		{"2026-03-14", "2026-03-14T06:20:00", ""},
		{"2020-01-01", "06:20:00", ""},
		{"2020-01-01", "0 s", ""},
	} {
		assert.Equal(t, c.want, calibrationWords(run(c.tested, c.start)), c)
	}
}
