package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "log-missing", Level: review,
	Title: "A target is stated and no record shows it",
	Means: "Without the record of the run nothing was delivered as far as anybody can tell.",
	Clear: "Name the recorder's file in process.log or in [[process.record]].",
	Law:   []string{"us-lacf-records", "us-acidified-records", "juice-five-log.us", "us-preventive-controls", "ca-scheduled-process", "eu-heat-treatment", "uk-heat-treatment", "record-agrees.trade"},
	Check: func(f *facts.Facts) []Hit {
		r := f.Records
		if !(r.Target != nil && len(r.Logs) == 0) {
			return nil
		}
		return []Hit{{
			Detail: fmt.Sprintf("The target %q is stated, no log is named; the outcome is cannot tell.", targetText(f)),
			Values: Values{"target": targetText(f)}, Rows: recordRows(f),
		}}
	},
})

func targetText(f *facts.Facts) string { return f.Drink.Process.Target.V.Text }
