package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "log-uncalibrated", Level: review,
	Title: "Nobody says when the sensors were last tested",
	Means: "The accuracy that is taken off each reading holds only for thermometers that were tested against a traceable reference, on installation and at least once a year.",
	Clear: "Give the date in calibrated of [[process.record]].",
	Law:   []string{"us-thermometer"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, run := range f.Records.Logs {
			if !run.Record.Calibrated.Known {
				hits = append(hits, Hit{
					Detail: fmt.Sprintf("%s: no calibration date is given.", run.Result.File),
					Values: Values{"file": run.Result.File},
				})
			}
		}
		return hits
	},
})
