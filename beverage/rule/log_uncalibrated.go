package rule

import (
	"fmt"

	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "log-uncalibrated", Level: review,
	Title: "Nobody says when the sensors were last tested",
	Means: "The accuracy that is taken off each reading holds only for thermometers that were tested against a traceable reference, on installation and at least once a year.",
	Clear: "Give the date in calibrated of [[process.record]]; where the test lies too far back or after the run, test the thermometers now and let a process authority judge the runs since the last test.",
	Law:   []string{"us-thermometer"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for i := range f.Records.Logs {
			if run := &f.Records.Logs[i]; calibrationWords(run) != "" {
				hits = append(hits, Hit{
					Detail: run.Result.File + ": " + calibrationWords(run) + ".",
					Values: Values{"file": run.Result.File},
				})
			}
		}
		return hits
	},
})

// daysPerYear counts the leap day: a test on the same day of the year before is
// a year ago.
const daysPerYear = 366

// calibrationWords tell what is wrong with the date of a test; nothing where a
// record without dates cannot be held against it.
func calibrationWords(run *facts.Run) string {
	if !run.Record.Calibrated.Known {
		return "no calibration date is given"
	}
	switch days, ok := run.DaysSinceCalibration(); {
	case ok && days < 0:
		return fmt.Sprintf("the thermometers were tested on %s, after the run", run.Record.Calibrated.V)
	case ok && days > law.ThermometerTestYears()*daysPerYear:
		return fmt.Sprintf("the thermometers were tested on %s, %.0f days before the run; the text asks for a test each year", run.Record.Calibrated.V, days)
	}
	return ""
}
