package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "log-disagrees-with-spec", Level: review,
	Title: "The record is not of the process that the spec describes",
	Means: "The hottest reading of the record lies well below the temperature the spec states for the hold: either the log is of another run, or the process was not run as written.",
	Clear: "Name the record of this product's own run, or correct the stated hold.",
	Law:   []string{"record-agrees.trade"},
	Check: func(f *facts.Facts) []Hit {
		hold := f.Drink.Process.HoldTempC
		switch {
		case f.Process.Route == beverage.HotFill || len(f.Records.Logs) == 0:
			return nil
		case !hold.Known:
			return []Hit{{Level: at(note), Detail: "No process.hold_temperature is given, so the record cannot be held against it; only a note."}}
		}
		var hits []Hit
		for _, run := range f.Records.Logs {
			if hottest, ok := run.HottestC(); ok && hottest < hold.V-disagreeC {
				hits = append(hits, Hit{
					Detail: fmt.Sprintf("%s: no column is hotter than %.1f °C, the spec states a hold at %.1f °C.", run.Result.File, hottest, hold.V),
					Values: Values{"file": run.Result.File, "hottest_c": hottest, "hold_c": hold.V},
				})
			}
		}
		return hits
	},
})

// disagreeC is what a cold spot may stay below its medium at the end of a hold
// before one speaks of another process. Common practice, no source.
const disagreeC = 5
