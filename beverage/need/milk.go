package need

import (
	"fmt"
	"slices"
	"strings"

	"posset/beverage"
	"posset/beverage/facts"
	"posset/beverage/law"
)

// shortHoldS is the hold of the short-time line, of which every market that has
// lines for milk has one.
const shortHoldS = 15

// milk is the least pair in continuous flow that each market asks of milk, for a
// drink that is sold as milk or is milk in the main; the hottest of them decides.
// Sugar and cream raise it where the law says so. False for other drinks.
func milk(f *facts.Facts) (Need, bool) {
	if !f.IsMilk() {
		return Need{}, false
	}
	var said []string
	var hottest law.Schedule
	for _, m := range f.Drink.Markets {
		for _, s := range law.Schedules(milkFood(f, m), m) {
			if s.TimeS != shortHoldS {
				continue
			}
			said = append(said, fmt.Sprintf("%s %s", m, s))
			if s.TempC > hottest.TempC {
				hottest = s
			}
		}
	}
	if len(said) == 0 {
		return Need{}, false
	}
	return Need{"the heat that the law asks of milk, or its equal: " + strings.Join(said, "; "), hottest.RowID, stay(hottest)}, true
}

// milkFood takes the raised line where the drink is sweetened or enriched with
// fat, or nobody knows.
func milkFood(f *facts.Facts, m beverage.Market) string {
	raised := slices.ContainsFunc(f.Recipe.Lines, func(l facts.Line) bool {
		return l.Kind == beverage.KindSugar || l.Sweetener || l.Kind == beverage.KindFat || !l.Figured()
	})
	if raised && len(law.Schedules(law.FoodRichMilk, m)) > 0 {
		return law.FoodRichMilk
	}
	return law.FoodMilk
}
