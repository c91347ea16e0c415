package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "critical-limit-missed", Level: stop,
	Title: "A limit of the scheduled process is missed or cannot be shown",
	Means: "A scheduled process holds only inside its critical limits. Outside one of them the run is a deviation, whatever lethality the record shows.",
	Clear: "Set the lot aside for evaluation by the process authority, reprocess, or destroy; for a limit that nothing shows, give the record or the measurement.",
	Law:   []string{"us-lacf-deviation", "us-initial-temperature", "us-lacf-change"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, l := range f.Limits() {
			if l.Outcome == beverage.Meets {
				continue
			}
			h := Hit{Detail: limitWords(l), Values: Values{"what": string(l.Limit.What), "limit": l.Limit.Text, "found_low": l.Found.LowOrNil(), "found_high": l.Found.HighOrNil()}}
			if l.Outcome == beverage.CannotTell {
				h.Level = at(review)
			}
			hits = append(hits, h)
		}
		return hits
	},
})

func limitWords(l facts.LimitCheck) string {
	if !l.Found.Known() {
		return fmt.Sprintf("%s, limit %s: %s.", l.Limit.What, l.Limit.Text, l.Why)
	}
	return fmt.Sprintf("%s, limit %s: found %s to %s (%s): %s.", l.Limit.What, l.Limit.Text, short(l.Found.Low), short(l.Found.High), l.Why, l.Outcome)
}

func short(v float64) string { return fmt.Sprintf("%.4g", v) }
