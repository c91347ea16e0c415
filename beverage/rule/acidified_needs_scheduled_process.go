package rule

import (
	"fmt"
	"slices"

	"posset/beverage"
	"posset/beverage/facts"
)

var _ = declare(Rule{
	ID: "acidified-needs-scheduled-process", Level: review, OnRoutes: true,
	Title: "An acidified drink needs a scheduled process",
	Means: "A low-acid food brought to pH 4.6 or below by acid or acid food, sealed and kept warm, is made by a scheduled process that a qualified person has set. Whether a powder that its maker acidified makes the drink acidified is not settled in the text; the cautious reading is taken.",
	Clear: "Let a process authority set the process and its critical factors, pH first; ask the same authority about a pre-acidified powder.",
	Law:   []string{"acidified-needs-scheduled-process.us", "us-acidified-authority", "us-acidified-thermal", "us-preacidified-ingredient", "codex-low-acid", "acidified-practice.trade"},
	Check: func(f *facts.Facts) []Hit {
		if f.Class != beverage.Acidified || f.Cold() {
			return nil
		}
		h := Hit{Detail: fmt.Sprintf("%s; %s.", upper(f.ClassNote), phWords(f)), Values: phValues(f)}
		if s := f.Drink.Process.Scheduled; s != nil && s.By.Known {
			h.Detail += fmt.Sprintf(" The spec names %s as who set the process.", s.By.V)
		}
		return acrossMarkets(f, h)
	},
})

// haveTheClass are the markets whose law or code knows an acidified food.
var haveTheClass = []beverage.Market{beverage.US, beverage.Codex}

// acrossMarkets tells the markets that know the class from those that do not,
// where the same is asked as practice.
func acrossMarkets(f *facts.Facts, h Hit) []Hit {
	var law, practice []beverage.Market
	for _, m := range f.Drink.Markets {
		if slices.Contains(haveTheClass, m) {
			law = append(law, m)
		} else {
			practice = append(practice, m)
		}
	}
	var hits []Hit
	if len(law) > 0 {
		lawful := h
		lawful.Markets = law
		if words := noHeatWords(f); words != "" {
			lawful.Detail, lawful.Route = h.Detail+words, LeavesOpen
		}
		hits = append(hits, lawful)
	}
	if len(practice) > 0 {
		h.Markets, h.Rows = practice, []string{"acidified-practice.trade", "eu-heat-treatment", "uk-heat-treatment"}
		h.Detail += fmt.Sprintf(" %s: no acidified class is in the law; that a qualified person sets and shows the process is asked as practice.", listed(practice))
		hits = append(hits, h)
	}
	return hits
}

// noHeatWords tells where the route has no heat, of which alone the section speaks.
func noHeatWords(f *facts.Facts) string {
	if !f.In(beverage.US) || f.Process.Heats() || f.Process.Route == "" {
		return ""
	}
	return fmt.Sprintf(" The US section asks for heat against vegetative cells, and %s: whether anything else may stand in for it is for the authority.", routeWords(f))
}
