package rule

import (
	"fmt"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

var _ = declare(Rule{
	ID: "caffeine-high", Level: review,
	Title: "The caffeine is above figures that markets set",
	Means: "Markets limit caffeine by kind of drink, ask for statements from a level on, or name what a person may take in a serving or a day.",
	Clear: "Lower the caffeine or the serving, check the drink's category in each market, and put the statements on the label.",
	Law:   []string{"us-caffeine", "us-caffeine-day", "ca-caffeine-energy", "ca-caffeine-soft", "ca-caffeine-supplemental", "eu-caffeine", "eu-caffeine-day", "uk-caffeine", "anz-caffeine", "anz-cola-caffeine", "anz-caffeine-general"},
	Check: func(f *facts.Facts) []Hit {
		var hits []Hit
		for _, m := range f.Drink.Markets {
			var over []string
			row := ""
			for _, r := range law.CaffeineRules(m) {
				if passed(f, r) {
					over = append(over, figureWords(r))
					if row == "" {
						row = r.RowID
					}
				}
			}
			if len(over) > 0 {
				hits = append(hits, Hit{Detail: fmt.Sprintf("%s: %s; %s.", m, caffeineWords(f), strings.Join(over, "; ")), Markets: []beverage.Market{m}, Row: row, Values: caffeineValues(f)})
			}
		}
		return hits
	},
})

// passed tells whether the caffeine may lie beyond what a figure allows, or at
// where it asks for a statement.
func passed(f *facts.Facts, r law.CaffeineRule) bool {
	c := f.Protein.Caffeine
	if !c.Known() || c.High <= 0 || frees(f, r) {
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

// frees tells whether a figure leaves the drink out: one for bubbles where there
// are none or the other way round, and one for added caffeine where all of it is
// that of tea, coffee or cocoa. What a person takes in leaves none out, and a
// statement only what is sold as tea or coffee.
func frees(f *facts.Facts, r law.CaffeineRule) bool {
	switch {
	case r.Only == law.OnlyCarbonated && !f.Carbonated(), r.Only == law.OnlyStill && f.Carbonated():
		return true
	case r.Kind == law.CaffeineIntake:
		return false
	case r.Kind == law.CaffeineLabel:
		base := f.Drink.Base.V
		return (base == beverage.SoldAsTea || base == beverage.SoldAsCoffee) && !addedCaffeine(f)
	}
	return !addedCaffeine(f)
}

// addedCaffeine is true unless all that brings caffeine is tea, coffee or cocoa.
func addedCaffeine(f *facts.Facts) bool {
	for _, l := range f.Recipe.Lines {
		if !l.Figured() || l.CaffeineSource && !l.Tea && !l.Coffee && !l.Cocoa {
			return true
		}
	}
	return false
}

// figureWords tells a figure and the drinks that it is written for.
func figureWords(r law.CaffeineRule) string {
	switch r.Kind {
	case law.CaffeineUsage:
		return fmt.Sprintf("the one figure that the law lists, %.4g %s, is that of %s", r.Bound.Value, r.Bound.Unit, r.Applies)
	case law.CaffeineLabel:
		return fmt.Sprintf("a statement is due above %.4g %s in %s", r.Bound.Value, r.Bound.Unit, r.Applies)
	case law.CaffeineIntake:
		return fmt.Sprintf("published amount for a person: %.4g %s (%s)", r.Bound.Value, r.Bound.Unit, r.Applies)
	}
	return fmt.Sprintf("limit of %.4g %s in %s", r.Bound.Value, r.Bound.Unit, r.Applies)
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
