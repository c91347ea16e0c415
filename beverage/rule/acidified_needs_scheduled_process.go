package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "acidified-needs-scheduled-process", Level: review,
	Title: "An acidified drink needs a scheduled process",
	Means: "A low-acid food brought to pH 4.6 or below by acid or acid food, sealed and kept warm, is made by a scheduled process that a qualified person has set. Whether a powder that its maker acidified makes the drink acidified is not settled in the text; the cautious reading is taken.",
	Clear: "Let a process authority set the process and its critical factors, pH first; ask the same authority about a pre-acidified powder.",
	Law:   []string{"acidified-needs-scheduled-process.us", "us-acidified-authority", "us-preacidified-ingredient"},
	Check: func(f *facts.Facts) []Hit {
		if f.Class != beverage.Acidified || f.Cold() {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s; %s.", upper(f.ClassNote), phWords(f)), Values: phValues(f)}
		if s := f.Drink.Process.Scheduled; s != nil && s.By.Known {
			h.Detail += fmt.Sprintf(" The spec names %s as who set the process.", s.By.V)
		}
		return []Hit{h}
	},
})
