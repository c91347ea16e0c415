package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "log-fault", Level: review,
	Title: "The record has faults",
	Means: "Faults are counted against the process: nothing is credited over a gap, a stuck sensor or a clock that was set back. A reader must also ask why the recorder did that.",
	Clear: "Find the cause of each fault; where the original readings exist, use them; let a process authority decide on the lot.",
	Law:   []string{"us-recorder", "us-thermometer"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, run := range f.Records.Logs {
			n, first := faultsOf(run.Result)
			if n > 0 {
				hits = append(hits, Hit{
					Detail: fmt.Sprintf("%s: %s; the first: %s.", run.Result.File, plural(n, "fault"), first),
					Values: Values{"file": run.Result.File, "faults": n},
				})
			}
		}
		return hits
	},
})

func faultsOf(r beverage.LogResult) (n int, first string) {
	for _, p := range r.Probes {
		for _, x := range p.Faults {
			if n == 0 {
				first = fmt.Sprintf("%s, row %d (%s): %s", p.Name, x.Row, x.Kind, x.Detail)
			}
			n++
		}
	}
	return n, first
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
