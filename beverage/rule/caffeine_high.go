package rule

import (
	"fmt"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "caffeine-high", Level: review,
	Title: "The caffeine is above figures that markets set",
	Means: "Markets limit caffeine by kind of drink, ask for statements from a level on, or name what a person may take in a serving or a day.",
	Clear: "Lower the caffeine or the serving, check the drink's category in each market, and put the statements on the label.",
	Law:   []string{"us-caffeine", "us-caffeine-day", "eu-caffeine", "eu-caffeine-day", "ca-caffeine-energy", "anz-caffeine"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, m := range f.Drink.Markets {
			var over []string
			row := ""
			for _, r := range law.CaffeineRules(m) {
				if passed(f, r) {
					over = append(over, fmt.Sprintf("%s (%s)", r.Bound, r.Applies))
					if row == "" {
						row = r.RowID
					}
				}
			}
			if len(over) > 0 {
				hits = append(hits, Hit{Detail: fmt.Sprintf("%s: %s; figures that speak: %s.", m, caffeineWords(f), listWords(over)), Markets: []beverage.Market{m}, Row: row, Values: caffeineValues(f)})
			}
		}
		return hits
	},
})

// passed tells whether the caffeine may lie beyond what a figure allows, or at
// where it asks for a statement.
func passed(f *facts.Facts, r law.CaffeineRule) bool {
	c := f.Protein.Caffeine
	if !c.Known() || c.High <= 0 || r.Kind != law.CaffeineIntake && ownCaffeine(f) {
		return false
	}
	amount := c.High
	switch r.Bound.Unit {
	case "mg/kg":
		if d := f.Recipe.DensityGPerML; d.Known() {
			amount /= d.Low
		}
	case "mg/serving", "mg/day":
		s := f.PerServing(c)
		if !s.Known() {
			return false
		}
		amount = s.High
	}
	if r.Kind == law.CaffeineLabel {
		return r.Bound.Reached(amount)
	}
	return !r.Bound.Reached(amount)
}

// ownCaffeine is true of a tea or coffee drink to which nobody added caffeine:
// additive figures and statements leave those out, what a person takes does not.
func ownCaffeine(f *facts.Facts) bool {
	base := f.Drink.Base.V
	return (base == beverage.SoldAsTea || base == beverage.SoldAsCoffee) && !f.Has("caffeine") && !f.Has("guarana extract")
}

func caffeineWords(f *facts.Facts) string {
	c := f.Protein.Caffeine
	text := fmt.Sprintf("up to %.0f mg/L", c.High)
	if s := f.PerServing(c); s.Known() {
		text += fmt.Sprintf(", %.0f mg a serving", s.High)
	}
	return text
}

func caffeineValues(f *facts.Facts) Values {
	return Values{"caffeine_mg_per_l": f.Protein.Caffeine.High, "caffeine_mg_per_serving": f.PerServing(f.Protein.Caffeine).HighOrNil()}
}
