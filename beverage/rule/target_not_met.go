package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/quantity"
)

var _ = declare(Rule{
	ID: "target-not-met", Level: stop,
	Title: "The record does not show the target",
	Means: "What remains of the record after the sensor tolerance and every fault is counted against the process is below the target. A low-acid process below the scheduled one is a deviation: reprocess, set aside for a process authority, or destroy.",
	Clear: "Reprocess by the scheduled process, or set the lot aside for evaluation by a process authority; mend the record's faults where the original readings still exist.",
	Law:   []string{"us-lacf-deviation", "us-acidified-deviation"},
	Check: func(f *facts.Facts) []Hit {
		r := f.Records
		if r.Target == nil || len(r.Logs) == 0 || r.Outcome == beverage.Meets {
			return nil
		}
		h := Hit{Detail: deliveredWords(f), Values: deliveredValues(f)}
		if f.Class == beverage.Acidified {
			h.Row = "us-acidified-deviation"
		}
		return []Hit{h}
	},
})

// deliveredWords tells the worst record against the target.
func deliveredWords(f *facts.Facts) string {
	run, p := f.Records.Slowest()
	t := f.Records.Target
	switch {
	case t.Problem != "":
		return fmt.Sprintf("The target %q cannot be worked out: %s.", t.Stated.Text, t.Problem)
	case p == nil:
		return fmt.Sprintf("%s has no product probe, so it shows the medium and not the drink; target %s.", run.Result.File, t.Stated.Text)
	case t.IsStay():
		return fmt.Sprintf("%s, %s: the longest unbroken stay that can be credited is %s; target %s: %s.", run.Result.File, p.Name, secondsWords(f.Records.CreditedStay(run, p)), t.Stated.Text, f.Records.Outcome)
	}
	return fmt.Sprintf("%s, %s: credited %s, taken at its word %s; target %s: %s.", run.Result.File, p.Name,
		minutesWords(p.CreditedMinutes), minutesWords(p.LethalityMinutes), t.Stated.Text, f.Records.Outcome)
}

func minutesWords(v *float64) string {
	if v == nil {
		return "nothing"
	}
	return quantity.Number(*v, 3) + " min"
}

func secondsWords(v *float64) string {
	if v == nil {
		return "unknown"
	}
	return quantity.Number(*v, 3) + " s"
}

func deliveredValues(f *facts.Facts) Values {
	v := Values{"target": f.Records.Target.Stated.Text, "credited_minutes": nil, "lethality_minutes": nil}
	if _, p := f.Records.Slowest(); p != nil {
		v["probe"] = p.Name
		if p.CreditedMinutes != nil {
			v["credited_minutes"] = *p.CreditedMinutes
		}
		if p.LethalityMinutes != nil {
			v["lethality_minutes"] = *p.LethalityMinutes
		}
	}
	return v
}
