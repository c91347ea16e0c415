package rule

import (
	"fmt"

	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "log-cooling-decides", Level: review,
	Title: "The target is met only by counting the cooling",
	Means: "What cooling adds is real but hangs on cooling water and on where the probe sat; a scheduled process does not usually count on it.",
	Clear: "Lengthen the hold so that the target is met before cooling starts, or let the process authority state that cooling may be counted.",
	Law:   []string{"record-cooling.trade"},
	Check: func(f *facts.Facts) []Hit {
		if !f.Records.CoolingDecides() {
			return nil
		}
		return []Hit{{Detail: deliveredWords(f) + cutAtCooling(f), Values: Values{"target": targetText(f)}}}
	},
})

func cutAtCooling(f *facts.Facts) string {
	if _, p := f.Records.Slowest(); p != nil {
		return fmt.Sprintf(" Before cooling: %s.", minutesWords(p.CreditedBeforeCoolingMn))
	}
	return ""
}
