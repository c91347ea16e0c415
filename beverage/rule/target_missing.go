package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/need"
)

var _ = declare(Rule{
	ID: "target-missing", Level: review,
	Title: "No target is stated for the heat process",
	Means: "A heat process that a drink relies on is judged against a scheduled process. Without its target no record can show anything.",
	Clear: "Ask a process authority for the scheduled process, and state its target in process.target.",
	Law:   []string{"us-scheduled-process", "us-acidified-authority", "ca-scheduled-process", "eu-heat-treatment", "uk-low-acid", "uk-heat-treatment", "anz-canned", "codex-low-acid"},
	Check: func(f *facts.Facts) []Hit {
		if f.Drink.Process.Target.Known || !f.Process.Heats() || f.Class == beverage.Outside {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s and no target is given; such a process would need %s.", upper(routeWords(f)), need.For(f).Text)}
		switch {
		case f.MayBeLowAcid() && !f.Cold():
		case f.Class == beverage.Acidified && f.Cold():
			h.Rows = heatRows(f)
		case f.Class == beverage.Acidified:
			h.Rows = []string{"us-acidified-authority", "eu-heat-treatment", "uk-heat-treatment", "codex-low-acid", "five-log-vegetative.trade"}
		default:
			return nil
		}
		return []Hit{h}
	},
})
